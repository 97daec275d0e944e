package thinclick.server.history;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Review;

/**
 * One take of a course, as far as it is told: the band's figures, or one player's.
 *
 * @param id of the take
 * @param begunAt when it was played
 * @param hold percent of what is written; null where the player has no line in the take
 * @param spread ms; null where the player has no line in the take
 * @param own what is told of a player besides; null in a band's course
 * @param heldThrough the stage that was held with the fewest clicks, from 0; -1 for none, and in a
 *     player's course
 */
public record CourseLine(
    String id,
    Instant begunAt,
    @Nullable Figure hold,
    @Nullable Figure spread,
    @Nullable Own own,
    int heldThrough) {
  /**
   * What is told of one player.
   *
   * @param leanMillis positive late
   * @param written attacks
   * @param placed of them
   * @param dropped of them
   * @param added beyond them
   */
  public record Own(Figure leanMillis, int written, int placed, int dropped, int added) {}

  /**
   * Of a take.
   *
   * @param player as called in that take; null for the band
   */
  public static CourseLine of(Entry entry, @Nullable String player) {
    Review review = entry.review();
    if (player == null) {
      return new CourseLine(
          entry.id(),
          entry.begunAt(),
          review.ensemble().hold(),
          review.ensemble().spreadMillis(),
          null,
          review.ensemble().heldThrough());
    }
    PlayerReview own = review.player(player);
    return own == null
        ? new CourseLine(entry.id(), entry.begunAt(), null, null, null, -1)
        : new CourseLine(
            entry.id(),
            entry.begunAt(),
            own.hold(),
            own.spreadMillis(),
            new Own(own.leanMillis(), own.written(), own.placed(), own.dropped(), own.added()),
            -1);
  }
}
