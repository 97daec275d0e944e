package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.FreeSpan;

/** Judges the free spans of a take: the return after each, and the pulse through it. */
final class FreeReviews {
  private final Understanding understood;
  private final Sheet sheet;
  private final Judged[] judged;
  private final Tolerance tolerance;

  FreeReviews(Understanding understood, Judged[] judged, Tolerance tolerance) {
    this.understood = understood;
    this.sheet = understood.sheet();
    this.judged = judged;
    this.tolerance = tolerance;
  }

  /** All spans, part by part in the order of time; those after a stop are left out. */
  List<FreeReview> all() {
    List<FreeReview> all = new ArrayList<>();
    for (Judged one : judged) {
      for (FreeSpan span : one.reading.chair.part.free()) {
        if (span.fromBar() * sheet.stepsPerBar <= sheet.lastCountedStep) {
          all.add(review(one, span));
        }
      }
    }
    return List.copyOf(all);
  }

  private FreeReview review(Judged one, FreeSpan span) {
    int from = span.fromBar() * sheet.stepsPerBar;
    int to = span.toBar() * sheet.stepsPerBar;
    int[] steps = one.reading.chair.steps;
    int first = one.firstFrom(to);
    boolean follows = first < steps.length;
    int end = follows ? one.firstFrom(steps[first] + sheet.stepsPerBar) : first;
    int back = first;
    while (back < end && one.reading.partner[back] == Matcher.NONE) {
      back++;
    }
    boolean came = back < end;
    int shift = came ? one.reading.shift[back] : 0;
    Figure millis =
        came
            ? off(one, back, end, shift)
            : Figure.unknown(
                follows
                    ? Reason.tooFew("a return: attacks in the first bar", 1, 0)
                    : new Reason(Reason.Code.NOTHING_WRITTEN, "nothing is written after it"));
    return new FreeReview(
        one.reading.chair.part.player(),
        span.fromBar(),
        span.toBar(),
        FreePlay.within(sheet, span, one.freely(), understood::pulseMillis).size(),
        follows ? (Integer) sheet.barOf(steps[first]) : null,
        came ? (Integer) shift : null,
        millis,
        onPulse(millis),
        PulseFigures.drift(understood, from, to, others(from, to)));
  }

  /**
   * The mean distance from the pulse, with the lean taken off that is not charged anywhere else, of
   * what was played of some written attacks at one shift.
   */
  private Figure off(Judged one, int from, int to, int shift) {
    double sum = 0;
    int count = 0;
    for (int k = from; k < to; k++) {
      @Nullable Double millis = one.asynchronyAt(k);
      if (millis != null && one.reading.shift[k] == shift) {
        sum += millis;
        count++;
      }
    }
    if (count == 0) {
      return Figure.unknown(Holds.noPulse());
    }
    double mean = sum / count - one.removedLean();
    double error = 1.96 * one.reading.noise / Math.sqrt(count);
    return Figure.of(
        Round.millis(mean), new Interval(Round.millis(mean - error), Round.millis(mean + error)));
  }

  private @Nullable Boolean onPulse(Figure millis) {
    return millis.known() ? (Boolean) (Math.abs(millis.get()) <= tolerance.millis() + 1e-6) : null;
  }

  /** Everybody's attacks on what is written within some steps. */
  private Pool others(int from, int to) {
    Pool pool = new Pool(tolerance);
    for (Judged one : judged) {
      pool.add(one, new Slice(one.firstFrom(from), one.firstFrom(to), Slice.Kind.ALL));
    }
    return pool;
  }
}
