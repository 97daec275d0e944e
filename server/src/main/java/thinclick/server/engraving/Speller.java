package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Writes notes as tied values that keep the beats visible: cut at the bar, the half bar and the
 * beat, with the fewest ties, dots only inside a beat.
 *
 * <p>Within these rules the spelling with the fewest symbols wins; among equals the one that is cut
 * at the heavier place. Rests follow the same rules, are never syncopated, and a silent bar has
 * one. The rules are common practice, no source.
 */
public final class Speller {
  private static final int SYMBOL_COST = 100;

  private final BarGrid grid;
  private final Cut cut;
  private final int stepsPerBeat;
  private final int stepsPerBar;

  private Speller(BarGrid grid, Cut cut) {
    this.grid = grid;
    this.cut = cut;
    this.stepsPerBeat = grid.stepsPerBeat();
    this.stepsPerBar = grid.stepsPerBar();
  }

  /**
   * Spells {@code bars} bars.
   *
   * @param notes in order, none reaching over the next; what sounds after the last bar is left out
   */
  static List<SpelledBar> spell(BarGrid grid, int bars, List<NoteSpan> notes, Cut cut) {
    for (int i = 1; i < notes.size(); i++) {
      if (notes.get(i).start() < notes.get(i - 1).end()) {
        throw new IllegalArgumentException(
            "note " + i + " begins inside the one before: " + notes.get(i - 1) + notes.get(i));
      }
    }
    Speller speller = new Speller(grid, cut);
    List<SpelledBar> spelled = new ArrayList<>(bars);
    int next = 0;
    for (int bar = 0; bar < bars; bar++) {
      int from = bar * speller.stepsPerBar;
      while (next < notes.size() && notes.get(next).end() <= from) {
        next++;
      }
      spelled.add(speller.bar(bar, notes, next));
    }
    return List.copyOf(spelled);
  }

  /** A stretch of one bar that is one note or silence, in steps of the bar. */
  private record Stretch(int from, int to, int note, boolean tiedBack, boolean tiedOn) {}

  private SpelledBar bar(int bar, List<NoteSpan> notes, int firstNote) {
    int origin = bar * stepsPerBar;
    List<Stretch> stretches = stretches(origin, notes, firstNote);
    if (stretches.size() == 1 && stretches.get(0).note() < 0) {
      Symbol silence =
          new Symbol(origin, stepsPerBar, NoteValue.WHOLE, 0, -1, false, false, true, null);
      return new SpelledBar(bar, List.of(silence), List.of());
    }
    BeatDivision[] divisions = divisions(stretches);
    List<Symbol> symbols = new ArrayList<>();
    for (Stretch stretch : stretches) {
      write(origin, stretch, divisions, symbols);
    }
    return new SpelledBar(bar, symbols, beams(origin, symbols));
  }

  private List<Stretch> stretches(int origin, List<NoteSpan> notes, int firstNote) {
    List<Stretch> stretches = new ArrayList<>();
    int at = 0;
    for (int i = firstNote; i < notes.size() && at < stepsPerBar; i++) {
      int from = Math.max(0, notes.get(i).start() - origin);
      int to = Math.min(stepsPerBar, notes.get(i).end() - origin);
      if (from >= stepsPerBar) {
        break;
      }
      if (from > at) {
        stretches.add(new Stretch(at, from, -1, false, false));
      }
      boolean tiedBack = notes.get(i).start() < origin;
      boolean tiedOn = notes.get(i).end() > origin + stepsPerBar;
      stretches.add(new Stretch(from, to, i, tiedBack, tiedOn));
      at = to;
    }
    if (at < stepsPerBar) {
      stretches.add(new Stretch(at, stepsPerBar, -1, false, false));
    }
    return stretches;
  }

  private BeatDivision[] divisions(List<Stretch> stretches) {
    boolean[] bound = new boolean[stepsPerBar + 1];
    for (Stretch stretch : stretches) {
      bound[stretch.from()] = true;
      bound[stretch.to()] = true;
    }
    BeatDivision[] divisions = new BeatDivision[grid.meter().beatsPerBar()];
    Arrays.fill(divisions, BeatDivision.PLAIN);
    if (grid.meter().compound() || stepsPerBeat % 3 != 0) {
      return divisions;
    }
    for (int beat = 0; beat < divisions.length; beat++) {
      divisions[beat] = division(bound, beat * stepsPerBeat);
    }
    if (cut == Cut.HALF_BARS && stepsPerBeat == 3) {
      quarterTriplets(bound, divisions);
    }
    return divisions;
  }

  private BeatDivision division(boolean[] bound, int from) {
    if (stepsPerBeat == 3) {
      return bound[from + 1] || bound[from + 2] ? BeatDivision.TRIPLET : BeatDivision.PLAIN;
    }
    boolean odd = bound[from + 1] || bound[from + 5];
    boolean thirds = bound[from + 2] || bound[from + 4];
    boolean half = bound[from + 3];
    if (odd || (thirds && half)) {
      return BeatDivision.SEXTUPLET;
    }
    return thirds ? BeatDivision.TRIPLET : BeatDivision.PLAIN;
  }

  private void quarterTriplets(boolean[] bound, BeatDivision[] divisions) {
    List<Integer> bounds = grid.groupBounds();
    for (int group = 0; group + 1 < bounds.size(); group++) {
      for (int at = bounds.get(group); at + 6 <= bounds.get(group + 1); at += 6) {
        boolean beatIsCrossed = !bound[at + 1] && !bound[at + 3] && !bound[at + 5];
        if (beatIsCrossed && (bound[at + 2] || bound[at + 4])) {
          divisions[at / 3] = BeatDivision.QUARTER_TRIPLET;
          divisions[at / 3 + 1] = BeatDivision.QUARTER_TRIPLET;
        }
      }
    }
  }

  /** Cuts a stretch with the least cost and adds its symbols. */
  private void write(int origin, Stretch stretch, BeatDivision[] divisions, List<Symbol> symbols) {
    int span = stretch.to() - stretch.from();
    boolean rest = stretch.note() < 0;
    int[] cost = new int[span + 1];
    int[] length = new int[span + 1];
    for (int at = span - 1; at >= 0; at--) {
      cost[at] = Integer.MAX_VALUE;
      int position = stretch.from() + at;
      for (int steps = span - at; steps > 0; steps--) {
        if (cost[at + steps] == Integer.MAX_VALUE || !fits(position, steps, rest, divisions)) {
          continue;
        }
        int here = SYMBOL_COST + lightness(position + steps) + cost[at + steps];
        if (here < cost[at]) {
          cost[at] = here;
          length[at] = steps;
        }
      }
    }
    for (int at = 0; at < span; at += length[at]) {
      int position = stretch.from() + at;
      BeatDivision division = divisions[position / stepsPerBeat];
      boolean first = at == 0;
      boolean last = at + length[at] == span;
      NoteValueDots written = written(position, length[at], division);
      if (written == null) {
        throw new IllegalStateException("no value for step " + position + " of " + stretch);
      }
      symbols.add(
          new Symbol(
              origin + position,
              length[at],
              written.value(),
              written.dots(),
              stretch.note(),
              !rest && (!first || stretch.tiedBack()),
              !rest && (!last || stretch.tiedOn()),
              false,
              length[at] % stepsPerBeat == 0 && position % stepsPerBeat == 0
                  ? null
                  : tuplet(origin, position, division)));
    }
  }

  private @Nullable Tuplet tuplet(int origin, int position, BeatDivision division) {
    if (division == BeatDivision.QUARTER_TRIPLET) {
      int group = grid.groupBounds().get(grid.groupAt(position));
      return division.tuplet(origin + group + (position - group) / 6 * 6, 6);
    }
    return division.tuplet(origin + position / stepsPerBeat * stepsPerBeat, stepsPerBeat);
  }

  /** True where one symbol may stand for {@code steps} steps from a place in the bar. */
  private boolean fits(int position, int steps, boolean rest, BeatDivision[] divisions) {
    int beat = position / stepsPerBeat;
    if (written(position, steps, divisions[beat]) == null) {
      return false;
    }
    if (grid.onBeat(position) && steps % stepsPerBeat == 0) {
      return wholeBeats(position, steps, rest);
    }
    int lastBeat = (position + steps - 1) / stepsPerBeat;
    if (divisions[beat] == BeatDivision.QUARTER_TRIPLET) {
      int group = grid.groupBounds().get(grid.groupAt(position));
      int inside = (position - group) % 6;
      return inside % 2 == 0
          && steps % 2 == 0
          && inside + steps <= 6
          && (!rest || steps == 2 || inside == 0);
    }
    if (beat == lastBeat) {
      return insideBeat(position % stepsPerBeat, steps, rest, divisions[beat]);
    }
    return !rest && cut == Cut.HALF_BARS && syncopated(position, steps);
  }

  private boolean wholeBeats(int position, int steps, boolean rest) {
    int beats = steps / stepsPerBeat;
    if (beats == 1) {
      return true;
    }
    if (steps == stepsPerBar) {
      return !rest;
    }
    int group = grid.groupAt(position);
    int size = grid.groups().get(group);
    int from = (position - grid.groupBounds().get(group)) / stepsPerBeat;
    boolean inGroup = from + beats <= size;
    if (rest) {
      return beats == 2 && size == 2 && inGroup;
    }
    return inGroup && (beats == 2 || beats == size);
  }

  private boolean insideBeat(int place, int steps, boolean rest, BeatDivision division) {
    if (steps == 1) {
      return true;
    }
    if (stepsPerBeat == 3) {
      return !rest || place == 0;
    }
    if (stepsPerBeat == 4) {
      return !rest || (steps == 2 && place % 2 == 0);
    }
    if (stepsPerBeat == 6 && division == BeatDivision.PLAIN && !grid.meter().compound()) {
      return place % 3 == 0 && steps == 3;
    }
    boolean onThird = place % 2 == 0;
    if (rest) {
      return steps == 2 ? onThird : steps == 4 && place == 0;
    }
    return switch (steps) {
      case 2 -> true;
      case 3 -> onThird || place == 3;
      default -> steps == 4 && onThird;
    };
  }

  /** The eighth-quarter-eighth figure inside a half bar, on the grid's eighths. */
  private boolean syncopated(int position, int steps) {
    if (grid.meter().compound() || stepsPerBeat % 2 != 0 || steps != stepsPerBeat) {
      return false;
    }
    int group = grid.groupAt(position);
    int inside = position - grid.groupBounds().get(group);
    int pair = inside / (2 * stepsPerBeat);
    boolean pairIsWhole = (pair + 1) * 2 <= grid.groups().get(group);
    return pairIsWhole && inside % (2 * stepsPerBeat) == stepsPerBeat / 2;
  }

  /** How light the place of a cut is: 0 at a group, up to 3 inside a beat. */
  private int lightness(int position) {
    if (grid.groupBounds().contains(position)) {
      return 0;
    }
    if (grid.onBeat(position)) {
      return 1;
    }
    return position % stepsPerBeat % 2 == 0 ? 2 : 3;
  }

  private record NoteValueDots(NoteValue value, int dots) {}

  private @Nullable NoteValueDots written(int position, int steps, BeatDivision division) {
    boolean onBeats = grid.onBeat(position) && steps % stepsPerBeat == 0;
    int perBeat = division == BeatDivision.PLAIN || onBeats ? grid.sixteenthsPerBeat() : 6;
    if (steps * perBeat % stepsPerBeat != 0) {
      return null;
    }
    int sixteenths = steps * perBeat / stepsPerBeat;
    for (NoteValue value : NoteValue.values()) {
      if (value.sixteenths() == sixteenths) {
        return new NoteValueDots(value, 0);
      }
      if (value.sixteenths() * 3 == sixteenths * 2) {
        return new NoteValueDots(value, 1);
      }
    }
    return null;
  }

  private List<List<Integer>> beams(int origin, List<Symbol> symbols) {
    List<List<Integer>> beams = new ArrayList<>();
    List<Integer> run = new ArrayList<>();
    int beat = -1;
    for (int i = 0; i < symbols.size(); i++) {
      Symbol symbol = symbols.get(i);
      int itsBeat = (symbol.start() - origin) / stepsPerBeat;
      boolean beamed = !symbol.rest() && symbol.value().flags() > 0;
      if (!beamed || itsBeat != beat) {
        close(run, beams);
      }
      if (beamed) {
        run.add(i);
      }
      beat = itsBeat;
    }
    close(run, beams);
    return beams;
  }

  private static void close(List<Integer> run, List<List<Integer>> beams) {
    if (run.size() > 1) {
      beams.add(List.copyOf(run));
    }
    run.clear();
  }
}
