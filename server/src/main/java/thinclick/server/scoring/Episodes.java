package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Runs of displaced written attacks: which of them stand, and which bars they cover. */
final class Episodes {
  /** A shift claimed from fewer matched attacks than this does not stand. */
  static final int LEAST_MATCHED = 3;

  /** Or from attacks that span fewer beats. */
  static final int LEAST_BEATS = 2;

  /** Or one that saves fewer dropped and added attacks. */
  static final int LEAST_SAVED = 3;

  private Episodes() {}

  /** Takes back every run that does not stand, until all do. */
  static void weigh(Sheet sheet, Places places, Reading reading) {
    int n = reading.size();
    boolean changed = false;
    int k = 0;
    while (k < n) {
      if (reading.shift[k] == 0) {
        k++;
        continue;
      }
      int to = k;
      while (to < n && reading.shift[to] == reading.shift[k]) {
        to++;
      }
      if (!stands(sheet, places, reading, k, to)) {
        Arrays.fill(reading.shift, k, to, 0);
        changed = true;
      }
      k = to;
    }
    if (changed) {
      reading.match(sheet, places);
    }
  }

  /**
   * Half a period early looks like half a period late but for the edges: takes the sign that leaves
   * fewer dropped and added, and keeps to one where both leave as many.
   */
  static void chooseSides(Sheet sheet, Places places, Reading reading) {
    Integer period = reading.shifts.period();
    if (period == null || period % 2 != 0) {
      return;
    }
    int half = period / 2;
    int usual = 0;
    int n = reading.size();
    int k = 0;
    while (k < n) {
      int to = k + 1;
      if (Math.abs(reading.shift[k]) != half) {
        k = to;
        continue;
      }
      while (to < n && reading.shift[to] == reading.shift[k]) {
        to++;
      }
      int more =
          reading.matchedAround(sheet, places, k, to, half)
              - reading.matchedAround(sheet, places, k, to, -half);
      int side = more != 0 ? Integer.signum(more) : usual != 0 ? usual : 1;
      usual = usual == 0 ? side : usual;
      Arrays.fill(reading.shift, k, to, side * half);
      k = to;
    }
    if (usual != 0) {
      reading.match(sheet, places);
    }
  }

  private static boolean stands(Sheet sheet, Places places, Reading reading, int from, int to) {
    int matched = 0;
    int first = -1;
    int last = -1;
    for (int k = from; k < to; k++) {
      if (reading.partner[k] != Matcher.NONE) {
        matched++;
        first = first < 0 ? reading.chair.steps[k] : first;
        last = reading.chair.steps[k];
      }
    }
    if (matched < LEAST_MATCHED || last - first < LEAST_BEATS * sheet.grid.stepsPerBeat()) {
      return false;
    }
    // each attack matched is one dropped and one added fewer
    int more =
        reading.matchedAround(sheet, places, from, to, reading.shift[from])
            - reading.matchedAround(sheet, places, from, to, 0);
    return 2 * more >= LEAST_SAVED;
  }

  /** The displaced runs of bars. */
  static List<Displacement> displacements(Sheet sheet, Reading reading) {
    List<Displacement> found = new ArrayList<>();
    int n = reading.size();
    int k = 0;
    int openShift = 0;
    int openFrom = 0;
    int openTo = 0;
    while (k < n) {
      int bar = sheet.barOf(reading.chair.steps[k]);
      int end = k;
      while (end < n && sheet.barOf(reading.chair.steps[end]) == bar) {
        end++;
      }
      int shift = shiftOf(reading, k, end);
      k = end;
      if (shift == NOTHING_MATCHED) {
        continue;
      }
      if (shift != openShift) {
        if (openShift != 0) {
          found.add(new Displacement(openFrom, openTo, openShift));
        }
        openShift = shift;
        openFrom = bar;
      }
      openTo = bar + 1;
    }
    if (openShift != 0) {
      found.add(new Displacement(openFrom, openTo, openShift));
    }
    return found;
  }

  private static final int NOTHING_MATCHED = Integer.MIN_VALUE;

  /** The shift of most matched attacks of a bar; a displaced one where as many are home. */
  private static int shiftOf(Reading reading, int from, int to) {
    int best = NOTHING_MATCHED;
    int bestCount = 0;
    for (int k = from; k < to; k++) {
      int count = 0;
      for (int i = from; i < to; i++) {
        if (reading.partner[i] != Matcher.NONE && reading.shift[i] == reading.shift[k]) {
          count++;
        }
      }
      if (count > bestCount || (count == bestCount && count > 0 && best == 0)) {
        best = reading.shift[k];
        bestCount = count;
      }
    }
    return best;
  }
}
