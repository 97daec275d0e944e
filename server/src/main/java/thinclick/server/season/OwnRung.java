package thinclick.server.season;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import thinclick.protocol.music.Stage;
import thinclick.server.history.Entry;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.StageReview;
import thinclick.server.words.ClickWords;
import thinclick.server.words.Said;

/**
 * The thinnest click that somebody held: of all stages whose own hold was 80 % or more, the one
 * with the fewest clicks a bar. As for the band, of equal ones in a take it is the last, and of
 * takes that held equally few the first, which set the mark.
 *
 * @param click what clicked
 * @param clicksPerBar clicks a bar
 * @param holdPercent placed of written in that stage, percent
 * @param begunAt when the take was played
 */
public record OwnRung(Said click, double clicksPerBar, double holdPercent, Instant begunAt) {

  static Optional<OwnRung> of(List<ClassTake> takes, String key) {
    OwnRung best = null;
    for (ClassTake take : takes) {
      PlayerReview review = take.review(key);
      Entry entry = take.entry();
      if (review == null) {
        continue;
      }
      OwnRung own = null;
      for (int i = 0; i < Math.min(review.stages().size(), entry.key().stages().size()); i++) {
        Figure hold = review.stages().get(i).hold();
        double clicks = entry.review().stages().get(i).clicksPerBar();
        if (hold.known()
            && hold.get() >= StageReview.HELD_PERCENT
            && (own == null || clicks <= own.clicksPerBar())) {
          Stage stage = entry.key().stages().get(i);
          Said said = ClickWords.of(stage, entry.key().meter(), entry.key().stepsPerBeat());
          own = new OwnRung(said, clicks, hold.get(), entry.begunAt());
        }
      }
      if (own != null && (best == null || own.clicksPerBar() < best.clicksPerBar())) {
        best = own;
      }
    }
    return Optional.ofNullable(best);
  }
}
