package thinclick.server.scoring;

import java.util.Arrays;

/** One chair decoded: by itself, or against what the others foretell. */
final class ChairDecoding {
  /** What a player's noise is taken for before it is known, ms. */
  static final double FIRST_NOISE = 30;

  private static final double MOST_NOISE = 45;
  private static final double LEAST_NOISE = 6;

  /** Against the others a player's noise is taken for no less, ms. */
  private static final double LEAST_AMONG_OTHERS = 12;

  /** How far a phase walks, ms per square root of a step: people come home in a bar. */
  private static final double WALK = 3;

  /** How far a band may drift in silence without its tempo being followed, as a share. */
  private static final double SILENT_DRIFT = 0.02;

  private ChairDecoding() {}

  /** Decodes one player without the others; the log evidence. */
  static double alone(Sheet sheet, Places places, Reading reading) {
    if (reading.size() == 0 || reading.chair.attacks.length == 0) {
      return 0;
    }
    double reach = Math.min(200, 0.65 * sheet.stepMillis);
    double[] centre = new double[reading.size()];
    return decode(
        sheet, places, reading, centre, FIRST_NOISE, Math.min(60, reach / 2), reach, true);
  }

  /**
   * Decodes one player against what the others foretell.
   *
   * @param centre the phase that is foretold at each written attack, ms from its place
   */
  static void against(Sheet sheet, Places places, Reading reading, double[] centre) {
    double reach = Math.min(150, 0.6 * sheet.stepMillis);
    double noise = Math.max(LEAST_AMONG_OTHERS, reading.noise);
    decode(sheet, places, reading, centre, noise, Math.min(45, reach / 2), reach, false);
  }

  /** A noise within what players have, ms. */
  static double plausible(double noise) {
    return Math.max(LEAST_NOISE, Math.min(MOST_NOISE, noise));
  }

  private static double decode(
      Sheet sheet,
      Places places,
      Reading reading,
      double[] centre,
      double noise,
      double startSpread,
      double reach,
      boolean clickPulls) {
    double noiseHere = Math.min(noise, 0.2 * sheet.stepMillis);
    Prices prices =
        new Prices(
            noiseHere,
            0.08,
            addedPerMilli(sheet, reading),
            0.005,
            0.0002,
            0.01,
            startSpread,
            0,
            WALK,
            clickPulls ? SILENT_DRIFT : 0,
            reach,
            clickPulls);
    ShiftDecoder.Decoded decoded =
        new ShiftDecoder(
                sheet,
                places,
                reading.chair.steps,
                reading.chair.attacks,
                reading.shifts,
                prices,
                centre,
                feel(sheet, reading))
            .decode();
    System.arraycopy(decoded.shift(), 0, reading.shift, 0, reading.size());
    System.arraycopy(decoded.phase(), 0, reading.phase, 0, reading.size());
    reading.noise = noiseHere;
    reading.match(sheet, places);
    reading.noise = noiseOf(sheet, places, reading);
    System.arraycopy(decoded.logEvidence(), 0, reading.evidence, 0, reading.size());
    return Arrays.stream(decoded.logEvidence()).sum();
  }

  private static double[] feel(Sheet sheet, Reading reading) {
    double[] feel = new double[reading.size()];
    for (int k = 0; k < feel.length; k++) {
      feel[k] = reading.feel(sheet, k);
    }
    return feel;
  }

  private static double addedPerMilli(Sheet sheet, Reading reading) {
    double span = Math.max(1, sheet.steps * sheet.stepMillis);
    return Math.max(1, 0.06 * reading.size()) / span;
  }

  private static double noiseOf(Sheet sheet, Places places, Reading reading) {
    int n = reading.size();
    double[] rest = new double[n];
    int count = 0;
    for (int k = 0; k < n; k++) {
      if (reading.partner[k] != Matcher.NONE) {
        rest[count++] =
            Math.abs(
                reading.chair.attacks[reading.partner[k]]
                    - places.at(reading.soundingStep(k))
                    - reading.feel(sheet, k)
                    - reading.phase[k]);
      }
    }
    if (count < 4) {
      return FIRST_NOISE;
    }
    return plausible(1.4826 * Median.of(rest, count));
  }
}
