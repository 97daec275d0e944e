package thinclick.server.engraving;

import java.util.function.DoubleUnaryOperator;
import java.util.function.IntToDoubleFunction;

/**
 * A staff of a system while it is laid out: its music is drawn. The click's line above it and the
 * beats' ruler below it are not yet, since on a page that is turned they stand as far from the
 * staff in all systems. Once it is known how far, the draft is finished, in as many ways as are
 * tried.
 */
final class StaffDraft {
  /** From the highest or the lowest music to the lane beyond it. */
  static final double LANE_AIR = 0.7;

  /** From the lowest music to a ruler that stands as far below all lines. */
  static final double LEAST_RULER_AIR = 0.4;

  /** From the words over a bracket to the foot of a chord symbol. */
  private static final double OVER_WORDS = 0.6;

  private static final double NUMBER_SIZE = 1.5;

  /** How far before the first step anything may reach into the beats' ruler. */
  private static final double BEFORE_RULER = 1;

  /** From the click's line down to the lane below it, and to what is below the word before it. */
  private static final double CLICK_ABOVE = 1.3;

  private static final double CLICK_BELOW = 1.2;

  private final StaffPart part;
  private final SystemPlan plan;
  private final Spacing spacing;
  private final DoubleUnaryOperator stepX;
  private final IntToDoubleFunction barX;
  private final double right;
  private final Sheet drawn = new Sheet();
  private final double start;
  private final double lowest;
  private final double lane;
  private final double firstBar;
  private final double nameRight;
  private final double clickLeft;
  private final double nearestClick;
  private final Engraver staff;

  /**
   * Draws the music.
   *
   * @param spacing what it shares with the staves beside it
   */
  StaffDraft(Engraver staff, SystemPlan plan, Spacing spacing) {
    this.staff = staff;
    this.part = staff.part();
    this.plan = plan;
    this.spacing = spacing;
    int firstStep = firstStep();
    double firstX = spacing.firstX();
    double step = spacing.step();
    stepX = at -> firstX + (at - firstStep) * step;
    barX = bar -> stepX.applyAsDouble((double) bar * part.stepsPerBar()) - spacing.beforeBar(bar);
    right = firstX + steps() * step - spacing.end();
    staffLines();
    start = staff.start(drawn, plan);
    staff.music(drawn, plan, stepX, start, right);
    lowest = drawn.skyline().bottom(firstX - BEFORE_RULER, right, 2);
    lane = chords(groupings());
    number();
    firstBar = firstX - Math.min(spacing.usual(), firstX - start);
    double left = plan.repeatFrom() ? start - BarLines.REPEAT_WIDTH : firstBar;
    nameRight = left - Engraver.AFTER_WORD;
    clickLeft = Math.max(left, staff.clickWord() + Engraver.AFTER_WORD);
    double word = drawn.skyline().top(wordLeft(), clickLeft, lane);
    nearestClick = Math.min(lane - CLICK_ABOVE, word - CLICK_BELOW);
  }

  /** The staff that it is of. */
  StaffPart part() {
    return part;
  }

  /** How far above the staff's middle line the click's stands as near as the music lets it. */
  double clickOver() {
    return -nearestClick;
  }

  /** How far below the staff's middle line the ruler stands as near as the music lets it. */
  double rulerUnder() {
    return lowest + LANE_AIR;
  }

  /**
   * The system with all that stands around its music.
   *
   * @param withClick false where the click and the stages' words stand above another part
   * @param over how far above the staff's middle line the click's stands at the least
   * @param under how far below it the beats' ruler stands at the least
   */
  StaffSystem finished(boolean withClick, double over, double under) {
    Sheet sheet = drawn.copy();
    double ruler = Math.max(under, lowest + (under > 0 ? LEAST_RULER_AIR : LANE_AIR));
    double click = withClick ? Math.min(-over, nearestClick) : lane;
    if (withClick) {
      staff.click(sheet, plan, click, stepX, wordLeft(), clickLeft, right);
    }
    AroundStaff around = new AroundStaff(sheet, part, plan, stepX, right);
    around.barLines(withClick ? click : null, barX, start);
    bearings(sheet).ruler(ruler);
    double top = lane;
    if (withClick) {
      top = around.directions(sheet.skyline().top(start, right, click - 2.5) - LANE_AIR);
    }
    double shift = -Math.min(top, sheet.skyline().top(0, right, top));
    return new StaffSystem(
        plan.firstBar(),
        plan.bars(),
        firstStep(),
        steps(),
        spacing.firstX(),
        spacing.step(),
        shift,
        click + shift,
        around.places(firstBar, barX),
        nameRight,
        ruler + shift,
        Math.max(right, around.wordsEnd()),
        ruler + BearingMarks.RULER_DEPTH + shift,
        sheet.marks().stream().map(mark -> mark.shifted(0, shift)).toList());
  }

  private int firstStep() {
    return plan.firstBar() * part.stepsPerBar();
  }

  private int steps() {
    return plan.bars() * part.stepsPerBar();
  }

  /** Where the word before the click's line begins: inside the system. */
  private double wordLeft() {
    return Math.max(0, nameRight - staff.clickWord());
  }

  private void staffLines() {
    int half = part.clef().lines() / 2;
    for (int y = -half; y <= half; y++) {
      drawn.rule(Place.NOWHERE, Ink.FULL, 0, y, right, y, Measure.STAFF_LINE);
    }
  }

  private BearingMarks bearings(Sheet sheet) {
    return new BearingMarks(part, plan, sheet, stepX, barX);
  }

  /** Draws the turns of a grouping; answers where the next lane may begin. */
  private double groupings() {
    double half = part.clef().lines() == 1 ? 1 : 2;
    double above = drawn.skyline().top(start, right, -half) - LANE_AIR;
    BearingMarks bearings = bearings(drawn);
    if (!bearings.hasGroupings()) {
      return above;
    }
    double line = bearings.line(above);
    bearings.groupings(line, right);
    return line - BearingMarks.laneHeight() - OVER_WORDS;
  }

  /** Draws the chord symbols above a lane; answers where the next lane may begin. */
  private double chords(double lane) {
    int firstStep = firstStep();
    int endStep = firstStep + steps();
    double top = lane;
    for (ChordMark chord : part.chords()) {
      if (chord.step() >= firstStep && chord.step() < endStep) {
        int bar = chord.step() / part.stepsPerBar();
        Place place = new Place(bar, chord.step(), Spoken.chord(chord, part.said()));
        double x = stepX.applyAsDouble(chord.step()) - Measure.HALF_HEAD;
        new ChordText(chord, place).at(x, lane).forEach(drawn::add);
        top = lane - ChordText.ROOT_SIZE * 0.75 - LANE_AIR;
      }
    }
    return top;
  }

  private void number() {
    double above = part.clef() == Clef.TREBLE ? -3.8 : part.clef().lines() == 1 ? -1.9 : -2.6;
    if (plan.firstBar() == 0) {
      return;
    }
    String number = String.valueOf(plan.number());
    Place place = new Place(plan.firstBar(), -1, part.said().bar(plan.number()));
    drawn.add(new Mark.Text(place, Ink.SOFT, number, Face.ITALIC, NUMBER_SIZE, 0, above));
  }
}
