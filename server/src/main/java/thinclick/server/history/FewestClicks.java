package thinclick.server.history;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import thinclick.server.scoring.Review;
import thinclick.server.scoring.StageReview;

/**
 * The fewest clicks that a band held at a drill and a tempo: the thinnest stage that was won in any
 * take, and when that was.
 *
 * @param clicksPerBar clicks a bar of that stage
 * @param stage the stage, with its bars and what clicked
 * @param holdPercent what was placed in it
 * @param begunAt when the take was played; of equal ones the first, which set the mark
 */
public record FewestClicks(
    double clicksPerBar, StageReview stage, double holdPercent, Instant begunAt) {

  /** What clicked, in words. */
  public String click() {
    return stage.click();
  }

  /** Looks it up; empty where nothing was held at this drill and tempo. */
  public static Optional<FewestClicks> of(List<Entry> entries, String title, double tempo) {
    return entries.stream()
        .filter(entry -> entry.key().title().equals(title) && entry.key().tempo() == tempo)
        .flatMap(entry -> held(entry).stream())
        .min(
            Comparator.comparingDouble(FewestClicks::clicksPerBar)
                .thenComparing(FewestClicks::begunAt));
  }

  private static Optional<FewestClicks> held(Entry entry) {
    Review review = entry.review();
    int index = review.ensemble().heldThrough();
    if (index < 0 || index >= review.stages().size()) {
      return Optional.empty();
    }
    StageReview stage = review.stages().get(index);
    return stage.hold().known()
        ? Optional.of(
            new FewestClicks(stage.clicksPerBar(), stage, stage.hold().get(), entry.begunAt()))
        : Optional.empty();
  }
}
