package thinclick.server.engraving;

import java.util.List;
import java.util.function.IntToDoubleFunction;

/**
 * Draws ties as flat arcs: below where both stems go up, else above; broken at the ends of systems.
 * A tie leads from head to head: a bracketed accidental before its head is passed below or above,
 * as a copyist passes it (common practice, from memory).
 */
final class Ties {
  private static final double FROM_MIDDLE = 0.3;
  private static final double PAST_STEM = 0.75;
  private static final double AWAY = 0.72;

  /** From a staff line to the middle of an arc's thickest place. */
  private static final double OFF_LINE = 0.28;

  /** The shortest half of a tie at the beginning of a system, as far as it is clear of signs. */
  static final double LEAST_HALF = 1;

  /** From an arc to a sign that it passes. */
  private static final double OFF_SIGN = 0.12;

  /** So much further from its head an arc begins at the most, and so much more it is bent. */
  private static final double MOST_LIFT = 0.6;

  private static final double MOST_BEND = 2;

  /** An end off its head is seen so much sooner than a bend. */
  private static final double LIFT_COSTS = 2;

  private static final double TRIED = 0.05;
  private static final int SAMPLES = 24;

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
   * @param left where a tie from the system before begins, where it is long enough
   * @param right where a tie to the next system ends
   */
  void draw(List<SpelledBar> bars, double left, double right) {
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
          arc(bar, symbol, below, from, Math.max(to, from + 1), List.of());
        }
        if (symbol.tiedBack() && symbol.start() == firstStep) {
          List<Box> signs = reminder(bar);
          double clear = signs.stream().mapToDouble(Box::left).reduce(x - FROM_MIDDLE, Math::min);
          arc(bar, symbol, up, Math.min(left, clear - LEAST_HALF), x - FROM_MIDDLE, signs);
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

  /** What stands before a head that is held from the system before. */
  private List<Box> reminder(SpelledBar bar) {
    Sheet alone = new Sheet();
    notes.remind(alone, bar, stepX, 0);
    return alone.marks().stream().map(Mark::box).toList();
  }

  /**
   * An arc, from its end to its end.
   *
   * @param y where it begins and ends
   * @param height how far its middle is from there
   * @param away 1 where it hangs below, else -1
   */
  private record Arc(double from, double to, double y, double height, double away) {
    private double shoulder() {
      return Math.min((to - from) * 0.3, 1.6);
    }

    /**
     * The height of the curve's own points, of the edge that is nearer to the head or the other.
     */
    private double edge(int side) {
      return y + away * (height + side * Measure.TIE_MIDDLE / 2) * 4 / 3;
    }

    private boolean clearOf(List<Box> signs) {
      for (int i = 0; i <= SAMPLES; i++) {
        double t = (double) i / SAMPLES;
        double x = cubic(t, from, from + shoulder(), to - shoulder(), to);
        double inner = cubic(t, y, edge(-1), edge(-1), y) - away * Measure.TIE_END / 2;
        for (Box sign : signs) {
          double off = away > 0 ? inner - sign.bottom() : sign.top() - inner;
          if (x > sign.left() - OFF_SIGN && x < sign.right() + OFF_SIGN && off < OFF_SIGN) {
            return false;
          }
        }
      }
      return true;
    }

    private static double cubic(double t, double a, double b, double c, double d) {
      double u = 1 - t;
      return u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
    }
  }

  private void arc(
      SpelledBar bar, Symbol symbol, boolean below, double from, double to, List<Box> signs) {
    StaffNote note = part.notes().get(symbol.note());
    double away = below ? 1 : -1;
    double reach = note.head() == Head.SLASH ? 1.2 : AWAY;
    double y = -note.position() / 2.0 + away * reach;
    double flat = Math.min(1.1, 0.28 + 0.09 * (to - from));
    draw(new Place(bar.index(), symbol.start(), ""), passing(from, to, y, flat, away, signs));
  }

  /** The arc that is clear of all signs and neither far from its head nor much bent. */
  private Arc passing(double from, double to, double y, double flat, double away, List<Box> signs) {
    Arc best = new Arc(from, to, y, offLines(y, away, flat), away);
    double least = best.clearOf(signs) ? 0 : Double.POSITIVE_INFINITY;
    for (double lift = 0; lift < MOST_LIFT; lift += TRIED) {
      double end = y + away * lift;
      for (double bend = 0; lift * LIFT_COSTS + bend < Math.min(least, MOST_BEND); bend += TRIED) {
        Arc arc = new Arc(from, to, end, offLines(end, away, flat + bend), away);
        if (arc.clearOf(signs)) {
          best = arc;
          least = lift * LIFT_COSTS + bend;
        }
      }
    }
    return best;
  }

  private void draw(Place place, Arc arc) {
    double from = arc.from();
    double to = arc.to();
    double y = arc.y();
    double outer = arc.edge(1);
    double inner = arc.edge(-1);
    double lift = arc.away() * Measure.TIE_END / 2;
    double shoulder = arc.shoulder();
    sheet.add(
        new Mark.Shape(
            place,
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
