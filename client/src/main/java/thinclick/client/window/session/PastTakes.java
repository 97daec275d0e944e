package thinclick.client.window.session;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Take;
import thinclick.server.history.Entry;
import thinclick.server.history.FewestClicks;
import thinclick.server.host.RehearsalHost;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.Comparison;

/**
 * What earlier takes say. Only a host in this window tells: one elsewhere keeps its takes to
 * itself.
 */
public final class PastTakes {
  private final Executor windowThread;
  private @Nullable RehearsalHost host;

  PastTakes(Executor windowThread) {
    this.windowThread = windowThread;
  }

  /** The host in this window, null where there is none. */
  void keptBy(@Nullable RehearsalHost keeper) {
    host = keeper;
  }

  /** Hears how a take compares with the last like one. */
  @FunctionalInterface
  public interface ComparisonHeard {
    /**
     * The answer.
     *
     * @param comparison null where there is no like take before it
     * @param known false where the host is elsewhere and keeps its takes to itself
     */
    void compared(@Nullable Comparison comparison, boolean known);
  }

  /**
   * Compares a take with the last one of the same drill, tempo and click plan, off the window's
   * thread.
   */
  public void compareWithLast(String takeId, ComparisonHeard heard) {
    RehearsalHost hosting = host;
    if (hosting == null) {
      heard.compared(null, false);
      return;
    }
    CompletableFuture<?> unused =
        CompletableFuture.supplyAsync(() -> compared(hosting, takeId))
            .whenCompleteAsync(
                (found, failed) ->
                    heard.compared(found == null ? null : found.orElse(null), failed == null),
                windowThread);
  }

  private static Optional<Comparison> compared(RehearsalHost hosting, String takeId) {
    Optional<Take> now = hosting.take(takeId);
    if (now.isEmpty()) {
      return Optional.empty();
    }
    Entry.Key key = Entry.Key.of(now.get());
    String before = null;
    for (Entry entry : hosting.history()) {
      if (entry.id().equals(takeId)) {
        break;
      }
      before = entry.key().equals(key) ? entry.id() : before;
    }
    return Optional.ofNullable(before)
        .flatMap(hosting::take)
        .map(first -> Comparison.of(Scorer.analyse(first), Scorer.analyse(now.get())));
  }

  /** Hears the fewest clicks that were held; null where nothing was. */
  @FunctionalInterface
  public interface FewestHeard {
    /**
     * The answer.
     *
     * @param known false where the host is elsewhere and keeps its takes to itself
     */
    void found(@Nullable FewestClicks fewest, boolean known);
  }

  /** Looks up the fewest clicks that were held at a drill and tempo, off the window's thread. */
  public void fewestClicks(String title, double tempo, FewestHeard heard) {
    RehearsalHost hosting = host;
    if (hosting == null) {
      heard.found(null, false);
      return;
    }
    CompletableFuture<?> unused =
        CompletableFuture.supplyAsync(() -> FewestClicks.of(hosting.history(), title, tempo))
            .whenCompleteAsync(
                (found, failed) ->
                    heard.found(found == null ? null : found.orElse(null), failed == null),
                windowThread);
  }
}
