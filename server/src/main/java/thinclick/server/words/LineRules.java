package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Hearing;
import thinclick.server.scoring.DelayReview;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;

/**
 * Two places: what hearing each other late did to the tempo, and what the players did. They are
 * charged only for what the line cannot have done.
 */
final class LineRules {
  /** There and back together, ms: up to this the two cannot be told apart (our simulations). */
  private static final double TOO_SHORT = 10;

  /** The rule that says how the others were heard. */
  static final String HEARING = "hearing";

  private LineRules() {}

  /**
   * "Slowed 6 ms a beat from bar 1 to bar 32; the line makes 6 (5 to 7) of it, the players held."
   */
  static List<Finding> line(Evidence evidence) {
    DelayReview delay = evidence.review().ensemble().delay();
    if (delay == null) {
      return List.of();
    }
    Quantity measured = perBeat(delay.measuredMillis(), delay.playersMillis().interval());
    Said moved =
        Said.of(
            delay.measuredMillis() >= 0 ? "line.slowed" : "line.quickened",
            measured.size(),
            bar(evidence, delay.fromStep() + evidence.take().grid().stepsPerBar() - 1) + 1,
            bar(evidence, delay.toStep() - 1) + 1);
    if (!toldApart(evidence, delay)) {
      Said open = Said.of("line.open", moved);
      return List.of(Finding.ofBand("line", Matter.CAVEAT, 60, open, null));
    }
    Figure network = delay.networkMillis();
    Figure players = delay.playersMillis();
    Said line = share(network, 1);
    if (!playersMoved(evidence, delay)) {
      Said says = Said.of("line.alone", moved, line);
      return List.of(Finding.ofBand("line", Matter.CAVEAT, 60, says, null));
    }
    boolean dragged = players.get() > 0;
    Said own = share(players, dragged ? 1 : -1);
    Said says = Said.of(dragged ? "line.andDragged" : "line.andPushed", moved, line, own);
    return List.of(
        Finding.ofBand(
            "line",
            Matter.TIME,
            100 * Math.abs(players.get()) / evidence.beatMillis(),
            says,
            dragged ? Advice.SING : Advice.ISLANDS));
  }

  /**
   * Which way of hearing the others a player had, and what it means for being judged fairly; to
   * that player alone, and only where somebody else of flesh and blood played along.
   */
  static List<Finding> hearing(Evidence evidence) {
    List<Chairful> people =
        evidence.players.stream().filter(player -> !player.review.standIn()).toList();
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : people) {
      Hearing hearing = player.part.hearing();
      if (hearing != null && people.size() > 1) {
        @Nullable Said says =
            switch (hearing.mode()) {
              case NOT_AT_ALL -> null; // in one room they are heard through the air
              case AS_IT_ARRIVES ->
                  Said.of(
                      "hearing.late", player.name(), Quantity.millis(hearing.delayMillis(), null));
              case IN_TIME -> Said.of("hearing.inTime", player.name());
            };
        if (says != null) {
          findings.add(new Finding(HEARING, Matter.CAVEAT, player.name(), 1, says, null).quiet());
        }
      }
    }
    return findings;
  }

  /** True where the account covers these bars, from 0, so that the drift is told there. */
  static boolean accountsFor(Evidence evidence, int fromBar, int toBar) {
    DelayReview delay = evidence.review().ensemble().delay();
    return delay != null
        && bar(evidence, delay.fromStep()) < toBar
        && bar(evidence, delay.toStep() - 1) >= fromBar;
  }

  /**
   * True where hearing late may have made all of a slowing: with full correction on both sides the
   * line slows by half of the way there and back a beat, and never by more.
   *
   * @param percent the drift, positive slowing
   */
  static boolean mayHaveMade(Evidence evidence, double percent) {
    double millisABeat = percent / 100 * evidence.beatMillis();
    return millisABeat > 0 && millisABeat <= latestMillis(evidence);
  }

  private static boolean toldApart(Evidence evidence, DelayReview delay) {
    return delay.toldApart() && 2 * latestMillis(evidence) > TOO_SHORT;
  }

  /** How late one hears the others, of all who hear them as they arrive. */
  private static double latestMillis(Evidence evidence) {
    double latest = 0;
    for (Chairful player : evidence.players) {
      Hearing hearing = player.part.hearing();
      if (hearing != null && hearing.mode() == Hearing.Mode.AS_IT_ARRIVES) {
        latest = Math.max(latest, hearing.delayMillis());
      }
    }
    return latest;
  }

  /** True where the players themselves slowed or quickened, over and above the line. */
  private static boolean playersMoved(Evidence evidence, DelayReview delay) {
    Interval interval = delay.playersMillis().interval();
    return toldApart(evidence, delay) && interval != null && !interval.contains(0);
  }

  /** True where the account says that how the band stood at this step is the line's doing. */
  static boolean excuses(Evidence evidence, int step) {
    DelayReview delay = evidence.review().ensemble().delay();
    return delay != null
        && delay.fromStep() < step
        && step <= delay.toStep()
        && !playersMoved(evidence, delay);
  }

  private static int bar(Evidence evidence, int step) {
    return step / evidence.take().grid().stepsPerBar();
  }

  /** "6 (5 to 7)", seen from the side of the sign. */
  private static Said share(Figure figure, int sign) {
    Interval interval = figure.interval();
    double low = interval == null ? figure.get() : interval.low();
    double high = interval == null ? figure.get() : interval.high();
    return Said.of(
        "line.share",
        perBeat(sign * figure.get(), interval),
        perBeat(sign > 0 ? low : -high, interval),
        perBeat(sign > 0 ? high : -low, interval));
  }

  private static Quantity perBeat(double value, @Nullable Interval interval) {
    return new Quantity(value, Quantity.halfWidth(interval), 0.1);
  }
}
