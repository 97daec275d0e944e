package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntToDoubleFunction;
import thinclick.server.words.SheetWords;

/**
 * Lays a part out in systems.
 *
 * <p>From above: the direction of the stage, the click's own part on one line, chord symbols, the
 * turns of a grouping, the staff, the ruled beats. Within all systems of a part a step has the same
 * place and width, so that periods can be compared down the page, and its place is strictly linear
 * in time, so that offsets can be drawn below the staff.
 */
public final class Engraver {
  private static final double AFTER_START = 1.1;
  static final double LANE_AIR = 0.7;

  /** From the lowest music to a ruler that stands as far below all lines. */
  static final double LEAST_RULER_AIR = 0.4;

  /** From the words over a bracket to the foot of a chord symbol. */
  private static final double OVER_WORDS = 0.6;

  /** The size of the words over the click, staff spaces. */
  public static final double DIRECTION_SIZE = 1.8;

  /** As high as its tallest letters reach, of the size: a canvas ends there. */
  private static final double DIRECTION_ASCENT = 0.82;

  private static final double NUMBER_SIZE = 1.5;
  private static final double CHORD_AIR = 0.8;
  private static final double CLICK_SIZE = 1.6;

  private static final double AFTER_WORD = 0.8;

  /** From the end of a tie to the accidental it leads to. */
  private static final double BEFORE_REMINDER = 0.15;

  /** How far before the first step anything may reach into the beats' ruler. */
  private static final double BEFORE_RULER = 1;

  /** From the click's line down to what must not touch the word before it. */
  private static final double CLICK_BELOW = 1.2;

  private final StaffPart part;
  private final SheetWords said;
  private final List<SpelledBar> bars;
  private final Notes notes;
  private final List<SpelledBar> clickBars;
  private final Notes clickNotes;
  private final Columns columns;
  private final Columns clickColumns;

  Engraver(StaffPart part) {
    this.part = part;
    this.said = part.said();
    this.bars = part.spelled();
    this.notes = new Notes(part, bars, 1, "");
    StaffPart click = part.click();
    this.clickBars = click.spelled();
    this.clickNotes =
        new Notes(click, clickBars, Measure.CLICK_SCALE, said.say("sheet.click") + ", ");
    this.columns = Columns.of(part, bars, notes);
    this.clickColumns = Columns.of(click, clickBars, clickNotes);
  }

  /**
   * The least width at which nothing touches.
   *
   * @param plans the systems
   */
  public static double narrowest(StaffPart part, List<SystemPlan> plans) {
    return new Score(List.of(part)).narrowest(plans);
  }

  /**
   * Lays out the systems.
   *
   * @param plans the systems, in order
   * @param width the width to fill, spaces; more is taken where it is too little, and less where a
   *     step would be wider than {@value Measure#MAX_STEP} spaces
   */
  public static List<StaffSystem> systems(StaffPart part, List<SystemPlan> plans, double width) {
    return new Score(List.of(part))
        .systems(plans, width).stream().map(line -> line.get(0)).toList();
  }

  /** Its meter and bars, for what is shared with the staves beside it. */
  StaffPart part() {
    return part;
  }

  /** What stands on its staff, and on the click's. */
  List<Columns> columns() {
    return List.of(columns, clickColumns);
  }

  /** The narrowest step at which its chord symbols do not touch. */
  double leastForChords() {
    double least = 0;
    List<ChordMark> chords = part.chords();
    for (int i = 0; i + 1 < chords.size(); i++) {
      double width = new ChordText(chords.get(i), Place.NOWHERE).width() + CHORD_AIR;
      least = Math.max(least, width / (chords.get(i + 1).step() - chords.get(i).step()));
    }
    return least;
  }

  /** Where the first step stands for this staff. */
  double firstX(List<SystemPlan> plans) {
    double start = plans.stream().mapToDouble(plan -> start(new Sheet(), plan)).max().orElse(0);
    double reach = Math.max(Measure.HALF_HEAD, columns.reachBefore());
    for (SystemPlan plan : plans) {
      reach = Math.max(reach, heldReach(plan) + Ties.LEAST_HALF);
    }
    return start + AFTER_START + reach;
  }

  /**
   * Draws the signs at the beginning of a staff; answers where they end. A repeat begins where the
   * word before the click's line has room to the left of it.
   */
  private double start(Sheet sheet, SystemPlan plan) {
    double end = new StaffStart(part).draw(sheet, plan);
    return plan.repeatFrom()
        ? Math.max(end, clickWord() + AFTER_WORD + BarLines.REPEAT_WIDTH)
        : end;
  }

  /** How far before the first step of a system a tie ends that comes from the one before. */
  private double heldReach(SystemPlan plan) {
    double reminder = notes.reminderReach(bars.get(plan.firstBar()));
    return reminder > 0 ? reminder + BEFORE_REMINDER : 0;
  }

  /**
   * A system.
   *
   * @param measures what it shares with the staves beside it
   * @param step how wide a step is
   * @param withClick false where the click and the stages' words stand above another part
   * @param over how far above the staff's middle line the click's stands at the least
   * @param under how far below it the beats' ruler stands at the least
   */
  StaffSystem system(
      SystemPlan plan,
      ScoreMeasures measures,
      double step,
      boolean withClick,
      double over,
      double under) {
    double firstX = measures.firstX();
    int firstStep = plan.firstBar() * part.stepsPerBar();
    int steps = plan.bars() * part.stepsPerBar();
    DoubleUnaryOperator stepX = at -> firstX + (at - firstStep) * step;
    double[] distances = measures.places().distances(step);
    IntToDoubleFunction barX =
        bar -> stepX.applyAsDouble((double) bar * part.stepsPerBar()) - distances[bar];
    double right = firstX + steps * step - measures.end(step);
    List<SpelledBar> itsBars = bars.subList(plan.firstBar(), plan.firstBar() + plan.bars());
    Sheet sheet = new Sheet();
    staffLines(sheet, right);
    double start = start(sheet, plan);
    itsBars.forEach(bar -> notes.draw(sheet, bar, stepX::applyAsDouble, 0));
    notes.remind(sheet, itsBars.get(0), stepX::applyAsDouble, 0);
    new Ties(notes, part, sheet, stepX::applyAsDouble).draw(itsBars, start + 0.4, right - 0.4);
    itsBars.forEach(bar -> notes.drawAround(sheet, bar, stepX::applyAsDouble, 0));

    double half = part.clef().lines() == 1 ? 1 : 2;
    BearingMarks bearings = new BearingMarks(part, plan, sheet, stepX, barX);
    double music = sheet.skyline().bottom(firstX - BEFORE_RULER, right, 2);
    double ruler = Math.max(under, music + (under > 0 ? LEAST_RULER_AIR : LANE_AIR));
    double lane = sheet.skyline().top(start, right, -half) - LANE_AIR;
    if (bearings.hasGroupings()) {
      double line = bearings.line(lane);
      bearings.groupings(line, right);
      lane = line - BearingMarks.laneHeight() - OVER_WORDS;
    }
    lane = chords(sheet, firstStep, firstStep + steps, stepX, lane);
    number(sheet, plan);
    double firstBar = firstX - Math.min(measures.places().usual(), firstX - start);
    double left = plan.repeatFrom() ? start - BarLines.REPEAT_WIDTH : firstBar;
    double nameRight = left - AFTER_WORD;
    double click = lane;
    if (withClick) {
      double clickLeft = Math.max(left, clickWord() + AFTER_WORD);
      double word = sheet.skyline().top(wordLeft(nameRight), clickLeft, lane);
      click = Math.min(-over, Math.min(lane - 1.3, word - CLICK_BELOW));
      clickLine(sheet, plan, click, stepX, nameRight, clickLeft, right);
    }
    BarLines lines = new BarLines(sheet, part, withClick ? click : null);
    barLines(lines, plan, barX, start, right);
    bearings.ruler(ruler);
    double top = lane;
    if (withClick) {
      top = sheet.skyline().top(start, right, click - 2.5) - LANE_AIR;
      top = directions(sheet, plan, top, stepX, right);
    }
    top = Math.min(top, sheet.skyline().top(0, right, top));
    double shift = -top;
    double width = Math.max(right, wordsEnd(sheet));
    return new StaffSystem(
        plan.firstBar(),
        plan.bars(),
        firstStep,
        steps,
        firstX,
        step,
        shift,
        click + shift,
        barLines(plan, barX, firstBar, right),
        nameRight,
        ruler + shift,
        width,
        ruler + BearingMarks.RULER_DEPTH + shift,
        sheet.marks().stream().map(mark -> mark.shifted(0, shift)).toList());
  }

  private static List<Double> barLines(
      SystemPlan plan, IntToDoubleFunction barX, double left, double right) {
    List<Double> lines = new ArrayList<>(List.of(left));
    for (int bar = plan.firstBar() + 1; bar < plan.firstBar() + plan.bars(); bar++) {
      lines.add(barX.applyAsDouble(bar));
    }
    boolean single = !plan.repeatTo() && !plan.last();
    lines.add(single ? right - Measure.THIN_BAR / 2 : right);
    return lines;
  }

  /** Words over a short line may be longer than its staff. */
  private static double wordsEnd(Sheet sheet) {
    return sheet.marks().stream()
        .filter(Mark.Text.class::isInstance)
        .mapToDouble(mark -> mark.box().right())
        .max()
        .orElse(0);
  }

  private void staffLines(Sheet sheet, double right) {
    int half = part.clef().lines() / 2;
    for (int y = -half; y <= half; y++) {
      sheet.rule(Place.NOWHERE, Ink.FULL, 0, y, right, y, Measure.STAFF_LINE);
    }
  }

  private double chords(
      Sheet sheet, int firstStep, int endStep, DoubleUnaryOperator stepX, double lane) {
    double top = lane;
    for (ChordMark chord : part.chords()) {
      if (chord.step() >= firstStep && chord.step() < endStep) {
        int bar = chord.step() / part.stepsPerBar();
        Place place = new Place(bar, chord.step(), Spoken.chord(chord, said));
        double x = stepX.applyAsDouble(chord.step()) - Measure.HALF_HEAD;
        new ChordText(chord, place).at(x, lane).forEach(sheet::add);
        top = lane - ChordText.ROOT_SIZE * 0.75 - LANE_AIR;
      }
    }
    return top;
  }

  /** Where the word before the click's line begins: inside the system. */
  private double wordLeft(double nameRight) {
    return Math.max(0, nameRight - clickWord());
  }

  private double clickWord() {
    return Face.ITALIC.width(said.say("sheet.click"), CLICK_SIZE);
  }

  private void clickLine(
      Sheet sheet,
      SystemPlan plan,
      double y,
      DoubleUnaryOperator stepX,
      double nameRight,
      double left,
      double right) {
    sheet.rule(Place.NOWHERE, Ink.FULL, left, y, right, y, Measure.STAFF_LINE * 0.8);
    double x = wordLeft(nameRight);
    String click = said.say("sheet.click");
    sheet.add(new Mark.Text(Place.NOWHERE, Ink.SOFT, click, Face.ITALIC, CLICK_SIZE, x, y + 0.4));
    for (int bar = plan.firstBar(); bar < plan.firstBar() + plan.bars(); bar++) {
      clickNotes.draw(sheet, clickBars.get(bar), stepX::applyAsDouble, y);
      clickNotes.drawAround(sheet, clickBars.get(bar), stepX::applyAsDouble, y);
    }
  }

  private void barLines(
      BarLines lines, SystemPlan plan, IntToDoubleFunction barX, double start, double right) {
    if (plan.repeatFrom()) {
      lines.repeatFrom(new Place(plan.firstBar(), -1, said.say("sheet.repeatFrom")), start);
    }
    for (int bar = plan.firstBar() + 1; bar < plan.firstBar() + plan.bars(); bar++) {
      int step = bar * part.stepsPerBar();
      lines.single(new Place(bar, step, ""), barX.applyAsDouble(bar));
    }
    int lastBar = plan.firstBar() + plan.bars() - 1;
    int endStep = (lastBar + 1) * part.stepsPerBar(); // after all that is said of the bar
    if (plan.repeatTo()) {
      boolean round = plan.repeatTimes() == SystemPlan.ROUND;
      String says =
          round ? said.say("sheet.repeatRound") : said.say("sheet.repeatTo", plan.repeatTimes());
      lines.repeatTo(new Place(lastBar, endStep, says), right);
    } else if (plan.last()) {
      lines.end(new Place(lastBar, endStep, said.say("sheet.end")), right);
    } else {
      lines.single(new Place(lastBar, -1, ""), right - Measure.THIN_BAR / 2);
    }
  }

  /** The words above a system, each from the bar on for which they hold as far as they fit. */
  private double directions(
      Sheet sheet, SystemPlan plan, double baseline, DoubleUnaryOperator stepX, double right) {
    if (!plan.direction().isEmpty()) {
      int bar = plan.firstBar() + plan.directionBar();
      Place place = new Place(bar, -1, plan.direction());
      double left = stepX.applyAsDouble((double) plan.firstBar() * part.stepsPerBar());
      double from = stepX.applyAsDouble((double) bar * part.stepsPerBar());
      double fits = right - Face.SEMIBOLD.width(plan.direction(), DIRECTION_SIZE);
      double x = Math.min(from - Measure.HALF_HEAD, Math.max(left - Measure.HALF_HEAD, fits));
      sheet.add(
          new Mark.Text(
              place, Ink.FULL, plan.direction(), Face.SEMIBOLD, DIRECTION_SIZE, x, baseline));
    }
    if (plan.repeatTo()) {
      int times = plan.repeatTimes();
      String says =
          times == SystemPlan.ROUND
              ? said.say("sheet.round")
              : said.say("sheet.times", times, Integer.toString(times));
      double x = right - Face.ITALIC.width(says, DIRECTION_SIZE);
      Place place = new Place(plan.firstBar(), -1, "");
      sheet.add(new Mark.Text(place, Ink.FULL, says, Face.ITALIC, DIRECTION_SIZE, x, baseline));
    }
    boolean written = !plan.direction().isEmpty() || plan.repeatTo();
    return written ? baseline - DIRECTION_SIZE * DIRECTION_ASCENT : baseline + LANE_AIR;
  }

  private void number(Sheet sheet, SystemPlan plan) {
    double above = part.clef() == Clef.TREBLE ? -3.8 : part.clef().lines() == 1 ? -1.9 : -2.6;
    if (plan.firstBar() == 0) {
      return;
    }
    String number = String.valueOf(plan.number());
    Place place = new Place(plan.firstBar(), -1, said.bar(plan.number()));
    sheet.add(new Mark.Text(place, Ink.SOFT, number, Face.ITALIC, NUMBER_SIZE, 0, above));
  }
}
