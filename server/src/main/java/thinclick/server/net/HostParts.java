package thinclick.server.net;

import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.time.MonotonicClock;
import thinclick.protocol.time.Timers;
import thinclick.server.room.DealMaker;
import thinclick.server.room.PastQuestion;
import thinclick.server.room.Shelf;
import thinclick.server.store.Store;
import thinclick.server.watch.HostMeters;
import tools.jackson.databind.JsonNode;

/**
 * What every room of a host shares.
 *
 * @param clock from which room time is read
 * @param timers by that clock; null: the event loops' own
 * @param shelf what rooms can be asked for by title
 * @param reviewer from a take to the review as it is sent
 * @param past looks what takes before say
 * @param door who may open rooms, and how long their words are
 * @param reviewPool where reviews are made, since they take longer than a loop may stand still
 * @param meters what is counted
 * @param news told which rooms open and close
 * @param metricsToAll true where other computers may read the meters as well
 */
public record HostParts(
    MonotonicClock clock,
    @Nullable Timers timers,
    Store store,
    Shelf shelf,
    DealMaker dealer,
    Function<Take, JsonNode> reviewer,
    Past past,
    Door door,
    Executor reviewPool,
    HostMeters meters,
    RoomNews news,
    boolean metricsToAll) {
  /** Looks what takes before say; may wait for the store. */
  @FunctionalInterface
  public interface Past {
    /**
     * The answer for a room; empty where there is none.
     *
     * @param roomId whose takes, and whose class's, may be told of
     */
    Optional<ServerMessage> answer(String roomId, PastQuestion question);
  }
}
