package thinclick.server.material;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.IntUnaryOperator;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.Meter;

/** What can be done to a cell; accents, articulation and lengths go along with their attacks. */
public final class Cells {
  private Cells() {}

  /** One attack while a cell is being changed. */
  private record Attack(
      int step, boolean accent, boolean staccato, boolean tenuto, @Nullable Integer length) {
    Attack at(int other) {
      return new Attack(other, accent, staccato, tenuto, length);
    }
  }

  private static List<Attack> attacks(Drill.Cell cell) {
    return IntStream.range(0, cell.attackSteps().size())
        .mapToObj(
            i -> {
              int step = cell.attackSteps().get(i);
              return new Attack(
                  step,
                  has(cell.accentSteps(), step),
                  has(cell.staccatoSteps(), step),
                  has(cell.tenutoSteps(), step),
                  cell.lengthSteps() == null ? null : cell.lengthSteps().get(i));
            })
        .toList();
  }

  /** True where a list of marked steps has this one. */
  static boolean has(@Nullable List<Integer> marked, int step) {
    return marked != null && marked.contains(step);
  }

  private static Drill.Cell cell(
      int steps, List<Attack> attacks, Drill.Cell like, @Nullable Integer grouping) {
    List<Attack> sorted = attacks.stream().sorted(Comparator.comparingInt(Attack::step)).toList();
    List<Integer> at = sorted.stream().map(Attack::step).toList();
    Drill.Cell bare = Drill.Cell.of(steps, at);
    @Nullable List<Integer> lengths = null;
    if (like.lengthSteps() != null) {
      lengths = new ArrayList<>();
      for (int i = 0; i < sorted.size(); i++) {
        Integer length = sorted.get(i).length();
        lengths.add(Math.min(length == null ? 1 : length, bare.gapAfter(i)));
      }
    }
    return new Drill.Cell(
        steps,
        at,
        marked(like.accentSteps(), sorted, Attack::accent),
        lengths,
        marked(like.staccatoSteps(), sorted, Attack::staccato),
        marked(like.tenutoSteps(), sorted, Attack::tenuto),
        grouping);
  }

  private static @Nullable List<Integer> marked(
      @Nullable List<Integer> like, List<Attack> sorted, Predicate<Attack> has) {
    return like == null ? null : sorted.stream().filter(has).map(Attack::step).toList();
  }

  /** Every step of {@code bars} bars. */
  public static Drill.Cell even(Meter meter, int stepsPerBeat, int bars) {
    int steps = bars * meter.stepsPerBar(stepsPerBeat);
    return Drill.Cell.of(steps, IntStream.range(0, steps).boxed().toList());
  }

  /**
   * Leaves out the heaviest positions of each bar: level 1 the one, level 2 the first beat of each
   * group as well, then all beats, then the middle of the beats where they have one.
   */
  public static Drill.Cell leaveOutHeaviest(
      Drill.Cell cell, int levels, Meter meter, int stepsPerBeat, @Nullable List<Integer> groups) {
    int[] weights = MetricWeights.ofBar(meter, stepsPerBeat, groups);
    List<Integer> heaviestFirst =
        IntStream.of(weights).distinct().boxed().sorted(Comparator.reverseOrder()).toList();
    Check.range("leave-out", levels, 1L, heaviestFirst.size() - 1);
    int lightestOut = heaviestFirst.get(levels - 1);
    return keep(
        cell, attack -> weights[attack % weights.length] < lightestOut ? 1 : 0, "leave-out");
  }

  /** Leaves out steps by hand. */
  public static Drill.Cell leaveOut(Drill.Cell cell, List<Integer> steps) {
    for (int step : steps) {
      if (!cell.attackSteps().contains(step)) {
        throw new BadInput(
            "leave-out", "expected attacked steps, of " + cell.attackSteps() + ", found " + step);
      }
    }
    return keep(cell, step -> steps.contains(step) ? 0 : 1, "leave-out");
  }

  private static Drill.Cell keep(Drill.Cell cell, IntUnaryOperator kept, String what) {
    List<Attack> left =
        attacks(cell).stream().filter(attack -> kept.applyAsInt(attack.step()) > 0).toList();
    if (left.isEmpty()) {
      throw new BadInput(what, "expected at least one attack to be left, found none");
    }
    return cell(cell.steps(), left, cell, cell.grouping());
  }

  /**
   * Begins off the beat: what stands before the first attack off the beat is left out; where all
   * are on beats, the first comes a step later.
   */
  public static Drill.Cell beginOffBeat(Drill.Cell cell, int stepsPerBeat) {
    List<Attack> attacks = new ArrayList<>(attacks(cell));
    int first = 0;
    while (first < attacks.size() && attacks.get(first).step() % stepsPerBeat == 0) {
      first++;
    }
    if (first < attacks.size()) {
      return cell(cell.steps(), attacks.subList(first, attacks.size()), cell, cell.grouping());
    }
    Attack one = attacks.get(0);
    attacks.set(0, one.at(one.step() + 1));
    return cell(cell.steps(), attacks, cell, cell.grouping());
  }

  /**
   * Ends off the beat: what stands after the last attack off the beat is left out; where all are on
   * beats, the and after the last one is added.
   *
   * @param lengthSteps how long the last attack is written, steps, or null for its usual length
   */
  public static Drill.Cell endOffBeat(
      Drill.Cell cell, Meter meter, int stepsPerBeat, @Nullable Integer lengthSteps) {
    List<Attack> attacks = new ArrayList<>(attacks(cell));
    int last = attacks.size() - 1;
    while (last >= 0 && attacks.get(last).step() % stepsPerBeat == 0) {
      last--;
    }
    if (last >= 0) {
      attacks = new ArrayList<>(attacks.subList(0, last + 1));
    } else {
      Attack end = attacks.get(attacks.size() - 1);
      attacks.add(new Attack(end.step() + Rung.andStep(stepsPerBeat), false, false, false, null));
    }
    Drill.Cell ended = cell(cell.steps(), attacks, cell, cell.grouping());
    return lengthSteps == null ? ended : lastLength(ended, lengthSteps, meter, stepsPerBeat);
  }

  private static Drill.Cell lastLength(Drill.Cell cell, int length, Meter meter, int stepsPerBeat) {
    int last = cell.attackSteps().size() - 1;
    Check.range("end-off", length, 1L, cell.gapAfter(last));
    WrittenLengths lengthOf = new WrittenLengths(cell, meter, stepsPerBeat, false);
    List<Integer> lengths = new ArrayList<>();
    for (int i = 0; i < last; i++) {
      lengths.add(lengthOf.at(i, cell.attackSteps().get(i)));
    }
    lengths.add(length);
    return withLengths(cell, lengths);
  }

  /** Every attack later by so many steps, round the cell; negative is earlier. */
  public static Drill.Cell displace(Drill.Cell cell, int steps) {
    List<Attack> moved =
        attacks(cell).stream()
            .map(attack -> attack.at(Math.floorMod(attack.step() + steps, cell.steps())))
            .toList();
    boolean whole = steps % cell.steps() == 0;
    return cell(cell.steps(), moved, cell, whole ? cell.grouping() : null);
  }

  /** Begins with its attack number {@code first}, counted from 0, on its first step. */
  public static Drill.Cell rotate(Drill.Cell cell, int first) {
    int attack = Math.floorMod(first, cell.attackSteps().size());
    return displace(cell, -cell.attackSteps().get(attack));
  }

  /** Read backwards round its first step, so that the gaps come in the opposite order. */
  public static Drill.Cell retrograde(Drill.Cell cell) {
    List<Attack> mirrored =
        attacks(cell).stream()
            .map(attack -> attack.at(Math.floorMod(-attack.step(), cell.steps())))
            .toList();
    return cell(cell.steps(), mirrored, cell, null);
  }

  /** Everything so many times as long. */
  public static Drill.Cell augment(Drill.Cell cell, int times) {
    Check.range("augment", times, 1L, 8);
    List<Attack> longer =
        attacks(cell).stream()
            .map(
                attack ->
                    new Attack(
                        attack.step() * times,
                        attack.accent(),
                        attack.staccato(),
                        attack.tenuto(),
                        attack.length() == null ? null : attack.length() * times))
            .toList();
    return cell(
        cell.steps() * times,
        longer,
        cell,
        cell.grouping() == null ? null : cell.grouping() * times);
  }

  /** Repeated as often as it goes into so many steps; refused where it does not go evenly. */
  public static Drill.Cell repeated(Drill.Cell cell, int steps) {
    if (steps % cell.steps() != 0) {
      throw new BadInput(
          "period",
          "expected whole repetitions of the cell's " + cell.steps() + " steps, found " + steps);
    }
    List<Attack> all = new ArrayList<>();
    for (int at = 0; at < steps; at += cell.steps()) {
      for (Attack attack : attacks(cell)) {
        all.add(attack.at(at + attack.step()));
      }
    }
    return cell(steps, all, cell, cell.grouping());
  }

  /** With accents on some of its attacks. */
  public static Drill.Cell accented(Drill.Cell cell, List<Integer> steps) {
    return signed(cell, asked("accents", cell, steps), cell.staccatoSteps(), cell.tenutoSteps());
  }

  /** With some of its attacks cut short. */
  public static Drill.Cell staccato(Drill.Cell cell, List<Integer> steps) {
    return signed(cell, cell.accentSteps(), asked("staccato", cell, steps), cell.tenutoSteps());
  }

  /** With some of its attacks held for all of their length. */
  public static Drill.Cell tenuto(Drill.Cell cell, List<Integer> steps) {
    return signed(cell, cell.accentSteps(), cell.staccatoSteps(), asked("tenuto", cell, steps));
  }

  private static Drill.Cell signed(
      Drill.Cell cell,
      @Nullable List<Integer> accents,
      @Nullable List<Integer> staccato,
      @Nullable List<Integer> tenuto) {
    return new Drill.Cell(
        cell.steps(),
        cell.attackSteps(),
        accents,
        cell.lengthSteps(),
        staccato,
        tenuto,
        cell.grouping());
  }

  private static List<Integer> asked(String what, Drill.Cell cell, List<Integer> steps) {
    Set<Integer> asked = new HashSet<>(steps);
    List<Integer> found = cell.attackSteps().stream().filter(asked::remove).toList();
    if (!asked.isEmpty()) {
      throw new BadInput(what, "expected steps of " + cell.attackSteps() + ", found " + asked);
    }
    return found;
  }

  /** With written lengths, as many as attacks; null for the usual ones. */
  public static Drill.Cell withLengths(Drill.Cell cell, @Nullable List<Integer> lengths) {
    return new Drill.Cell(
        cell.steps(),
        cell.attackSteps(),
        cell.accentSteps(),
        lengths,
        cell.staccatoSteps(),
        cell.tenutoSteps(),
        cell.grouping());
  }

  /** Other attacks in the same cycle: those that were there keep their signs, lengths are usual. */
  static Drill.Cell withAttacks(Drill.Cell cell, List<Integer> steps) {
    List<Attack> attacks =
        steps.stream()
            .map(
                step ->
                    new Attack(
                        step,
                        has(cell.accentSteps(), step),
                        has(cell.staccatoSteps(), step),
                        has(cell.tenutoSteps(), step),
                        null))
            .toList();
    return cell(cell.steps(), attacks, withLengths(cell, null), cell.grouping());
  }

  /** In one turn of several, each as long as the cell; silent in the others. */
  public static Drill.Cell inTurn(Drill.Cell cell, int turn, int turns) {
    List<Attack> later =
        attacks(cell).stream().map(one -> one.at(one.step() + turn * cell.steps())).toList();
    return cell(cell.steps() * turns, later, cell, null);
  }
}
