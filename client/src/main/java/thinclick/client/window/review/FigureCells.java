package thinclick.client.window.review;

import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.words.Quantity;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;

/**
 * Figures as they stand in the tables of this page, each with its unit and in the digits that the
 * prose gives it; one that is not known says so.
 */
final class FigureCells {
  private final Words words;
  private final Speaker speaker;

  FigureCells(Words words) {
    this.words = words;
    speaker = Speaker.of(words.locale());
  }

  /** A share of what is written, "98 %". */
  String percent(Figure hold) {
    return hold.known() ? words.say("figure.percent", shown(Quantity.percent(hold))) : unknown();
  }

  /** A spread, "19 ms". */
  String millis(Figure figure) {
    return figure.known() ? words.say("figure.millis", shown(Quantity.millis(figure))) : unknown();
  }

  /** A drift in words, with its range. */
  String drift(@Nullable Said drift) {
    return drift == null ? unknown() : speaker.say(drift);
  }

  /** A lean in words: early, late, or on it. */
  String lean(Figure lean) {
    return lean.known()
        ? sided(Quantity.millis(lean), "review.lean.none", "review.lean.early", "review.lean.late")
        : unknown();
  }

  /**
   * How much earlier or later than something else, with its interval where there is one; where that
   * is shown to reach nothing, no side is said.
   */
  String difference(Figure figure) {
    if (!figure.known()) {
      return unknown();
    }
    Quantity millis = Quantity.millis(figure);
    return apart(reachesNothing(figure) ? millis.at(0) : millis) + between(figure);
  }

  private static boolean reachesNothing(Figure figure) {
    Interval interval = figure.interval();
    Quantity millis = Quantity.millis(figure);
    return interval != null
        && millis.at(interval.low()).side() <= 0
        && millis.at(interval.high()).side() >= 0;
  }

  /** How much earlier or later than something else, where no interval is known. */
  String apart(Quantity millis) {
    return sided(
        millis, "leader.difference.none", "leader.difference.early", "leader.difference.late");
  }

  /** Where no side is said before them, the two ends say each its own. */
  private String between(Figure figure) {
    Interval interval = figure.interval();
    if (interval == null) {
      return "";
    }
    Quantity low = Quantity.millis(figure).at(interval.low());
    Quantity high = low.at(interval.high());
    if (low.side() < 0 && high.side() > 0) {
      return words.say("leader.range.sides", shown(low.size()), shown(high.size()));
    }
    boolean early = low.side() < 0;
    boolean touches = reachesNothing(figure) && low.side() != high.side();
    return words.say(
        !touches ? "leader.range.millis" : early ? "leader.range.early" : "leader.range.late",
        shown((early ? high : low).size()),
        shown((early ? low : high).size()));
  }

  /** One of three sentences, by the side of what is shown. */
  String sided(Quantity millis, String none, String early, String late) {
    String key = millis.side() == 0 ? none : millis.side() < 0 ? early : late;
    return words.say(key, shown(millis.size()));
  }

  private String shown(Quantity quantity) {
    return quantity.shown(words.locale());
  }

  String unknown() {
    return words.say("review.unknown");
  }
}
