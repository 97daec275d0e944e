package thinclick.server.engraving;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
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

  /** The size of the words over the click, staff spaces. */
  public static final double DIRECTION_SIZE = 1.8;

  private static final double CHORD_AIR = 0.8;
  private static final double CLICK_SIZE = 1.6;

  /** From the word before the click's line, or a name below it, to the line. */
  static final double AFTER_WORD = 0.8;

  /** From the end of a tie to the accidental it leads to. */
  private static final double BEFORE_REMINDER = 0.15;

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
  double start(Sheet sheet, SystemPlan plan) {
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

  /** Draws the notes of a system; {@code start} is where the signs at its beginning end. */
  void music(Sheet sheet, SystemPlan plan, DoubleUnaryOperator stepX, double start, double right) {
    List<SpelledBar> its = bars.subList(plan.firstBar(), plan.firstBar() + plan.bars());
    its.forEach(bar -> notes.draw(sheet, bar, stepX::applyAsDouble, 0));
    notes.remind(sheet, its.get(0), stepX::applyAsDouble, 0);
    new Ties(notes, part, sheet, stepX::applyAsDouble).draw(its, start + 0.4, right - 0.4);
    its.forEach(bar -> notes.drawAround(sheet, bar, stepX::applyAsDouble, 0));
  }

  /** Draws the click's own part on its line, the word before it. */
  void click(
      Sheet sheet,
      SystemPlan plan,
      double y,
      DoubleUnaryOperator stepX,
      double word,
      double left,
      double right) {
    sheet.rule(Place.NOWHERE, Ink.FULL, left, y, right, y, Measure.STAFF_LINE * 0.8);
    String click = said.say("sheet.click");
    sheet.add(
        new Mark.Text(Place.NOWHERE, Ink.SOFT, click, Face.ITALIC, CLICK_SIZE, word, y + 0.4));
    for (int bar = plan.firstBar(); bar < plan.firstBar() + plan.bars(); bar++) {
      clickNotes.draw(sheet, clickBars.get(bar), stepX::applyAsDouble, y);
      clickNotes.drawAround(sheet, clickBars.get(bar), stepX::applyAsDouble, y);
    }
  }

  /** How wide the word before the click's line is. */
  double clickWord() {
    return Face.ITALIC.width(said.say("sheet.click"), CLICK_SIZE);
  }
}
