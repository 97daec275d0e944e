package thinclick.server.history;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import thinclick.protocol.message.AnswerMessage.HeldClick;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.scoring.Review;
import thinclick.server.scoring.StageReview;
import thinclick.server.words.ClickWords;
import thinclick.server.words.Said;

/**
 * The fewest clicks that a band held at a drill and a tempo: the thinnest stage that was won in any
 * take, and when that was.
 *
 * @param stage what clicked
 * @param clicksPerBar clicks a bar of that stage
 * @param holdPercent what was placed in it
 * @param begunAt when the take was played; of equal ones the first, which set the mark
 */
public record FewestClicks(
    Stage stage,
    Meter meter,
    int stepsPerBeat,
    double clicksPerBar,
    double holdPercent,
    Instant begunAt) {

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
    Entry.Key key = entry.key();
    int index = review.ensemble().heldThrough();
    if (index < 0 || index >= key.stages().size()) {
      return Optional.empty();
    }
    StageReview stage = review.stages().get(index);
    return stage.hold().known()
        ? Optional.of(
            new FewestClicks(
                key.stages().get(index),
                key.meter(),
                key.stepsPerBeat(),
                stage.clicksPerBar(),
                stage.hold().get(),
                entry.begunAt()))
        : Optional.empty();
  }

  /** What clicked, in words. */
  public Said click() {
    return ClickWords.of(stage, meter, stepsPerBeat);
  }

  /** As it goes over the wire. */
  public HeldClick told() {
    return new HeldClick(stage, meter, stepsPerBeat, clicksPerBar, holdPercent, begunAt.toString());
  }

  /** From the wire. */
  public static FewestClicks of(HeldClick told) {
    return new FewestClicks(
        told.stage(),
        told.meter(),
        told.stepsPerBeat(),
        told.clicksPerBar(),
        told.holdPercent(),
        Instant.parse(told.begunAt()));
  }
}
