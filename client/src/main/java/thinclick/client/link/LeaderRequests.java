package thinclick.client.link;

import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.music.Stage;

/**
 * What a leader asks of the room, from any thread. Each answer is the room's revision afterwards;
 * it fails with {@link CommandRefused} where the room has changed meanwhile, where somebody else
 * leads, or where it cannot be.
 */
public final class LeaderRequests {
  private final Conversation talk;

  LeaderRequests(Conversation talk) {
    this.talk = talk;
  }

  /** Chooses a drill of the host's by its title. */
  public CompletableFuture<Long> material(String title) {
    return talk.request((id, seen) -> new LeaderCommand.Material(id, seen, null, title));
  }

  /** Brings a drill along. */
  public CompletableFuture<Long> material(Drill drill) {
    return talk.request((id, seen) -> new LeaderCommand.Material(id, seen, drill, null));
  }

  /** Sets the click plan and, where not null, the tempo in beats a minute. */
  public CompletableFuture<Long> plan(List<Stage> stages, @Nullable Double tempo) {
    return talk.request((id, seen) -> new LeaderCommand.Plan(id, seen, stages, tempo));
  }

  /**
   * Deals parts; {@code chairs} are playerIds in the order of chairs, empty for that of joining.
   */
  public CompletableFuture<Long> deal(long seed, List<String> chairs) {
    return talk.request((id, seen) -> new LeaderCommand.Deal(id, seen, seed, chairs));
  }

  /** The same, with each figure fitted to the level that is said of a playerId, 1 to 10. */
  public CompletableFuture<Long> deal(long seed, List<String> chairs, Map<String, Integer> levels) {
    return talk.request((id, seen) -> new LeaderCommand.Deal(id, seen, seed, chairs, levels));
  }

  /** Starts a take after {@code leadMillis} and a count-in. */
  public CompletableFuture<Long> start(String dealId, int leadMillis, int countInBars) {
    return talk.request(
        (id, seen) -> new LeaderCommand.Start(id, seen, dealId, leadMillis, countInBars));
  }

  /** Ends the take early. */
  public CompletableFuture<Long> stop(String takeId) {
    return talk.request((id, seen) -> new LeaderCommand.Stop(id, seen, takeId));
  }

  /** Sends any other command of a leader's: seats, notes, a changed plan and so on. */
  public CompletableFuture<Long> ask(Command command) {
    return talk.request(command::with);
  }

  /** Makes a command of a leader's for the room as it was last seen. */
  @FunctionalInterface
  public interface Command {
    /**
     * The command.
     *
     * @param requestId names it in its answer
     * @param revision the room's, as this link last heard of it
     */
    LeaderCommand with(long requestId, long revision);
  }
}
