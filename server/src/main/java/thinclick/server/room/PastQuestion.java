package thinclick.server.room;

import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What a room asks its host about takes before, for one of its members. */
public sealed interface PastQuestion {
  /**
   * How it went up to a take.
   *
   * @param title of its drill
   * @param band true where the asker leads, and hears of the band
   * @param playerId of the asker; null for one without a part in the take
   */
  record CourseOf(String takeId, String title, boolean band, @Nullable String playerId)
      implements PastQuestion {}

  /**
   * The fewest clicks that were held.
   *
   * @param tempo beats a minute
   * @param players who is in the band, stand-ins included; empty before anybody has come in
   */
  record FewestAt(String title, double tempo, Set<String> players) implements PastQuestion {
    public FewestAt {
      players = Set.copyOf(players);
    }
  }
}
