package thinclick.client.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import thinclick.client.check.Verdict.Known;
import thinclick.client.check.Verdict.Refused;
import thinclick.client.check.Verdict.Why;

/**
 * The check with a microphone. It hears each click late by output and microphone, each tap later
 * than its stamp by the microphone less the input; the difference is output and input together, the
 * microphone's own delay falls out, and so does the player's habit. How the sum divides between
 * output and input cannot be told, and no part of the program needs to know.
 */
public final class MicrophoneCheck {
  /** Clicks that are played for the microphone. */
  public static final int CLICKS = 8;

  /** Taps in the silence after them. */
  public static final int TAPS = 12;

  static final int FEWEST_CLICKS = 5;
  static final int FEWEST_TAPS = 8;

  /** A key sounds where it lands, not where it makes contact (common practice, no source). */
  static final double KEY_TRAVEL_MILLIS = 2;

  private static final double FURTHEST_MILLIS = 500;
  private static final double BEFORE_MILLIS = 120;
  private static final double AFTER_MILLIS = 400;

  private MicrophoneCheck() {}

  /**
   * The verdict.
   *
   * @param shape one click as it is played, at the recording's rate
   * @param clickNanos when each was to be heard
   * @param tapNanos the stamps of the taps in silence
   */
  public static Verdict judge(
      Recording heard, float[] shape, long[] clickNanos, long[] tapNanos, boolean stumbled) {
    if (stumbled) {
      return new Refused(Why.STUMBLED, 0, List.of());
    }
    Listener listener = new Listener(heard);
    double perMilli = heard.rate() / 1e3;
    List<Double> clicks = new ArrayList<>();
    for (long click : clickNanos) {
      double at = heard.sampleAt(click);
      double found = listener.find(shape, at, at + FURTHEST_MILLIS * perMilli);
      if (!Double.isNaN(found)) {
        clicks.add(heard.millisAfter(found, click));
      }
    }
    if (clicks.size() < FEWEST_CLICKS) {
      return new Refused(Why.CLICK_UNHEARD, clicks.size(), List.of());
    }
    double clickCentre = Robust.median(array(clicks));
    List<Double> offsets = new ArrayList<>();
    for (int i = 0; i < tapNanos.length; i++) {
      double at = heard.sampleAt(tapNanos[i]);
      double from = at - BEFORE_MILLIS * perMilli;
      double to = at + AFTER_MILLIS * perMilli;
      if (i + 1 < tapNanos.length) {
        // The next tap's own knock must not be taken for this one's.
        to = Math.min(to, heard.sampleAt(tapNanos[i + 1]) - BEFORE_MILLIS * perMilli);
      }
      double found = listener.knock(from, to);
      if (!Double.isNaN(found)) {
        offsets.add(clickCentre - heard.millisAfter(found, tapNanos[i]));
      }
    }
    if (offsets.size() < FEWEST_TAPS) {
      return new Refused(Why.TAPS_UNHEARD, offsets.size(), offsets);
    }
    return verdict(array(clicks), array(offsets), offsets);
  }

  private static Verdict verdict(double[] clicks, double[] taps, List<Double> offsets) {
    double latency = Robust.centre(taps);
    double[] near =
        Arrays.stream(taps)
            .filter(v -> Math.abs(v - latency) <= Math.max(10, 3.5 * Robust.spread(taps)))
            .toArray();
    if (taps.length - near.length > TapCheck.MOST_OUTLIERS * taps.length) {
      return new Refused(Why.OUTLIERS, near.length, offsets);
    }
    double error = Math.hypot(error(near), error(clicks));
    double uncertainty = Math.hypot(TapCheck.ERRORS * error, KEY_TRAVEL_MILLIS);
    if (uncertainty > TapCheck.MOST_UNCERTAIN_MILLIS) {
      return new Refused(Why.SCATTERED, near.length, offsets);
    }
    if (Math.abs(latency) > TapCheck.FURTHEST_MILLIS) {
      return new Refused(Why.BEYOND, near.length, offsets);
    }
    return new Known(
        Verdict.How.MICROPHONE, Robust.centre(near), uncertainty, near.length, offsets);
  }

  private static double error(double[] values) {
    return Math.max(Robust.spread(values), 0.05) / Math.sqrt(values.length);
  }

  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }
}
