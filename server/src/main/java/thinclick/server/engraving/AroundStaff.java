package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;
import thinclick.server.words.SheetWords;

/** What is drawn around the music of a system last: its bar lines, and the words above it. */
final class AroundStaff {
  /** As high as its tallest letters reach, of the size: a canvas ends there. */
  private static final double DIRECTION_ASCENT = 0.82;

  private final Sheet sheet;
  private final StaffPart part;
  private final SystemPlan plan;
  private final DoubleUnaryOperator stepX;
  private final double right;
  private final SheetWords said;

  /**
   * @param stepX where a step stands
   * @param right where the staff ends
   */
  AroundStaff(
      Sheet sheet, StaffPart part, SystemPlan plan, DoubleUnaryOperator stepX, double right) {
    this.sheet = sheet;
    this.part = part;
    this.plan = plan;
    this.stepX = stepX;
    this.right = right;
    said = part.said();
  }

  /**
   * Draws the bar lines.
   *
   * @param click the click's line; null where it stands above another part
   * @param barX where the line before a bar stands
   * @param start where the signs at the beginning of the staff end
   */
  void barLines(@Nullable Double click, IntToDoubleFunction barX, double start) {
    BarLines lines = new BarLines(sheet, part, click);
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

  /**
   * Draws the words above a system, each from the bar on for which they hold as far as they fit;
   * answers how high they reach.
   */
  double directions(double baseline) {
    if (!plan.direction().isEmpty()) {
      int bar = plan.firstBar() + plan.directionBar();
      Place place = new Place(bar, -1, plan.direction());
      double left = stepX.applyAsDouble((double) plan.firstBar() * part.stepsPerBar());
      double from = stepX.applyAsDouble((double) bar * part.stepsPerBar());
      double fits = right - Face.SEMIBOLD.width(plan.direction(), Engraver.DIRECTION_SIZE);
      double x = Math.min(from - Measure.HALF_HEAD, Math.max(left - Measure.HALF_HEAD, fits));
      sheet.add(
          new Mark.Text(
              place,
              Ink.FULL,
              plan.direction(),
              Face.SEMIBOLD,
              Engraver.DIRECTION_SIZE,
              x,
              baseline));
    }
    if (plan.repeatTo()) {
      int times = plan.repeatTimes();
      String says =
          times == SystemPlan.ROUND
              ? said.say("sheet.round")
              : said.say("sheet.times", times, Integer.toString(times));
      double x = right - Face.ITALIC.width(says, Engraver.DIRECTION_SIZE);
      Place place = new Place(plan.firstBar(), -1, "");
      sheet.add(
          new Mark.Text(place, Ink.FULL, says, Face.ITALIC, Engraver.DIRECTION_SIZE, x, baseline));
    }
    boolean written = !plan.direction().isEmpty() || plan.repeatTo();
    return written
        ? baseline - Engraver.DIRECTION_SIZE * DIRECTION_ASCENT
        : baseline + StaffDraft.LANE_AIR;
  }

  /**
   * Where its bar lines stand, as {@link StaffSystem#barLines} has them.
   *
   * @param left where the first bar begins
   */
  List<Double> places(double left, IntToDoubleFunction barX) {
    List<Double> lines = new ArrayList<>(List.of(left));
    for (int bar = plan.firstBar() + 1; bar < plan.firstBar() + plan.bars(); bar++) {
      lines.add(barX.applyAsDouble(bar));
    }
    boolean single = !plan.repeatTo() && !plan.last();
    lines.add(single ? right - Measure.THIN_BAR / 2 : right);
    return lines;
  }

  /** Words over a short line may be longer than its staff. */
  double wordsEnd() {
    return sheet.marks().stream()
        .filter(Mark.Text.class::isInstance)
        .mapToDouble(mark -> mark.box().right())
        .max()
        .orElse(0);
  }
}
