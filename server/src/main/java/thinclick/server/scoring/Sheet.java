package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Span;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Click;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.StepGrid;

/**
 * A take laid out for arithmetic: times are milliseconds from step 0, chairs stand in the order of
 * the parts, attacks in the order of time whatever order they came in.
 */
final class Sheet {
  final Take take;
  final StepGrid grid;
  final ClickPlan plan;

  /** Steps of all stages together. */
  final int steps;

  final int stepsPerBar;

  /** Length of a step before swing, ms. */
  final double stepMillis;

  final List<Chair> chairs;

  /** First step of each stage, and the end of the last. */
  final int[] stageFrom;

  /** Steps that really clicked, ascending. */
  final int[] clickSteps;

  /** Whether a stage has any click that really sounded. */
  final boolean[] stageClicks;

  /** Where the take was stopped, ms; infinite where it ran to its end. */
  final double endMillis;

  /** The last step that is counted; -1 where the take was stopped before its first. */
  final int lastCountedStep;

  /**
   * A take stopped by so little after a step, in steps, was stopped at it: whoever came in late
   * there could not be heard any more.
   */
  static final double STOPPED_AT = 0.25;

  Sheet(Take take) {
    this(take, 0);
  }

  /**
   * @param lateMillis how late the band was where the take was stopped, ms: what it had come to is
   *     counted, not what the written grid had
   */
  Sheet(Take take, double lateMillis) {
    this.take = take;
    grid = take.grid();
    plan = take.plan();
    stepsPerBar = grid.stepsPerBar();
    steps = plan.bars() * stepsPerBar;
    stepMillis = grid.stepMicros() / 1000;
    endMillis =
        take.endMicros() == null
            ? Double.POSITIVE_INFINITY
            : (take.endMicros() - take.startMicros()) / 1000.0;
    lastCountedStep = lastBefore(endMillis - lateMillis - STOPPED_AT * stepMillis);
    stageFrom = new int[take.stages().size() + 1];
    for (int i = 0; i < take.stages().size(); i++) {
      stageFrom[i + 1] = stageFrom[i] + take.stages().get(i).bars() * stepsPerBar;
    }
    stageClicks = new boolean[take.stages().size()];
    List<Integer> sounded = new ArrayList<>();
    for (Click click : plan.clicks(grid)) {
      if (take.clickInterrupted().stream()
          .noneMatch(span -> span.contains((double) click.micros()))) {
        sounded.add((int) click.step());
        stageClicks[click.stage()] = true;
      }
    }
    clickSteps = sounded.stream().mapToInt(Integer::intValue).toArray();
    chairs = chairs(take);
  }

  private List<Chair> chairs(Take take) {
    Map<String, List<Integer>> played = new HashMap<>();
    for (int i = 0; i < take.attacks().size(); i++) {
      played.computeIfAbsent(take.attacks().get(i).player(), name -> new ArrayList<>()).add(i);
    }
    List<Chair> all = new ArrayList<>();
    for (Part part : take.parts()) {
      all.add(new Chair(this, part, played.getOrDefault(part.player(), List.of())));
    }
    return List.copyOf(all);
  }

  /** Milliseconds from step 0 of an instant of room time. */
  double millis(long micros) {
    return (micros - take.startMicros()) / 1000.0;
  }

  /** Where a step lies on the written grid with its set swing, ms from step 0. */
  double nominalMillis(long step) {
    return grid.swungStep(step) * stepMillis;
  }

  /** True where no click sounds from half a bar before a step until the step. */
  boolean silentAt(int step) {
    int found = Arrays.binarySearch(clickSteps, step);
    if (found >= 0) {
      return false;
    }
    int before = -found - 2;
    return before < 0 || step - clickSteps[before] > stepsPerBar / 2;
  }

  /** Clicks after one step, up to and with another. */
  int clicksBetween(int after, int upTo) {
    int from = Arrays.binarySearch(clickSteps, after + 1);
    int to = Arrays.binarySearch(clickSteps, upTo + 1);
    return (to >= 0 ? to : -to - 1) - (from >= 0 ? from : -from - 1);
  }

  double beatMillis() {
    return stepMillis * grid.stepsPerBeat();
  }

  /** The last step not after an instant, ms; -1 for none. */
  private int lastBefore(double millis) {
    if (millis >= nominalMillis(steps - 1)) {
      return steps - 1;
    }
    int step = (int) Math.max(-1, Math.floor(millis / stepMillis)); // swing only makes steps later
    return step >= 0 && nominalMillis(step) > millis ? step - 1 : step;
  }

  /** True where the take was stopped before the middle of a stage, or before the stage. */
  boolean stoppedBeforeHalf(int stage) {
    return 2 * (lastCountedStep + 1) < stageFrom[stage] + stageFrom[stage + 1];
  }

  /** True where the take ran past all that is written. */
  boolean ranThrough() {
    return lastCountedStep == steps - 1;
  }

  /** When the click on a step sounds, ms from step 0; straight where the band decides the swing. */
  double clickMillis(int step) {
    return nominalMillis(step);
  }

  int barOf(int step) {
    return Math.floorDiv(step, stepsPerBar);
  }

  /** The stage of a step; the first before the take, the last after it. */
  int stageOf(int step) {
    int found = Arrays.binarySearch(stageFrom, step);
    int stage = found >= 0 ? found : -found - 2;
    return Math.max(0, Math.min(stageClicks.length - 1, stage));
  }

  static boolean inside(List<Span> spans, double micros) {
    for (Span span : spans) {
      if (span.contains(micros)) {
        return true;
      }
    }
    return false;
  }

  /** Attacks in the order of time, ties by what they are, never by when they arrived. */
  static int inOrder(Attack a, Attack b) {
    int order = Long.compare(a.micros(), b.micros());
    if (order == 0) {
      order = Integer.compare(orNone(a.pitch()), orNone(b.pitch()));
    }
    if (order == 0) {
      order = Integer.compare(orNone(b.velocity()), orNone(a.velocity()));
    }
    if (order == 0) {
      order =
          Double.compare(
              a.lengthMillis() == null ? -1 : a.lengthMillis(),
              b.lengthMillis() == null ? -1 : b.lengthMillis());
    }
    return order;
  }

  private static int orNone(@org.jspecify.annotations.Nullable Integer value) {
    return value == null ? -1 : value;
  }
}
