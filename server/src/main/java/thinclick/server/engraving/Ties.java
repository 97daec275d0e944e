package thinclick.server.engraving;

import java.util.List;
import java.util.function.IntToDoubleFunction;

/**
 * Draws ties as flat arcs: below where both stems go up, else above; broken at the ends of systems.
 */
final class Ties {
  private static final double FROM_MIDDLE = 0.3;
  private static final double PAST_STEM = 0.75;
  private static final double AWAY = 0.72;

  /** From a staff line to the middle of an arc's thickest place. */
  private static final double OFF_LINE = 0.28;

  /** The shortest half of a tie at the beginning of a system. */
  static final double LEAST_HALF = 1;

  private final Notes notes;
  private final StaffPart part;
  private final Sheet sheet;
  private final IntToDoubleFunction stepX;

  Ties(Notes notes, StaffPart part, Sheet sheet, IntToDoubleFunction stepX) {
    this.notes = notes;
    this.part = part;
    this.sheet = sheet;
    this.stepX = stepX;
  }

  /**
   * Draws the ties of some bars.
   *
   * @param left where a tie from the system before begins
   * @param held how far before its step's place that tie ends
   * @param right where a tie to the next system ends
   */
  void draw(List<SpelledBar> bars, double left, double held, double right) {
    int endStep = (bars.get(bars.size() - 1).index() + 1) * part.stepsPerBar();
    int firstStep = bars.get(0).index() * part.stepsPerBar();
    for (SpelledBar bar : bars) {
      for (int i = 0; i < bar.symbols().size(); i++) {
        Symbol symbol = bar.symbols().get(i);
        boolean up = notes.stem(bar, i).up();
        double x = stepX.applyAsDouble(symbol.start());
        if (symbol.tiedOn()) {
          boolean broken = symbol.end() >= endStep;
          boolean nextUp = broken ? up : stemUpAt(bars, symbol.end());
          boolean below = up && nextUp;
          double from = x + (below || !up ? FROM_MIDDLE : PAST_STEM);
          double to = broken ? right : stepX.applyAsDouble(symbol.end()) - FROM_MIDDLE;
          arc(bar, symbol, below, from, Math.max(to, from + 1));
        }
        if (symbol.tiedBack() && symbol.start() == firstStep) {
          double to = x - Math.max(FROM_MIDDLE, held);
          arc(bar, symbol, up, Math.min(left, to - LEAST_HALF), to);
        }
      }
    }
  }

  private boolean stemUpAt(List<SpelledBar> bars, int step) {
    SpelledBar bar = bars.get(step / part.stepsPerBar() - bars.get(0).index());
    for (int i = 0; i < bar.symbols().size(); i++) {
      if (bar.symbols().get(i).start() == step) {
        return notes.stem(bar, i).up();
      }
    }
    throw new IllegalStateException("a tie to step " + step + ", where nothing is written");
  }

  /** The height of an arc whose middle would lie along a staff line, so that it does not. */
  private double offLines(double y, double away, double height) {
    double middle = y + away * height;
    double line = Math.rint(middle);
    boolean drawn = part.clef().lines() > 1 && Math.abs(line) <= 2;
    if (!drawn || Math.abs(middle - line) >= OFF_LINE) {
      return height;
    }
    double side = middle == line ? away : Math.signum(middle - line);
    return away * (line + side * OFF_LINE - y);
  }

  private void arc(SpelledBar bar, Symbol symbol, boolean below, double from, double to) {
    StaffNote note = part.notes().get(symbol.note());
    double away = below ? 1 : -1;
    double reach = note.head() == Head.SLASH ? 1.2 : AWAY;
    double y = -note.position() / 2.0 + away * reach;
    double length = to - from;
    double flat = Math.min(1.1, 0.28 + 0.09 * length);
    double height = offLines(y, away, flat);
    double outer = y + away * (height + Measure.TIE_MIDDLE / 2) * 4 / 3;
    double inner = y + away * (height - Measure.TIE_MIDDLE / 2) * 4 / 3;
    double lift = away * Measure.TIE_END / 2;
    double shoulder = Math.min(length * 0.3, 1.6);
    sheet.add(
        new Mark.Shape(
            new Place(bar.index(), symbol.start(), ""),
            Ink.FULL,
            from,
            y + lift,
            List.of(
                new Mark.Curve(from + shoulder, outer, to - shoulder, outer, to, y + lift),
                new Mark.Curve(to, y + lift, to, y - lift, to, y - lift),
                new Mark.Curve(to - shoulder, inner, from + shoulder, inner, from, y - lift),
                new Mark.Curve(from, y - lift, from, y + lift, from, y + lift))));
  }
}
