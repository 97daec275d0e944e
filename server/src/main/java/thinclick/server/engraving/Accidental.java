package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.server.material.pitch.Pitch;

/** The signs before noteheads, and which notes need one. */
public enum Accidental {
  DOUBLE_FLAT(-2, Glyph.ACCIDENTAL_DOUBLE_FLAT),
  FLAT(-1, Glyph.ACCIDENTAL_FLAT),
  NATURAL(0, Glyph.ACCIDENTAL_NATURAL),
  SHARP(1, Glyph.ACCIDENTAL_SHARP),
  DOUBLE_SHARP(2, Glyph.ACCIDENTAL_DOUBLE_SHARP);

  private static final int[] SHARPS = {3, 0, 4, 1, 5, 2, 6}; // F C G D A E B as letters from C

  private final int alter;
  private final Glyph glyph;

  Accidental(int alter, Glyph glyph) {
    this.alter = alter;
    this.glyph = glyph;
  }

  /** Semitones, flats negative. */
  public int alter() {
    return alter;
  }

  Glyph glyph() {
    return glyph;
  }

  static Accidental of(int alter) {
    return values()[alter + 2];
  }

  /** The sign that a note has against its key, wherever it was written; null where it has none. */
  static @Nullable Accidental beyondKey(StaffPart part, StaffNote note) {
    Pitch pitch = note.pitch();
    return pitch == null || pitch.name().alter() == inKey(part.fifths(), pitch.name().letter())
        ? null
        : of(pitch.name().alter());
  }

  /** What a key signature does to a letter. */
  static int inKey(int fifths, int letter) {
    int place = 0;
    while (SHARPS[place] != letter) {
      place++;
    }
    if (fifths > 0) {
      return place < fifths ? 1 : 0;
    }
    return 6 - place < -fifths ? -1 : 0;
  }

  /**
   * The accidental of each note, null for none.
   *
   * <p>An accidental holds to the bar line, at its own octave. In the bar after it, the first note
   * that is no longer altered is reminded of it. A note tied over a bar line is not repeated.
   */
  public static List<@Nullable Accidental> of(StaffPart part) {
    List<@Nullable Accidental> accidentals = new ArrayList<>();
    Map<Integer, Integer> inBar = new HashMap<>();
    Map<Integer, Integer> before = Map.of();
    int bar = 0;
    for (StaffNote note : part.notes()) {
      Pitch pitch = note.pitch();
      if (pitch == null) {
        accidentals.add(null);
        continue;
      }
      int itsBar = note.span().start() / part.stepsPerBar();
      if (itsBar != bar) {
        before = itsBar == bar + 1 ? Map.copyOf(inBar) : Map.of();
        inBar.clear();
        bar = itsBar;
      }
      int key = pitch.staffStep();
      int alter = pitch.name().alter();
      int signature = inKey(part.fifths(), pitch.name().letter());
      Integer seen = inBar.get(key);
      boolean changes = alter != (seen == null ? signature : seen);
      boolean reminds = seen == null && before.getOrDefault(key, alter) != alter;
      accidentals.add(changes || reminds ? of(alter) : null);
      inBar.put(key, alter);
    }
    return accidentals;
  }
}
