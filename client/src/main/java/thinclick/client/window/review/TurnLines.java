package thinclick.client.window.review;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.FreeReview;
import thinclick.server.scoring.Response;
import thinclick.server.scoring.Review;
import thinclick.server.words.DriftWords;
import thinclick.server.words.Quantity;
import thinclick.server.words.ShiftWords;
import thinclick.server.words.Speaker;

/** Turns, for the leader: answers against their calls, and what was played freely. */
final class TurnLines {
  private final Words words;
  private final Speaker speaker;
  private final FigureCells cells;

  TurnLines(Words words) {
    this.words = words;
    this.speaker = Speaker.of(words.locale());
    this.cells = new FigureCells(words);
  }

  /** Each answer; empty where nothing was to be answered. */
  Lines answers(Review review) {
    List<List<String>> lines = new ArrayList<>();
    for (Response one : review.responses()) {
      lines.add(
          List.of(
              one.player(),
              bars(one.fromBar(), one.toBar()),
              words.say("review.of", one.answered(), one.called()),
              Integer.toString(one.extra()),
              one.of(),
              later(one.laterMillis())));
    }
    return new Lines(
        List.of(
            words.say("review.player"),
            words.say("leader.turns.bars"),
            words.say("leader.turns.back"),
            words.say("leader.turns.more"),
            words.say("leader.turns.calledBy"),
            words.say("leader.turns.later")),
        lines);
  }

  private String later(@Nullable Double millis) {
    return millis == null ? cells.unknown() : cells.apart(Quantity.millis(millis, null));
  }

  /** Each free stretch; empty where nothing was free. */
  Lines free(Review review) {
    List<List<String>> lines = new ArrayList<>();
    for (FreeReview one : review.free()) {
      lines.add(
          List.of(
              one.player(),
              bars(one.fromBar(), one.toBar()),
              Integer.toString(one.attacks()),
              back(review, one),
              moved(one.driftPercent())));
    }
    return new Lines(
        List.of(
            words.say("review.player"),
            words.say("leader.turns.bars"),
            words.say("leader.turns.attacks"),
            words.say("leader.turns.return"),
            words.say("leader.turns.pulse")),
        lines);
  }

  private String back(Review review, FreeReview one) {
    if (one.returnBar() == null) {
      boolean ended = one.toBar() >= review.bars();
      return words.say(ended ? "leader.turns.ended" : "leader.nothing");
    }
    if (one.returnSteps() == null) {
      return words.say("leader.turns.notBack", one.returnBar() + 1);
    }
    if (one.returnSteps() != 0) {
      return speaker.say(ShiftWords.of(one.returnSteps(), review.meter(), review.stepsPerBeat()));
    }
    if (!one.returnMillis().known()) {
      return cells.unknown();
    }
    boolean home = one.cameHome();
    return cells.sided(
        Quantity.millis(one.returnMillis()),
        "leader.turns.home.none",
        home ? "leader.turns.home.early" : "review.lean.early",
        home ? "leader.turns.home.late" : "review.lean.late");
  }

  private String moved(Figure drift) {
    return drift.known() && !DriftWords.matters(drift)
        ? words.say("leader.turns.held")
        : cells.drift(DriftWords.of(drift));
  }

  private static String bars(int from, int to) {
    return from + 1 == to ? Integer.toString(to) : (from + 1) + "\u2013" + to;
  }
}
