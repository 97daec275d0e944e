package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;

/** One player's attacks against the pulse: distances, placed or not, what is left over. */
final class Judged {
  /** A single player's steady lean is removed up to this for placing, ms. */
  static final double SOLO_LEAN = 80;

  final Reading reading;

  /** True where luck alone would place this part's attacks. */
  final boolean chance;

  private final Understanding understood;
  private final Sheet sheet;
  private final int chairIndex;
  private final double[] asynchrony; // NaN inside this class only: no pulse, or not matched
  private final double[] pulse;
  private final boolean[] known;
  private final boolean[] placed;
  private final double removed;
  private final int[] answered; // written index by attack
  private final int[] addedAt; // steps of added attacks
  private final Map<Slice, Timed> timed = new HashMap<>();

  /** The stages in which the band came apart. */
  private boolean[] apart = {};

  Judged(Understanding understood, int chairIndex, Tolerance tolerance) {
    this.understood = understood;
    this.chairIndex = chairIndex;
    reading = understood.readings()[chairIndex];
    sheet = understood.sheet();
    chance =
        tolerance.chanceWouldPlace(Tolerance.smallestGap(sheet, understood.swing(), reading.chair));
    int n = reading.size();
    asynchrony = new double[n];
    pulse = new double[n];
    known = new boolean[n];
    placed = new boolean[n];
    answered = new int[reading.chair.attacks.length];
    Arrays.fill(answered, Matcher.NONE);
    boolean alone = understood.pulse() == null;
    for (int k = 0; k < n; k++) {
      known[k] = !alone || sheet.stageClicks[sheet.stageOf(reading.chair.steps[k])];
      pulse[k] = understood.pulseMillis(reading.soundingStep(k));
      if (reading.partner[k] != Matcher.NONE) {
        answered[reading.partner[k]] = k;
        asynchrony[k] =
            reading.chair.attacks[reading.partner[k]] - reading.feel(sheet, k) - pulse[k];
      }
    }
    removed = allowedLean(alone);
    for (int k = 0; k < n; k++) {
      placed[k] =
          known[k]
              && reading.partner[k] != Matcher.NONE
              && reading.shift[k] == 0
              && Math.abs(asynchrony[k] - removed) <= tolerance.millis() + 1e-6;
    }
    addedAt = added();
  }

  /** The steady lean that is not charged when placing, ms. */
  double removedLean() {
    return removed;
  }

  /** The instants of what was played freely, ms from step 0, in the order of time. */
  List<Double> freely() {
    List<Double> free = new ArrayList<>();
    for (int index : reading.chair.freely) {
      free.add(sheet.millis(sheet.take.attacks().get(index).micros()));
    }
    for (int j = 0; j < answered.length; j++) {
      if (answered[j] == Matcher.NONE && unanswering(j) == Analysis.Kind.FREE) {
        free.add(reading.chair.attacks[j]);
      }
    }
    return free.stream().sorted().toList();
  }

  /** The distance from the pulse of what answered a written attack; null where nothing is known. */
  @Nullable Double asynchronyAt(int k) {
    return known[k] && reading.partner[k] != Matcher.NONE ? (Double) asynchrony[k] : null;
  }

  private double allowedLean(boolean alone) {
    Sample sample = sample(whole());
    double allowed = reading.chair.uncertaintyMillis;
    if (alone) {
      allowed = Math.max(allowed, SOLO_LEAN);
    }
    double lean = sample.size() == 0 ? 0 : sample.mean();
    return Math.max(-allowed, Math.min(allowed, lean));
  }

  private int[] added() {
    List<Integer> at = new ArrayList<>();
    for (int j = 0; j < answered.length; j++) {
      if (answered[j] == Matcher.NONE && unanswering(j) == Analysis.Kind.ADDED) {
        at.add(stepAt(reading.chair.attacks[j]));
      }
    }
    return at.stream().mapToInt(Integer::intValue).toArray();
  }

  /** What an attack is that answers nothing. */
  Analysis.Kind unanswering(int j) {
    double at = reading.chair.attacks[j];
    if (at > sheet.endMillis || afterTheStop(at)) {
      return Analysis.Kind.AWAY;
    }
    if (reading.chair.freePlay.holds(at, understood::pulseMillis)) {
      return Analysis.Kind.FREE;
    }
    return at < understood.pulseMillis(0) - sheet.stepMillis / 2
        ? Analysis.Kind.COUNT_IN
        : Analysis.Kind.ADDED;
  }

  /** True where an attack is nearer to a step after the stop than to any that counts. */
  private boolean afterTheStop(double at) {
    int last = sheet.lastCountedStep;
    return !sheet.ranThrough()
        && (last < 0 || at > (understood.pulseMillis(last) + understood.pulseMillis(last + 1)) / 2);
  }

  /** The step of the pulse next to an instant; clamped to the take. */
  private int stepAt(double millis) {
    double step = Math.max(0, Math.min(sheet.steps - 1, millis / sheet.stepMillis));
    int guess = (int) Math.rint(step);
    double off = understood.pulseMillis(guess) - sheet.nominalMillis(guess);
    double better = Math.max(0, Math.min(sheet.steps - 1, (millis - off) / sheet.stepMillis));
    return (int) Math.rint(better);
  }

  /** All of the player's counted written attacks. */
  Slice whole() {
    return new Slice(0, reading.size(), Slice.Kind.ALL);
  }

  /** Those of one stage. */
  Slice stage(int stage) {
    return new Slice(
        firstFrom(sheet.stageFrom[stage]), firstFrom(sheet.stageFrom[stage + 1]), Slice.Kind.ALL);
  }

  /** The first counted written attack at a step or after it, by index. */
  int firstFrom(int step) {
    int found = Arrays.binarySearch(reading.chair.steps, step);
    return found >= 0 ? found : -found - 1;
  }

  /** The same with their fit, made once. */
  Timed timed(Slice slice) {
    Timed known = timed.get(slice);
    if (known == null) {
      known = Timed.of(sample(slice), sheet.grid.stepsPerBeat());
      if (slice.equals(whole())) {
        known = known.overStages(stageFits());
      }
      if (touchesApart(slice)) {
        known = known.inABandThatCameApart();
      }
      timed.put(slice, known);
    }
    return known;
  }

  /**
   * Says in which stages somebody wandered off: the pulse is everybody's mean, so that there nobody
   * is at a steady distance from it.
   */
  void bandCameApart(boolean[] byStage) {
    apart = byStage;
    timed.clear();
  }

  private boolean touchesApart(Slice slice) {
    for (int s = 0; s < apart.length; s++) {
      Slice stage = stage(s);
      if (apart[s] && stage.from() < slice.to() && slice.from() < stage.to()) {
        return true;
      }
    }
    return false;
  }

  private List<Timed> stageFits() {
    List<Timed> fits = new ArrayList<>();
    for (int s = 0; s < sheet.stageClicks.length; s++) {
      if (!stage(s).equals(whole())) {
        fits.add(timed(stage(s)));
      }
    }
    return fits;
  }

  /** The asynchronies of what was matched undisplaced and can be judged. */
  Sample sample(Slice slice) {
    int most = slice.to() - slice.from();
    int[] at = new int[most];
    double[] millis = new double[most];
    double[] taken = new double[most];
    int count = 0;
    for (int k = slice.from(); k < slice.to(); k++) {
      if (known[k]
          && reading.partner[k] != Matcher.NONE
          && reading.shift[k] == 0
          && slice.holds(sheet, reading.chair.steps[k])) {
        at[count] = reading.chair.steps[k];
        taken[count] = takenUp(k);
        millis[count++] = asynchrony[k];
      }
    }
    return new Sample(
        Arrays.copyOf(at, count), Arrays.copyOf(millis, count), Arrays.copyOf(taken, count));
  }

  /** Where this player's odd steps sound within their pairs; null where either kind is rare. */
  SwingRatio.@Nullable Place swing() {
    return reading.swing(sheet, understood.places(), understood.swing());
  }

  private double takenUp(int k) {
    return understood.pulse() == null
        ? 0
        : understood.pulse().takenUp(chairIndex, reading.soundingStep(k));
  }

  int written(Slice slice) {
    return count(slice, k -> true);
  }

  /** What is written in a stage, whether or not the player was there for it. */
  int writtenAnyway(int stage) {
    return (int)
        reading.chair.part.attackSteps().stream()
            .filter(step -> step <= sheet.lastCountedStep)
            .filter(step -> step >= sheet.stageFrom[stage] && step < sheet.stageFrom[stage + 1])
            .count();
  }

  /** What it all stands on. */
  Sheet sheet() {
    return sheet;
  }

  /** Written attacks for which a pulse is known to judge by. */
  int judgeable(Slice slice) {
    return count(slice, k -> known[k]);
  }

  int placed(Slice slice) {
    return count(slice, k -> placed[k]);
  }

  int dropped(Slice slice) {
    return count(slice, k -> reading.partner[k] == Matcher.NONE);
  }

  int displaced(Slice slice) {
    return count(slice, k -> reading.partner[k] != Matcher.NONE && reading.shift[k] != 0);
  }

  int addedCount() {
    return addedAt.length;
  }

  /** Added attacks by stage. */
  int[] addedByStage() {
    int[] counts = new int[sheet.stageClicks.length];
    for (int step : addedAt) {
      counts[sheet.stageOf(step)]++;
    }
    return counts;
  }

  private int count(Slice slice, IntPredicate counts) {
    int count = 0;
    for (int k = slice.from(); k < slice.to(); k++) {
      if (slice.holds(sheet, reading.chair.steps[k]) && counts.test(k)) {
        count++;
      }
    }
    return count;
  }

  /** What became of a written attack. */
  Analysis.Fate fate(int k) {
    if (reading.partner[k] == Matcher.NONE) {
      return Analysis.Fate.DROPPED;
    }
    if (reading.shift[k] != 0) {
      return Analysis.Fate.DISPLACED;
    }
    if (!known[k]) {
      return Analysis.Fate.MATCHED;
    }
    if (placed[k]) {
      return Analysis.Fate.PLACED;
    }
    // Of the same distance that was held against the tolerance.
    return asynchrony[k] < removed ? Analysis.Fate.EARLY : Analysis.Fate.LATE;
  }

  /** The written attack that a played one answers, by index, or {@link Matcher#NONE}. */
  int answeredBy(int j) {
    return answered[j];
  }

  /** Where the pulse put a written attack, ms; null where none is known. */
  @Nullable Double pulseAt(int k) {
    return known[k] ? (Double) pulse[k] : null;
  }
}
