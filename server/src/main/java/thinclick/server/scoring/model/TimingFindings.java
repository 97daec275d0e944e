package thinclick.server.scoring.model;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the model says of a take.
 *
 * @param players one a voice, in order
 * @param coupling who follows whom
 * @param delay what delayed hearing cost; null where nobody heard the others late, or no stretch
 *     without a click is long enough to tell
 */
public record TimingFindings(
    List<PlayerTiming> players, Coupling coupling, @Nullable DelayAccount delay) {
  public TimingFindings {
    players = List.copyOf(players);
  }
}
