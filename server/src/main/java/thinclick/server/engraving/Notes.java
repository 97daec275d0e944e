package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Draws notes and rests: heads, accidentals, dots, stems, flags, flat beams, articulations,
 * tuplets.
 *
 * <p>Inside, y counts from the staff's middle line in spaces of this staff, and x from the place of
 * the step; {@code scale} makes the click's part small.
 */
final class Notes {
  private static final double FREELY_SIZE = 1.7;

  private final StaffPart part;
  private final List<@Nullable Accidental> accidentals;
  private final double scale;
  private final String spokenFirst;
  private final Map<Integer, List<Stem>> stems = new HashMap<>();

  /**
   * Notes of a part.
   *
   * @param spokenFirst what is said before each of them, such as {@code "click, "}
   */
  Notes(StaffPart part, List<SpelledBar> bars, double scale, String spokenFirst) {
    this.part = part;
    this.spokenFirst = spokenFirst;
    this.accidentals = Accidental.of(part);
    this.scale = scale;
    for (SpelledBar bar : bars) {
      stems.put(bar.index(), Stem.of(bar, part));
    }
  }

  /** The stem of a symbol of a bar. */
  Stem stem(SpelledBar bar, int index) {
    return stems.getOrDefault(bar.index(), List.of()).get(index);
  }

  /** The signs and ledger lines of a symbol, around the place of its step. */
  List<Mark> covering(SpelledBar bar, int index) {
    Symbol symbol = bar.symbols().get(index);
    Sheet alone = new Sheet();
    draw(alone, bar, index, 0, 0, Place.NOWHERE);
    if (!symbol.rest() && stem(bar, index).flagged()) {
      flag(alone, symbol, stem(bar, index), 0, 0, Place.NOWHERE);
    }
    return alone.marks();
  }

  /**
   * How far the reminder before a note that is held into a bar reaches before the bar's first step;
   * 0 where none is needed.
   */
  double reminderReach(SpelledBar bar) {
    Sheet alone = new Sheet();
    remind(alone, bar, step -> 0, 0);
    return alone.marks().stream().mapToDouble(mark -> -mark.box().left()).max().orElse(0);
  }

  /**
   * Draws the accidental of a note that is held from the system before once more, in brackets: its
   * own stands where the reader no longer looks.
   */
  void remind(Sheet sheet, SpelledBar bar, IntToDoubleFunction stepX, double y) {
    Symbol symbol = bar.symbols().get(0);
    Accidental sign = symbol.tiedBack() ? Accidental.beyondKey(part, note(symbol)) : null;
    if (sign == null) {
      return;
    }
    StaffNote note = note(symbol);
    double headY = y + headY(note) * scale;
    double right = stepX.applyAsDouble(symbol.start()) - halfHead(symbol) * scale;
    Place place = new Place(bar.index(), symbol.start(), "");
    double left = right - accidentalGap(note, Measure.LEDGER_REACH) * scale;
    for (Glyph glyph :
        List.of(Glyph.ACCIDENTAL_PARENS_RIGHT, sign.glyph(), Glyph.ACCIDENTAL_PARENS_LEFT)) {
      left -= glyph.right() * scale;
      sign(sheet, place, glyph, left, headY);
    }
  }

  /**
   * From a head to its accidental, which keeps clear of the ledger line through the head.
   *
   * @param reach how far that line reaches beyond the head
   */
  private double accidentalGap(StaffNote note, double reach) {
    boolean ledger = part.clef().lines() > 1 && Math.abs(note.position()) > 5;
    return ledger ? reach + Measure.LEDGER_AIR : Measure.ACCIDENTAL_GAP;
  }

  /** Draws a bar; {@code stepX} gives the place of a step, {@code y} is the staff's middle line. */
  void draw(Sheet sheet, SpelledBar bar, IntToDoubleFunction stepX, double y) {
    List<Symbol> symbols = bar.symbols();
    for (int i = 0; i < symbols.size(); i++) {
      Symbol symbol = symbols.get(i);
      Place place =
          new Place(bar.index(), symbol.start(), spokenFirst + Spoken.symbol(symbol, part));
      if (symbol.wholeBar()) {
        if (part.freeBars().contains(bar.index())) {
          freeBar(sheet, bar, stepX, y, place);
          continue;
        }
        double last = stepX.applyAsDouble(symbol.end() - 1);
        double middle = (stepX.applyAsDouble(symbol.start()) + last) / 2;
        rest(sheet, symbol, middle, y, place);
        continue;
      }
      double x = stepX.applyAsDouble(symbol.start());
      draw(sheet, bar, i, x, y, place);
      Stem stem = stem(bar, i);
      if (!symbol.rest() && symbol.value().stemmed()) {
        stem(sheet, symbol, stem, x, y, place.silent());
        if (stem.flagged()) {
          flag(sheet, symbol, stem, x, y, place.silent());
        }
      }
    }
    for (List<Integer> beam : bar.beams()) {
      beam(sheet, bar, beam, stepX, y);
    }
  }

  /** A bar that is played freely: a slash on each beat, and the word where the stretch begins. */
  private void freeBar(
      Sheet sheet, SpelledBar bar, IntToDoubleFunction stepX, double y, Place place) {
    Glyph slash = Glyph.NOTEHEAD_SLASH_HORIZONTAL_ENDS;
    int first = bar.index() * part.stepsPerBar();
    for (int step = first; step < first + part.stepsPerBar(); step += part.stepsPerBeat()) {
      double x = stepX.applyAsDouble(step) - slash.width() / 2 * scale;
      sign(sheet, step == first ? place : place.silent(), slash, x, y);
    }
    if (!part.freeBars().contains(bar.index() - 1)) {
      double x = stepX.applyAsDouble(first) - slash.width() / 2 * scale;
      double above = y - (part.clef().lines() == 1 ? 1.6 : 2.8) * scale;
      sheet.add(
          new Mark.Text(
              place.silent(),
              Ink.FULL,
              part.said().say("sheet.freely"),
              Face.ITALIC,
              FREELY_SIZE * scale,
              x,
              above));
    }
  }

  /** Draws what keeps clear of notes and ties: articulations, then tuplets around them. */
  void drawAround(Sheet sheet, SpelledBar bar, IntToDoubleFunction stepX, double y) {
    List<Symbol> symbols = bar.symbols();
    for (int i = 0; i < symbols.size(); i++) {
      Symbol symbol = symbols.get(i);
      if (symbol.attack()) {
        double x = stepX.applyAsDouble(symbol.start());
        articulations(
            sheet, symbol, stem(bar, i), x, y, new Place(bar.index(), symbol.start(), ""));
      }
    }
    tuplets(sheet, bar, stepX, y);
  }

  private StaffNote note(Symbol symbol) {
    return part.notes().get(symbol.note());
  }

  /** Half the width of a symbol's head. */
  private double halfHead(Symbol symbol) {
    return note(symbol).head().glyph(symbol.value()).width() / 2;
  }

  private static double headY(StaffNote note) {
    return -note.position() / 2.0;
  }

  private void sign(Sheet sheet, Place place, Glyph glyph, double x, double y) {
    sheet.add(new Mark.Sign(place, Ink.FULL, glyph, x, y, scale));
  }

  /** A rest, or a head with all that stands beside it. */
  private void draw(Sheet sheet, SpelledBar bar, int index, double x, double y, Place place) {
    Symbol symbol = bar.symbols().get(index);
    if (symbol.rest()) {
      rest(sheet, symbol, x, y, place);
      return;
    }
    StaffNote note = note(symbol);
    double headY = y + headY(note) * scale;
    double half = halfHead(symbol) * scale;
    Accidental accidental = symbol.attack() ? accidentals.get(symbol.note()) : null;
    double reach = accidental == null ? Measure.LEDGER_REACH : Measure.LEDGER_REACH_TO_ACCIDENTAL;
    ledgerLines(sheet, note, x - half - reach * scale, x + half, y, place.silent());
    sign(sheet, place, note.head().glyph(symbol.value()), x - half, headY);
    if (accidental != null) {
      double left = x - half - (accidentalGap(note, reach) + accidental.glyph().right()) * scale;
      sign(sheet, place.silent(), accidental.glyph(), left, headY);
    }
    if (symbol.dots() > 0) {
      boolean onLine = Math.floorMod(note.position(), 2) == 0;
      boolean pastFlag = stem(bar, index).flagged() && stem(bar, index).up();
      double gap = Measure.DOT_GAP + (pastFlag ? 0.85 : 0);
      double dotY = headY - (onLine ? 0.5 : 0) * scale;
      sign(sheet, place.silent(), Glyph.AUGMENTATION_DOT, x + half + gap * scale, dotY);
    }
  }

  private void rest(Sheet sheet, Symbol symbol, double x, double y, Place place) {
    Glyph glyph =
        switch (symbol.value()) {
          case WHOLE -> Glyph.REST_WHOLE;
          case HALF -> Glyph.REST_HALF;
          case QUARTER -> Glyph.REST_QUARTER;
          case EIGHTH -> Glyph.REST_8TH;
          case SIXTEENTH -> Glyph.REST_16TH;
        };
    boolean hangs = symbol.value() == NoteValue.WHOLE && part.clef().lines() > 1;
    double half = glyph.width() / 2 * scale;
    sign(sheet, place, glyph, x - half, y - (hangs ? scale : 0));
    if (symbol.dots() > 0) {
      double right = x + half + Measure.DOT_GAP * scale;
      sign(sheet, place.silent(), Glyph.AUGMENTATION_DOT, right, y - 0.5 * scale);
    }
  }

  /** Ledger lines up to a note, from a place before its head to the usual reach beyond it. */
  private void ledgerLines(
      Sheet sheet, StaffNote note, double left, double headEnd, double y, Place place) {
    if (part.clef().lines() == 1) {
      return;
    }
    double right = headEnd + Measure.LEDGER_REACH * scale;
    int side = note.position() > 0 ? 1 : -1;
    for (int line = 6; line <= Math.abs(note.position()); line += 2) {
      double at = y - side * line / 2.0 * scale;
      sheet.add(
          new Mark.Line(place, Ink.FULL, left, at, right, at, Measure.LEDGER_LINE * scale, false));
    }
  }

  /** Where a stem stands, right of the head when it goes up. */
  private double stemX(Symbol symbol, Stem stem) {
    double x = halfHead(symbol) - Measure.STEM / 2;
    return stem.up() ? x : -x;
  }

  private void stem(Sheet sheet, Symbol symbol, Stem stem, double x, double y, Place place) {
    StaffNote note = note(symbol);
    double rise = note.head().stemRise();
    double from = headY(note) + (stem.up() ? -rise : rise);
    double at = x + stemX(symbol, stem) * scale;
    double thickness = Measure.STEM * scale;
    sheet.add(
        new Mark.Line(
            place, Ink.FULL, at, y + from * scale, at, y + stem.end() * scale, thickness, false));
  }

  private void flag(Sheet sheet, Symbol symbol, Stem stem, double x, double y, Place place) {
    boolean one = symbol.value().flags() == 1;
    Glyph glyph =
        stem.up()
            ? (one ? Glyph.FLAG_8TH_UP : Glyph.FLAG_16TH_UP)
            : (one ? Glyph.FLAG_8TH_DOWN : Glyph.FLAG_16TH_DOWN);
    double left = x + (stemX(symbol, stem) - Measure.STEM / 2) * scale;
    sign(sheet, place, glyph, left, y + stem.end() * scale);
  }

  private void beam(
      Sheet sheet, SpelledBar bar, List<Integer> beam, IntToDoubleFunction stepX, double y) {
    int levels = beam.stream().mapToInt(i -> bar.symbols().get(i).value().flags()).max().orElse(1);
    for (int level = 1; level <= levels; level++) {
      int at = 0;
      while (at < beam.size()) {
        int to = at;
        while (to < beam.size() && bar.symbols().get(beam.get(to)).value().flags() >= level) {
          to++;
        }
        if (to > at) {
          beamLevel(sheet, bar, beam, level, at, to - 1, stepX, y);
        }
        at = to + 1;
      }
    }
  }

  private void beamLevel(
      Sheet sheet,
      SpelledBar bar,
      List<Integer> beam,
      int level,
      int first,
      int last,
      IntToDoubleFunction stepX,
      double y) {
    Symbol from = bar.symbols().get(beam.get(first));
    Symbol to = bar.symbols().get(beam.get(last));
    Stem stem = stem(bar, beam.get(first));
    double edge = Measure.STEM / 2 * scale;
    double left = stepX.applyAsDouble(from.start()) + stemX(from, stem) * scale - edge;
    double right = stepX.applyAsDouble(to.start()) + stemX(to, stem) * scale + edge;
    if (first == last) { // a stub, toward the longer value it belongs to
      double stub = Measure.HALF_HEAD * 2 * scale;
      if (first == 0) {
        right = left + stub;
      } else {
        left = right - stub;
      }
    }
    double inward = stem.up() ? 1 : -1;
    double depth = Measure.BEAM / 2 + (level - 1) * (Measure.BEAM + Measure.BEAM_GAP);
    double at = y + (stem.end() + inward * depth) * scale;
    sheet.add(
        new Mark.Line(
            new Place(bar.index(), from.start(), ""),
            Ink.FULL,
            left,
            at,
            right,
            at,
            Measure.BEAM * scale,
            false));
  }

  private void articulations(
      Sheet sheet, Symbol symbol, Stem stem, double x, double y, Place place) {
    StaffNote note = note(symbol);
    int away = stem.up() ? 1 : -1;
    double at = headY(note) + away * (symbol.tiedOn() ? 0.9 : 0.25); // outside the tie
    for (Articulation sign : List.of(Articulation.STACCATO, Articulation.TENUTO)) {
      if (note.articulations().contains(sign)) {
        at = clearOfLines(at + away * 0.75, away);
        beside(sheet, sign, stem, x, y, at, place);
      }
    }
    if (note.articulations().contains(Articulation.ACCENT)) {
      Glyph glyph = Articulation.ACCENT.above();
      double half = glyph.width() / 2 * scale;
      double clear = sheet.skyline().top(x - half, x + half, y - 2 * scale);
      sign(sheet, place, glyph, x - half, clear - 0.4 * scale);
    }
  }

  /** A sign on the side of the head, its middle so far from the middle line. */
  private void beside(
      Sheet sheet,
      Articulation articulation,
      Stem stem,
      double x,
      double y,
      double middle,
      Place place) {
    Glyph glyph = stem.up() ? articulation.below() : articulation.above();
    double at = middle + (glyph.top() + glyph.bottom()) / 2;
    sign(sheet, place, glyph, x - glyph.width() / 2 * scale, y + at * scale);
  }

  /** The next place away from the head that is not on a staff line. */
  private static double clearOfLines(double y, int away) {
    boolean onLine = Math.abs(y) <= 2 && y == Math.rint(y);
    return onLine ? y + away * 0.5 : y;
  }

  private void tuplets(Sheet sheet, SpelledBar bar, IntToDoubleFunction stepX, double y) {
    List<Symbol> symbols = bar.symbols();
    int at = 0;
    while (at < symbols.size()) {
      Tuplet tuplet = symbols.get(at).tuplet();
      int to = at;
      while (tuplet != null && to < symbols.size() && tuplet.equals(symbols.get(to).tuplet())) {
        to++;
      }
      if (tuplet != null) {
        tuplet(sheet, bar, tuplet, at, to - 1, stepX, y);
      }
      at = Math.max(to, at + 1);
    }
  }

  private void tuplet(
      Sheet sheet,
      SpelledBar bar,
      Tuplet tuplet,
      int first,
      int last,
      IntToDoubleFunction stepX,
      double y) {
    List<Integer> members = new ArrayList<>();
    for (int i = first; i <= last; i++) {
      members.add(i);
    }
    boolean above = members.stream().allMatch(i -> stem(bar, i).up());
    double reach = Measure.HALF_HEAD * scale;
    double left = stepX.applyAsDouble(bar.symbols().get(first).start()) - reach;
    double right = stepX.applyAsDouble(bar.symbols().get(last).start()) + reach;
    Glyph number = Glyph.tupletDigit(tuplet.actual());
    double size = 0.8 * scale;
    double middle = (left + right) / 2;
    double half = number.width() / 2 * size;
    boolean beamed = bar.beams().contains(members);
    double from = beamed ? middle - half : left; // a number alone needs no more than its own width
    double to = beamed ? middle + half : right;
    double lift = 0.45 * scale;
    double line =
        above
            ? sheet.skyline().top(from, to, y - 2 * scale) - lift
            : sheet.skyline().bottom(from, to, y + 2 * scale) + lift;
    double height = number.top() * size;
    Place place = new Place(bar.index(), tuplet.start(), "");
    double numberY = above ? line : line + height;
    sheet.add(
        new Mark.Sign(
            place, Ink.FULL, number, middle - half - number.left() * size, numberY, size));
    if (!beamed) {
      double at = numberY - height / 2;
      double hook = (above ? 0.7 : -0.7) * scale;
      double clear = half + 0.25 * scale;
      bracket(sheet, place, left, middle - clear, at, left, at + hook);
      bracket(sheet, place, middle + clear, right, at, right, at + hook);
    }
  }

  private void bracket(
      Sheet sheet, Place place, double x1, double x2, double y, double hookX, double hookY) {
    double thickness = Measure.TUPLET_LINE * scale;
    sheet.add(new Mark.Line(place, Ink.FULL, x1, y, x2, y, thickness, false));
    sheet.add(new Mark.Line(place, Ink.FULL, hookX, y, hookX, hookY, thickness, false));
  }
}
