package thinclick.server.net;

import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.ForkJoinPool;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.time.MonotonicClock;
import thinclick.protocol.time.Timers;
import thinclick.server.room.RoomDrive;
import thinclick.server.store.Store;
import thinclick.server.watch.HostMeters;
import tools.jackson.databind.node.JsonNodeFactory;

/** What rooms need of a host, with reviews that are empty and no takes before. */
final class BareHost {
  private BareHost() {}

  /** With a pool that never stands still. */
  static HostParts parts(
      MonotonicClock clock,
      @Nullable Timers timers,
      Store store,
      HostMeters meters,
      RoomNews news) {
    return parts(clock, timers, store, ForkJoinPool.commonPool(), meters, news);
  }

  /**
   * @param timers by that clock; null: the event loops' own
   */
  static HostParts parts(
      MonotonicClock clock,
      @Nullable Timers timers,
      Store store,
      Executor reviewPool,
      HostMeters meters,
      RoomNews news) {
    return new HostParts(
        clock,
        timers,
        store,
        RoomDrive.DRILLS,
        RoomDrive.DEALER,
        take -> JsonNodeFactory.instance.objectNode(),
        (room, question) -> Optional.empty(),
        new Door(null, 4),
        reviewPool,
        meters,
        news,
        false);
  }
}
