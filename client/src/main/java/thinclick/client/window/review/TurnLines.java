package thinclick.client.window.review;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.FreeReview;
import thinclick.server.scoring.Response;
import thinclick.server.scoring.Review;
import thinclick.server.words.Quantity;
import thinclick.server.words.ShiftWords;
import thinclick.server.words.Speaker;

/** Turns, for the leader: answers against their calls, and what was played freely. */
final class TurnLines {
  private final Words words;
  private final Speaker speaker;

  TurnLines(Words words, Speaker speaker) {
    this.words = words;
    this.speaker = speaker;
  }

  /** Each answer; empty where nothing was to be answered. */
  LeaderModel.Lines answers(Review review) {
    List<List<String>> lines = new ArrayList<>();
    for (Response one : review.responses()) {
      lines.add(
          List.of(
              one.player(),
              one.of(),
              bars(one.fromBar(), one.toBar()),
              words.say("review.of", one.answered(), one.called()),
              Integer.toString(one.extra()),
              later(one.laterMillis())));
    }
    return new LeaderModel.Lines(
        List.of(
            words.say("review.player"),
            words.say("leader.turns.calledBy"),
            words.say("leader.turns.bars"),
            words.say("leader.turns.back"),
            words.say("leader.turns.more"),
            words.say("leader.turns.later")),
        lines);
  }

  private String later(@Nullable Double millis) {
    if (millis == null) {
      return words.say("review.unknown");
    }
    long rounded = Math.round(millis);
    String key =
        rounded == 0
            ? "leader.difference.none"
            : rounded < 0 ? "leader.difference.early" : "leader.difference.late";
    return words.say(key, Math.abs(rounded));
  }

  /** Each free stretch; empty where nothing was free. */
  LeaderModel.Lines free(Review review) {
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
    return new LeaderModel.Lines(
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
      return words.say("leader.nothing");
    }
    if (one.returnSteps() == null) {
      return words.say("leader.turns.notBack", one.returnBar() + 1);
    }
    if (one.returnSteps() != 0) {
      return speaker.say(ShiftWords.of(one.returnSteps(), review.meter(), review.stepsPerBeat()));
    }
    return later(one.returnMillis().known() ? (Double) one.returnMillis().get() : null);
  }

  private String moved(Figure drift) {
    return drift.known()
        ? words.say("leader.turns.drift", Quantity.drift(drift).shown(words.locale()))
        : words.say("review.unknown");
  }

  private static String bars(int from, int to) {
    return from + 1 == to ? Integer.toString(to) : (from + 1) + "\u2013" + to;
  }
}
