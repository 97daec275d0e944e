package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;

/** Folds lines that come again unchanged into repeats. */
final class Fold {
  private static final int MOST_LINES_IN_A_REPEAT = 8;

  private Fold() {}

  /**
   * One line before folding.
   *
   * @param firstBar its first bar
   * @param bars how many
   * @param direction what stands above it, empty where a stage goes on
   * @param content all that is written in it; equal lines have equal content
   */
  record Line(int firstBar, int bars, String direction, List<Object> content) {}

  /** The lines that are written, with their repeats. Nothing is folded across a direction. */
  static List<SystemPlan> fold(List<Line> lines) {
    List<SystemPlan> plans = new ArrayList<>();
    int at = 0;
    while (at < lines.size()) {
      int bestLength = 1;
      int bestTimes = 1;
      for (int length = 1; length <= MOST_LINES_IN_A_REPEAT; length++) {
        int times = times(lines, at, length);
        if (times > 1 && length * times > bestLength * bestTimes) {
          bestLength = length;
          bestTimes = times;
        }
      }
      int end = at + bestLength * bestTimes;
      for (int i = 0; i < bestLength; i++) {
        Line line = lines.get(at + i);
        boolean first = i == 0 && bestTimes > 1;
        boolean last = i == bestLength - 1;
        plans.add(
            new SystemPlan(
                line.firstBar(),
                line.bars(),
                first,
                last ? bestTimes : 1,
                line.direction(),
                last && end == lines.size()));
      }
      at = end;
    }
    return plans;
  }

  /** How often the lines from {@code at} come in a row. */
  private static int times(List<Line> lines, int at, int length) {
    int end = at + length;
    for (int i = at; i < lines.size(); i++) {
      boolean newStage = i > at && !lines.get(i).direction().isEmpty();
      boolean same = i < end || lines.get(i).content().equals(lines.get(i - length).content());
      if (newStage || !same) {
        return (i - at) / length;
      }
    }
    return (lines.size() - at) / length;
  }
}
