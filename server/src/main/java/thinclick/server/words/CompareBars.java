package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import thinclick.server.scoring.Figure;

/** The band's and each click's figures of two takes as bars of text, all of a kind on one scale. */
final class CompareBars {
  /** What reaches the end of the scale is so many signs long. */
  static final int LONGEST = 40;

  private static final double SPREAD_STEP = 20;

  private CompareBars() {}

  /** The lines, a name and two bars for each. */
  static List<String> lines(Comparison comparison, Speaker speaker) {
    String first = speaker.say("compare.first");
    String second = speaker.say("compare.second");
    int names = Math.max(first.length(), second.length());
    List<String> lines = new ArrayList<>();
    for (Comparison.Kind kind : Comparison.Kind.values()) {
      double most = most(comparison, kind);
      for (Comparison.Row row : comparison.rows()) {
        if (row.kind() == kind && !row.ofPlayer()) {
          lines.add(Table.cut(speaker.say(row.name()), Table.WIDTH));
          lines.add(bar(first, names, '-', row.first(), kind, most, speaker));
          lines.add(bar(second, names, '=', row.second(), kind, most, speaker));
        }
      }
    }
    return lines;
  }

  private static double most(Comparison comparison, Comparison.Kind kind) {
    if (kind == Comparison.Kind.HOLD) {
      return 100;
    }
    double most = SPREAD_STEP;
    for (Comparison.Row row : comparison.rows()) {
      for (Figure one : List.of(row.first(), row.second())) {
        if (row.kind() == kind && !row.ofPlayer() && one.known()) {
          most = Math.max(most, one.get());
        }
      }
    }
    return SPREAD_STEP * Math.ceil(most / SPREAD_STEP);
  }

  private static String bar(
      String name,
      int names,
      char sign,
      Figure figure,
      Comparison.Kind kind,
      double most,
      Speaker speaker) {
    String head = "  " + name + " ".repeat(names - name.length()) + " |";
    if (!figure.known()) {
      return head;
    }
    int length = (int) Math.rint(LONGEST * figure.get() / most);
    return head + String.valueOf(sign).repeat(length) + " " + speaker.shown(kind.shown(figure));
  }
}
