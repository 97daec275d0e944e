package thinclick.server.net;

import io.netty.channel.EventLoop;
import java.util.concurrent.CompletableFuture;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.server.room.Effect;
import thinclick.server.room.JournalEntry;
import thinclick.server.room.Room;
import thinclick.server.room.RoomEvent;
import thinclick.server.room.TakeSharing;
import tools.jackson.databind.JsonNode;

/**
 * What a room sends others for: the store to write and to read, the pool to review and to look
 * back. What comes of it is an event on the room's loop; until that was heard the host counts as
 * busy.
 */
final class Errands {
  private static final Logger LOG = LoggerFactory.getLogger(Errands.class);

  private final Room room;
  private final EventLoop loop;
  private final HostParts parts;
  private final Busy busy;
  private final Consumer<RoomEvent> heard;

  /**
   * @param heard takes what came of an errand, on the room's loop
   */
  Errands(Room room, EventLoop loop, HostParts parts, Busy busy, Consumer<RoomEvent> heard) {
    this.room = room;
    this.loop = loop;
    this.parts = parts;
    this.busy = busy;
    this.heard = heard;
  }

  /** Writes something down; what was played is counted with the time that took. */
  void append(JournalEntry entry) {
    long beganNanos = System.nanoTime();
    run(
        () -> parts.store().journal().append(room.id(), room.epoch(), entry),
        (outcome, problem) -> {
          if (outcome != null) {
            heard.accept(new RoomEvent.Journaled(entry, outcome));
            if (entry instanceof JournalEntry.Played played) {
              long nanos = System.nanoTime() - beganNanos;
              parts.meters().stored(played.attacks().size(), nanos);
            }
          }
        });
  }

  /** Has a take reviewed. */
  void review(String takeId) {
    run(
        () ->
            parts
                .store()
                .take(takeId)
                .thenApplyAsync(
                    take -> parts.reviewer().apply(take.orElseThrow()), parts.reviewPool()),
        (review, problem) -> heard.accept(reviewed(takeId, review, problem)));
  }

  private RoomEvent reviewed(
      String takeId, @Nullable JsonNode review, @Nullable Throwable problem) {
    if (review != null) {
      return new RoomEvent.Reviewed(takeId, review);
    }
    LOG.error("room {}: no review of take {}", room.id(), takeId, problem);
    return new RoomEvent.ReviewFailed(takeId, String.valueOf(problem));
  }

  /** Reads a take for somebody who keeps it. */
  void read(Effect.ReadTake wanted) {
    run(
        () ->
            parts
                .store()
                .take(wanted.takeId())
                .thenApplyAsync(
                    take -> TakeSharing.seen(wanted, take.orElseThrow()), parts.reviewPool()),
        (read, problem) -> heard.accept(read != null ? read : unread(wanted, problem)));
  }

  private RoomEvent unread(Effect.ReadTake wanted, @Nullable Throwable problem) {
    LOG.error("room {}: take {} cannot be read", room.id(), wanted.takeId(), problem);
    return new RoomEvent.TakeRead(wanted, null, "the take cannot be read");
  }

  /** Looks what takes before say. */
  void recall(Effect.Recall wanted) {
    run(
        () -> CompletableFuture.supplyAsync(() -> recalled(wanted), parts.reviewPool()),
        (recalled, problem) ->
            heard.accept(recalled != null ? recalled : forgotten(wanted, problem)));
  }

  private RoomEvent forgotten(Effect.Recall wanted, @Nullable Throwable problem) {
    LOG.error("room {}: takes before cannot be looked at", room.id(), problem);
    return new RoomEvent.Recalled(wanted, null, "the takes before cannot be read");
  }

  private RoomEvent.Recalled recalled(Effect.Recall wanted) {
    return parts
        .past()
        .answer(room.id(), wanted.question())
        .map(answer -> new RoomEvent.Recalled(wanted, answer, ""))
        .orElseGet(() -> new RoomEvent.Recalled(wanted, null, "the take has no review yet"));
  }

  /**
   * One errand, begun now; one that cannot be begun, because whoever does it is gone, has failed.
   *
   * @param then on the room's loop: what came of it, or why nothing did
   */
  @SuppressWarnings("FutureReturnValueIgnored") // what goes wrong is told to then
  private <T> void run(
      Supplier<CompletableFuture<T>> errand, BiConsumer<@Nullable T, @Nullable Throwable> then) {
    busy.begin();
    begun(errand)
        .whenComplete(
            (done, problem) ->
                loop.execute(
                    () -> {
                      try {
                        then.accept(done, problem);
                      } finally {
                        busy.end(); // a fault in what follows keeps nobody waiting
                      }
                    }));
  }

  private static <T> CompletableFuture<T> begun(Supplier<CompletableFuture<T>> errand) {
    try {
      return errand.get();
    } catch (RuntimeException refused) {
      return CompletableFuture.failedFuture(refused);
    }
  }
}
