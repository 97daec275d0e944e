package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.List;

/**
 * Where the band stood when a click came back after at least two silent bars: foretold from the
 * attacks before the click alone, since smoothing over it would let the future leak in.
 */
final class Returns {
  private static final int LEAST_SILENT_BARS = 2;
  private static final int LEAST_ATTACKS = 2;

  /** So many bars before the click tell where it was expected. */
  private static final int BARS_BEFORE = 12;

  private Returns() {}

  static List<Return> of(Understanding understood) {
    Sheet sheet = understood.sheet();
    Pulse pulse = understood.pulse();
    List<Return> found = new ArrayList<>();
    int silentFrom = 0;
    for (int click : sheet.clickSteps) {
      int firstSilent = (silentFrom + sheet.stepsPerBar - 1) / sheet.stepsPerBar;
      int bar = sheet.barOf(click);
      int silentBars = bar - firstSilent;
      silentFrom = click + 1;
      if (silentBars >= LEAST_SILENT_BARS && pulse != null && click <= sheet.lastCountedStep) {
        found.add(new Return(bar, click, silentBars, error(understood, pulse, click)));
      }
    }
    return List.copyOf(found);
  }

  private static Figure error(Understanding understood, Pulse pulse, int click) {
    Sheet sheet = understood.sheet();
    int lastBar = pulse.attacksBetween(click - sheet.stepsPerBar, click);
    if (lastBar < LEAST_ATTACKS) {
      return Figure.unknown(
          Reason.tooFew("a return: attacks in the last silent bar", LEAST_ATTACKS, lastBar));
    }
    double[] foretold = pulse.foretell(click - BARS_BEFORE * sheet.stepsPerBar, click);
    Places places = understood.places();
    int span = Math.min(8, click);
    double bend = places.bendAt(click - 1);
    double slope = span < 2 ? 0 : (bend - places.bendAt(click - span)) / (span - 1);
    double late = foretold[0] + bend + slope;
    return Figure.of(
        Round.millis(late),
        new Interval(
            Round.millis(late - 1.96 * foretold[1]), Round.millis(late + 1.96 * foretold[1])));
  }
}
