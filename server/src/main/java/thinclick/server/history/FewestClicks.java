package thinclick.server.history;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import thinclick.server.scoring.Review;
import thinclick.server.scoring.StageReview;
import thinclick.server.words.ClickWords;
import thinclick.server.words.Said;

/**
 * The fewest clicks that a band held at a drill and a tempo: the thinnest stage that was won in any
 * take, and when that was.
 *
 * @param clicksPerBar clicks a bar of that stage
 * @param click what clicked in it
 * @param holdPercent what was placed in it
 * @param begunAt when the take was played; of equal ones the first, which set the mark
 */
public record FewestClicks(double clicksPerBar, Said click, double holdPercent, Instant begunAt) {

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
    if (index < 0 || index >= entry.key().stages().size()) {
      return Optional.empty();
    }
    StageReview stage = review.stages().get(index);
    return stage.hold().known()
        ? Optional.of(
            new FewestClicks(
                stage.clicksPerBar(),
                click(entry.key(), index),
                stage.hold().get(),
                entry.begunAt()))
        : Optional.empty();
  }

  private static Said click(Entry.Key key, int stage) {
    return ClickWords.of(key.stages().get(stage), key.meter(), key.stepsPerBeat());
  }
}
