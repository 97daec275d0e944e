package thinclick.client.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import thinclick.client.check.Verdict.Known;
import thinclick.client.check.Verdict.Refused;
import thinclick.client.check.Verdict.Why;

/**
 * The check without a microphone: taps along with a click. What comes out is output delay, input
 * delay and the player's own habit in one sum; people tap ahead of a click, usually by 30 to 50 ms
 * (Aschersleben and Prinz 1995), and nothing here can part that from the machine.
 */
public final class TapCheck {
  /** Clicks a minute. */
  public static final double TEMPO = 100;

  /** Clicks that only lead in. */
  public static final int LEAD_IN = 4;

  /** Clicks whose taps count. */
  public static final int COUNTED = 36;

  static final int FEWEST = 24;
  static final double MOST_UNCERTAIN_MILLIS = 25;
  static final double MOST_OUTLIERS = 0.2;
  static final double FURTHEST_MILLIS = 350;

  /** So many standard errors either way. */
  static final double ERRORS = 2.6;

  /**
   * The halves of an honest series differ by twice the error of their mean now and then; at the
   * uncertainty itself every fifth would be refused, at this multiple of it every fourteenth.
   */
  static final double HALVES = 1.4;

  /** From here on an offset may be that of another click, milliseconds. */
  private static final double DOUBTFUL_MILLIS = 150;

  /** Further out than so many spreads, and at least by so much, a tap is an outlier. */
  private static final double OUTLYING_SPREADS = 3.5;

  private static final double OUTLYING_LEAST_MILLIS = 10;
  private static final double NANOS_A_MILLI = 1e6;

  private TapCheck() {}

  /**
   * The verdict.
   *
   * @param clickNanos when each click was to be heard, lead-in included, ascending
   * @param tapNanos the stamps, ascending
   * @param stumbled true where the output did
   */
  public static Verdict judge(long[] clickNanos, long[] tapNanos, boolean stumbled) {
    List<Double> offsets = answered(clickNanos, tapNanos);
    if (stumbled) {
      return new Refused(Why.STUMBLED, offsets.size(), offsets);
    }
    if (offsets.size() < FEWEST) {
      return new Refused(Why.FEW, offsets.size(), offsets);
    }
    double[] all = offsets.stream().mapToDouble(Double::doubleValue).toArray();
    double median = Robust.median(all);
    double reach = Math.max(OUTLYING_LEAST_MILLIS, OUTLYING_SPREADS * Robust.spread(all));
    double[] usable =
        offsets.stream()
            .mapToDouble(Double::doubleValue)
            .filter(v -> Math.abs(v - median) <= reach)
            .toArray();
    if (all.length - usable.length > MOST_OUTLIERS * all.length) {
      return new Refused(Why.OUTLIERS, usable.length, offsets);
    }
    if (usable.length < FEWEST) {
      return new Refused(Why.FEW, usable.length, offsets);
    }
    double centre = Robust.centre(usable);
    double uncertainty = ERRORS * Robust.centreError(usable);
    if (Math.abs(centre) > FURTHEST_MILLIS) {
      return new Refused(Why.BEYOND, usable.length, offsets);
    }
    if (uncertainty > MOST_UNCERTAIN_MILLIS) {
      return new Refused(Why.SCATTERED, usable.length, offsets);
    }
    int half = usable.length / 2;
    double first = Robust.centre(Arrays.copyOfRange(usable, 0, half));
    double second = Robust.centre(Arrays.copyOfRange(usable, half, usable.length));
    if (Math.abs(second - first) > Math.max(uncertainty, 1) * HALVES) {
      return new Refused(Why.HALVES, usable.length, offsets);
    }
    return new Known(Verdict.How.TAPS, centre, Math.max(uncertainty, 0.5), usable.length, offsets);
  }

  /**
   * Each counted click's tap, milliseconds after it. A delay of more than half a beat would be
   * taken for an early tap of the next click; so taps far from their clicks are laid against the
   * clicks before and after as well, and where they answer most of them is where they belong.
   */
  static List<Double> answered(long[] clickNanos, long[] tapNanos) {
    List<Double> near = answered(clickNanos, tapNanos, 0, LEAD_IN);
    double[] offsets = near.stream().mapToDouble(Double::doubleValue).toArray();
    if (near.isEmpty() || Math.abs(Robust.median(offsets)) < DOUBTFUL_MILLIS) {
      return near;
    }
    int best = 0;
    int most = answered(clickNanos, tapNanos, 0, 0).size();
    for (int shift : new int[] {1, -1}) {
      int found = answered(clickNanos, tapNanos, shift, 0).size();
      if (found > most) {
        most = found;
        best = shift;
      }
    }
    return answered(clickNanos, tapNanos, best, LEAD_IN);
  }

  private static List<Double> answered(long[] clickNanos, long[] tapNanos, int shift, int from) {
    double beat = clickNanos.length < 2 ? 0 : (double) (clickNanos[1] - clickNanos[0]);
    List<Double> offsets = new ArrayList<>();
    for (int click = from; click < clickNanos.length; click++) {
      double centre = clickNanos[click] + shift * beat;
      double nearest = Double.NaN;
      for (long tap : tapNanos) {
        double off = tap - centre;
        if (Math.abs(off) <= beat / 2
            && (Double.isNaN(nearest) || Math.abs(off) < Math.abs(nearest))) {
          nearest = off;
        }
      }
      if (!Double.isNaN(nearest)) {
        offsets.add((nearest + shift * beat) / NANOS_A_MILLI);
      }
    }
    return offsets;
  }
}
