package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.Stage;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.ForecastReview;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.PlayerReview;

/** What a thinner click than any that was played would do to a player against a click. */
final class ForecastRules {
  /** Under this hold, percent, a thinner click is no question yet. */
  private static final double READY_HOLD = 75;

  private ForecastRules() {}

  /** Whether a spread that was foretold would place four in five. */
  private enum Holds {
    YES,
    OPEN,
    NO
  }

  /**
   * "A thinner click, the first beat alone: expect Ana's spread near 20 ms (15-30); that would
   * hold." Of several, the thinnest that would hold, else the fullest.
   */
  static List<Finding> thinner(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : ready(evidence)) {
      ForecastReview chosen = null;
      for (ForecastReview one : player.review.forecasts()) {
        if (one.spreadMillis().interval() != null
            && (chosen == null || holds(evidence, one.spreadMillis()) == Holds.YES)) {
          chosen = one;
        }
      }
      if (chosen != null) {
        findings.add(thinner(evidence, player, chosen));
      }
    }
    return findings;
  }

  private static Finding thinner(Evidence evidence, Chairful player, ForecastReview forecast) {
    Figure spread = forecast.spreadMillis();
    Interval interval = Objects.requireNonNull(spread.interval());
    Said says =
        Said.of(
            switch (holds(evidence, spread)) {
              case YES -> "forecast.holds";
              case OPEN -> "forecast.open";
              case NO -> "forecast.tooThin";
            },
            player.name(),
            ClickWords.of(forecast.stage(), evidence.meter(), evidence.stepsPerBeat()),
            Quantity.millis(spread),
            end(spread, interval.low()),
            end(spread, interval.high()));
    return finding(evidence, "thinner", player, 2, says);
  }

  /** "After eight silent bars expect Ana about 60 ms off (40-90) when the click comes back." */
  static List<Finding> silence(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : ready(evidence)) {
      for (ForecastReview one : player.review.forecasts()) {
        Figure back = one.returnMillis();
        Interval interval = back.interval();
        if (interval != null) {
          Stage stage = one.stage();
          findings.add(
              finding(
                  evidence,
                  "silence",
                  player,
                  1,
                  Said.of(
                      "forecast.silence",
                      player.name(),
                      stage.bars(),
                      Speaker.number(stage.bars()),
                      Quantity.millis(back),
                      end(back, interval.low()),
                      end(back, interval.high()))));
        }
      }
    }
    return findings;
  }

  /** In a band it is the player's own business. */
  private static Finding finding(
      Evidence evidence, String rule, Chairful player, double size, Said says) {
    Finding finding = new Finding(rule, Matter.AHEAD, player.name(), size, says, null);
    return evidence.players.size() == 1 ? finding : finding.quiet();
  }

  private static List<Chairful> ready(Evidence evidence) {
    return evidence.players.stream()
        .filter(
            player -> {
              PlayerReview review = player.review;
              Figure hold = review.hold();
              return !review.standIn() && hold.known() && hold.get() >= READY_HOLD;
            })
        .toList();
  }

  private static Holds holds(Evidence evidence, Figure spread) {
    @Nullable Interval interval = spread.interval();
    double widest = evidence.review().toleranceMillis() / LeanRules.PLACES_EIGHTY;
    if (interval == null || (interval.low() <= widest && interval.high() > widest)) {
      return Holds.OPEN;
    }
    return interval.high() <= widest ? Holds.YES : Holds.NO;
  }

  /** An end of an interval, as round as the figure itself. */
  private static Quantity end(Figure figure, double value) {
    return Quantity.millis(value, figure.interval());
  }
}
