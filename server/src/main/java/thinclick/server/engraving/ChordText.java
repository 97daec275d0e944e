package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;

/**
 * A chord symbol set in type: the root large, what follows smaller and a little raised, flats and
 * sharps as music signs.
 */
final class ChordText {
  static final double ROOT_SIZE = 2.5;
  private static final double QUALITY_SIZE = 1.9;
  private static final double RAISED = 0.45;
  private static final double RAISED_AIR = 0.06;

  private final List<TextRun> runs = new ArrayList<>();
  private final List<Double> rises = new ArrayList<>();

  ChordText(ChordMark chord, Place place) {
    add(new TextRun(place, Ink.FULL, TextRun.pretty(chord.root()), Face.SEMIBOLD, ROOT_SIZE), 0);
    Place silent = place.silent();
    String quality = chord.quality();
    if (quality.startsWith("m") && !quality.startsWith("maj")) { // minor stays on the line
      add(new TextRun(silent, Ink.FULL, "m", Face.SEMIBOLD, QUALITY_SIZE), 0);
      quality = quality.substring(1);
    }
    if (!quality.isEmpty()) {
      String signs = quality.replace('b', '\u266d').replace('#', '\u266f');
      add(new TextRun(silent, Ink.FULL, signs, Face.SEMIBOLD, QUALITY_SIZE), RAISED);
    }
    if (!chord.bass().isEmpty()) {
      String bass = "/" + TextRun.pretty(chord.bass());
      add(new TextRun(silent, Ink.FULL, bass, Face.SEMIBOLD, ROOT_SIZE), 0);
    }
  }

  private void add(TextRun run, double rise) {
    runs.add(run);
    rises.add(rise);
  }

  double width() {
    double width = 0;
    for (int i = 0; i < runs.size(); i++) {
      width += air(i) + runs.get(i).width();
    }
    return width;
  }

  /** What is raised stands a little off the letter before it. */
  private double air(int run) {
    return rises.get(run) > 0 ? RAISED_AIR : 0;
  }

  List<Mark> at(double x, double y) {
    List<Mark> marks = new ArrayList<>();
    double left = x;
    for (int i = 0; i < runs.size(); i++) {
      left += air(i);
      marks.addAll(runs.get(i).at(left, y - rises.get(i)));
      left += runs.get(i).width();
    }
    return marks;
  }
}
