package thinclick.client.window.review;

import org.jspecify.annotations.Nullable;
import thinclick.server.picture.PlayerSheet;
import thinclick.server.scoring.Analysis;

/**
 * A review as it stands on the page.
 *
 * @param takeId the take
 * @param own the own part's player; empty for a listener
 * @param content the words and pictures, from above
 * @param analysis the own attacks, as far as they are known here; null where none are
 * @param unheard true where nothing was heard from this player
 */
public record ReviewPage(
    String takeId,
    String own,
    PlayerSheet.Content content,
    @Nullable Analysis analysis,
    boolean unheard) {

  /** True where something was played that can be listened to again. */
  boolean canBeHeard() {
    return analysis != null
        && analysis.take().attacks().stream().anyMatch(attack -> attack.player().equals(own));
  }
}
