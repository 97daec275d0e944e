package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;

/** Figures of how attacks were played rather than when: accents and note lengths. */
final class Dynamics {
  private static final int LEAST_ACCENTS = 5;
  private static final int LEAST_LENGTHS = 8;

  private Dynamics() {}

  /**
   * The probability that a written accent is louder than an unaccented attack of the same player;
   * ranks alone, since devices' curves differ.
   */
  static Figure accents(Sheet sheet, Reading reading) {
    Part part = reading.chair.part;
    if (part.accentSteps() == null) {
      return Figure.unknown(Reason.Code.NOT_RECORDED, "no accents are written");
    }
    Set<Integer> accented = new HashSet<>(part.accentSteps());
    List<Integer> loud = new ArrayList<>();
    List<Integer> plain = new ArrayList<>();
    for (int k = 0; k < reading.size(); k++) {
      Attack attack = attack(sheet, reading, k);
      if (attack != null && attack.velocity() != null) {
        (accented.contains(reading.chair.steps[k]) ? loud : plain).add(attack.velocity());
      }
    }
    if (loud.isEmpty() && plain.isEmpty()) {
      return Figure.unknown(Reason.Code.NOT_RECORDED, "the input sends no velocities");
    }
    int fewer = Math.min(loud.size(), plain.size());
    if (fewer < LEAST_ACCENTS) {
      return Figure.unknown(
          Reason.tooFew("accents: of accented and of plain attacks each", LEAST_ACCENTS, fewer));
    }
    Set<Integer> levels = new HashSet<>(loud);
    levels.addAll(plain);
    if (levels.size() == 1) {
      return Figure.unknown(Reason.Code.CONSTANT, "every attack has the same velocity");
    }
    int[] atMost = new int[129];
    int[] exactly = new int[129];
    for (int velocity : plain) {
      exactly[velocity]++;
    }
    for (int v = 1; v < atMost.length; v++) {
      atMost[v] = atMost[v - 1] + exactly[v];
    }
    double wins = 0;
    for (int velocity : loud) {
      wins += atMost[velocity - 1] + exactly[velocity] / 2.0;
    }
    double a = wins / ((double) loud.size() * plain.size());
    // standard error of an area under the curve, after Hanley and McNeil 1982 (from memory)
    double q1 = a / (2 - a);
    double q2 = 2 * a * a / (1 + a);
    double variance =
        (a * (1 - a) + (loud.size() - 1) * (q1 - a * a) + (plain.size() - 1) * (q2 - a * a))
            / ((double) loud.size() * plain.size());
    double error = 1.96 * Math.sqrt(Math.max(variance, 0.25 / (loud.size() + plain.size()) / 10));
    return Figure.of(
        Round.fine(a),
        new Interval(Round.fine(Math.max(0, a - error)), Round.fine(Math.min(1, a + error))));
  }

  /** The median of sounded over written length. */
  static Figure noteLength(Sheet sheet, Reading reading) {
    Part part = reading.chair.part;
    if (part.lengthSteps() == null) {
      return Figure.unknown(Reason.Code.NOT_RECORDED, "no lengths are written");
    }
    double[] ratios = new double[reading.size()];
    int count = 0;
    for (int k = 0; k < reading.size(); k++) {
      Attack attack = attack(sheet, reading, k);
      if (attack != null && attack.lengthMillis() != null) {
        double written = part.lengthSteps().get(reading.chair.writtenIndex[k]) * sheet.stepMillis;
        ratios[count++] = attack.lengthMillis() / written;
      }
    }
    if (count == 0) {
      return Figure.unknown(Reason.Code.NOT_RECORDED, "the input sends no releases");
    }
    if (count < LEAST_LENGTHS) {
      return Figure.unknown(Reason.tooFew("a note length", LEAST_LENGTHS, count));
    }
    double[] sorted = Arrays.copyOf(ratios, count);
    Arrays.sort(sorted);
    double median = (sorted[(count - 1) / 2] + sorted[count / 2]) / 2;
    return Figure.of(Round.fine(median), Intervals.median(sorted));
  }

  private static @org.jspecify.annotations.Nullable Attack attack(
      Sheet sheet, Reading reading, int k) {
    return reading.partner[k] == Matcher.NONE
        ? null
        : sheet.take.attacks().get(reading.chair.takeIndex[reading.partner[k]]);
  }
}
