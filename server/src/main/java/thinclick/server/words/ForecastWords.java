package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.Meter;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.ForecastReview;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.PlayerReview;

/** What a thinner click would do to one player, said with its interval. */
public final class ForecastWords {
  /** Under this hold, percent, a thinner click is no question yet. */
  public static final double READY_HOLD = 75;

  private ForecastWords() {}

  /** Whether a spread that was foretold would place four in five. */
  private enum Holds {
    YES,
    OPEN,
    NO
  }

  /**
   * "With a thinner click (the one of every bar), expect Ana's spread near 20 ms (15-30); that
   * would hold." Of several, the thinnest that would hold, else the fullest; null where none was
   * foretold.
   *
   * @param toleranceMillis of the take
   */
  public static @Nullable Said thinner(
      PlayerReview review, Meter meter, int stepsPerBeat, double toleranceMillis) {
    ForecastReview chosen = null;
    for (ForecastReview one : review.forecasts()) {
      if (one.spreadMillis().interval() != null
          && (chosen == null || holds(toleranceMillis, one.spreadMillis()) == Holds.YES)) {
        chosen = one;
      }
    }
    if (chosen == null) {
      return null;
    }
    Figure spread = chosen.spreadMillis();
    Interval interval = Objects.requireNonNull(spread.interval());
    return Said.of(
        switch (holds(toleranceMillis, spread)) {
          case YES -> "forecast.holds";
          case OPEN -> "forecast.open";
          case NO -> "forecast.tooThin";
        },
        review.player(),
        ClickWords.of(chosen.stage(), meter, stepsPerBeat),
        Quantity.millis(spread),
        Quantity.millis(spread).at(interval.low()),
        Quantity.millis(spread).at(interval.high()));
  }

  /** "After eight silent bars, expect Ana about 60 ms off (40-90) when the click comes back." */
  public static List<Said> silence(PlayerReview review) {
    List<Said> says = new ArrayList<>();
    for (ForecastReview one : review.forecasts()) {
      Figure back = one.returnMillis();
      Interval interval = back.interval();
      if (interval != null) {
        says.add(
            Said.of(
                "forecast.silence",
                review.player(),
                one.stage().bars(),
                Speaker.number(one.stage().bars()),
                Quantity.millis(back),
                Quantity.millis(back).at(interval.low()),
                Quantity.millis(back).at(interval.high())));
      }
    }
    return says;
  }

  private static Holds holds(double toleranceMillis, Figure spread) {
    Interval interval = spread.interval();
    double widest = toleranceMillis / LeanRules.PLACES_EIGHTY;
    if (interval == null || (interval.low() <= widest && interval.high() > widest)) {
      return Holds.OPEN;
    }
    return interval.high() <= widest ? Holds.YES : Holds.NO;
  }
}
