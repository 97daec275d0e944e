package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntToDoubleFunction;

/**
 * What tells the reader where they are: brackets over the turns of a grouping, a dotted line where
 * a bar begins inside one, and the ruled beats below the staff.
 */
final class BearingMarks {
  static final double LABEL_SIZE = 1.5;
  private static final double HOOK = 0.6;
  private static final double LINE = Measure.STAFF_LINE;
  private static final double DOTS = 0.16;

  /** Two or three dots would be dirt: brackets keep so far above the music that they cut into. */
  private static final double LEAST_DROP = 1.5;

  /** From the end of a dotted line to the music below it. */
  private static final double ABOVE_MUSIC = 0.3;

  private static final double ABOVE_LANE = 0.5;

  private static final double LABEL_LIFT = 0.85;
  private static final double DOWNBEAT_TICK = 1.2;
  private static final double BEAT_TICK = 0.8;
  private static final double STEP_TICK = 0.5;
  private static final double NUMBER_SIZE = 1.4;
  private static final double BETWEEN = 0.5;
  private static final double BEFORE_BAR = 0.3;

  /** From the ruler down to the feet of its numbers. */
  static final double RULER_DEPTH = DOWNBEAT_TICK + 0.25 + NUMBER_SIZE * 0.9;

  private final StaffPart part;
  private final Sheet sheet;
  private final DoubleUnaryOperator stepX;
  private final IntToDoubleFunction barX;
  private final int firstStep;
  private final int endStep;
  private final double endLines;

  /**
   * @param barX where the line before a bar stands
   */
  BearingMarks(
      StaffPart part,
      SystemPlan plan,
      Sheet sheet,
      DoubleUnaryOperator stepX,
      IntToDoubleFunction barX) {
    this.part = part;
    this.sheet = sheet;
    this.stepX = stepX;
    this.barX = barX;
    this.firstStep = plan.firstBar() * part.stepsPerBar();
    this.endStep = firstStep + plan.bars() * part.stepsPerBar();
    boolean single = !plan.repeatTo() && !plan.last();
    this.endLines =
        single ? Measure.THIN_BAR : Measure.THIN_BAR + Measure.BAR_GAP + Measure.THICK_BAR;
  }

  boolean hasGroupings() {
    return part.groupings().stream()
        .anyMatch(turn -> turn.end() > firstStep && turn.start() < endStep);
  }

  /** How far the groupings' lane reaches above its line. */
  static double laneHeight() {
    return LABEL_LIFT + LABEL_SIZE * 0.75;
  }

  /**
   * Where the brackets' line stands, so that every dotted line below it is long enough.
   *
   * @param lane how low the lane of the groupings may reach
   */
  double line(double lane) {
    return drops().stream()
        .mapToDouble(drop -> drop.end() - LEAST_DROP)
        .reduce(lane - ABOVE_LANE, Math::min);
  }

  /** Where a bar begins inside a grouping, and how far down to the music a line leads from it. */
  private record Drop(int step, double x, double end) {}

  private List<Drop> drops() {
    double half = part.clef().lines() == 1 ? 1 : 2;
    List<Drop> drops = new ArrayList<>();
    for (Grouping turn : part.groupings()) {
      for (int step = firstStep; step < endStep; step += part.stepsPerBar()) {
        if (step > turn.start() && step < turn.end()) {
          double x = stepX.applyAsDouble(step);
          double music = sheet.skyline().top(x - ABOVE_MUSIC, x + ABOVE_MUSIC, -half);
          drops.add(new Drop(step, x, music - ABOVE_MUSIC));
        }
      }
    }
    return drops;
  }

  /**
   * Draws the groupings.
   *
   * @param y the brackets' line
   * @param right the end of the system
   */
  void groupings(double y, double right) {
    dropLines(y);
    for (Grouping turn : part.groupings()) {
      if (turn.end() <= firstStep || turn.start() >= endStep) {
        continue;
      }
      int bar = turn.start() / part.stepsPerBar();
      Place place = new Place(bar, turn.start(), part.said().say("sheet.group", turn.length()));
      bracket(turn, place, y, right);
      if (!turn.remark().isEmpty() && turn.start() >= firstStep) {
        label(new Place(bar, turn.start(), turn.remark()), turn.remark(), edge(turn.start()), y);
      }
      for (int step = firstStep; step < endStep; step += part.stepsPerBar()) {
        if (step > turn.start() && step < turn.end()) {
          String says = part.said().say("sheet.stepOf", step - turn.start() + 1, turn.length());
          label(new Place(step / part.stepsPerBar(), step, says), says, edge(step), y);
        }
      }
    }
  }

  /** The dotted lines, from the brackets down to the music: to be drawn before the brackets. */
  private void dropLines(double y) {
    for (Drop drop : drops()) {
      Place place = new Place(drop.step() / part.stepsPerBar(), drop.step(), "");
      sheet.addBehind(
          new Mark.Line(place, Ink.RULE, drop.x(), y, drop.x(), drop.end(), DOTS, true));
    }
  }

  private void bracket(Grouping turn, Place place, double y, double right) {
    boolean begins = turn.start() >= firstStep;
    boolean ends = turn.end() <= endStep;
    double from =
        begins ? edge(turn.start()) : stepX.applyAsDouble(firstStep) - 2 * Measure.HALF_HEAD;
    double to = ends ? end(turn.end(), right) : right;
    Place silent = place.silent();
    sheet.add(new Mark.Line(begins ? place : silent, Ink.RULE, from, y, to, y, LINE, false));
    if (begins) {
      double x = from + LINE / 2;
      sheet.add(new Mark.Line(silent, Ink.RULE, x, y, x, y + HOOK, LINE, false));
    }
    if (ends) {
      double x = to - LINE / 2;
      sheet.add(new Mark.Line(silent, Ink.RULE, x, y, x, y + HOOK, LINE, false));
    }
  }

  /**
   * A turn that ends with a bar ends before its line, any other before the head of the next.
   *
   * @param right where the lines end that end the system
   */
  private double end(int step, double right) {
    if (step == endStep) {
      return right - endLines - BEFORE_BAR;
    }
    boolean withBar = step % part.stepsPerBar() == 0;
    return withBar
        ? barX.applyAsDouble(step / part.stepsPerBar()) - BEFORE_BAR
        : edge(step) - BETWEEN;
  }

  private double edge(int step) {
    return stepX.applyAsDouble(step) - Measure.HALF_HEAD;
  }

  private void label(Place place, String says, double x, double y) {
    sheet.add(new Mark.Text(place, Ink.SOFT, says, Face.ITALIC, LABEL_SIZE, x, y - LABEL_LIFT));
  }

  /** Draws the ruled beats, ticks downward, the beats numbered. */
  void ruler(double y) {
    double left = stepX.applyAsDouble(firstStep);
    double right = stepX.applyAsDouble(endStep - 1.0);
    sheet.rule(Place.NOWHERE, Ink.RULE, left, y, right, y, LINE);
    for (int step = firstStep; step < endStep; step++) {
      int inBar = step % part.stepsPerBar();
      boolean beat = inBar % part.stepsPerBeat() == 0;
      double length = inBar == 0 ? DOWNBEAT_TICK : beat ? BEAT_TICK : STEP_TICK;
      double x = stepX.applyAsDouble(step);
      Place place = new Place(step / part.stepsPerBar(), step, "");
      sheet.rule(place, Ink.RULE, x, y, x, y + length, inBar == 0 ? DOTS : LINE);
      if (beat) {
        String number = String.valueOf(inBar / part.stepsPerBeat() + 1);
        Face face = inBar == 0 ? Face.SEMIBOLD : Face.REGULAR;
        double half = face.width(number, NUMBER_SIZE) / 2;
        double baseline = y + DOWNBEAT_TICK + 0.25 + NUMBER_SIZE * 0.68;
        sheet.add(new Mark.Text(place, Ink.SOFT, number, face, NUMBER_SIZE, x - half, baseline));
      }
    }
  }
}
