package thinclick.server.material;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import thinclick.protocol.file.Drill;

/** How a cell's grouping lies across beats and bar lines, entry and repetition included. */
public final class Groupings {
  private Groupings() {}

  /**
   * The groups of one repetition of a cell as lengths that add up to it; empty without a grouping.
   * The last one is the tail where the figure is not repeated to the end.
   */
  static List<Integer> lengths(Drill.Cell cell) {
    if (cell.grouping() == null) {
      return List.of();
    }
    int size = cell.grouping();
    List<Integer> lengths = new ArrayList<>();
    int at = 0;
    while (at + size <= cell.steps() && sameFigure(cell, at, size)) {
      lengths.add(size);
      at += size;
    }
    if (at < cell.steps()) {
      lengths.add(cell.steps() - at);
    }
    return lengths;
  }

  /** Where the tail of a cell begins, in steps of the cell; its length where there is no tail. */
  static int tailStart(Drill.Cell cell) {
    List<Integer> lengths = lengths(cell);
    boolean hasTail =
        !lengths.isEmpty() && !lengths.get(lengths.size() - 1).equals(cell.grouping());
    return hasTail ? cell.steps() - lengths.get(lengths.size() - 1) : cell.steps();
  }

  private static boolean sameFigure(Drill.Cell cell, int at, int size) {
    return IntStream.range(0, size)
        .allMatch(
            step -> cell.attackSteps().contains(step) == cell.attackSteps().contains(at + step));
  }

  /**
   * The groups from the entry to {@code toStep}, the cell repeated; empty without a grouping.
   *
   * @param entryStep where the cell begins
   */
  public static List<Group> lay(
      Drill.Cell cell, int entryStep, int stepsPerBeat, int stepsPerBar, int toStep) {
    List<Integer> lengths = lengths(cell);
    List<Group> groups = new ArrayList<>();
    int tail = tailStart(cell);
    int at = entryStep;
    while (!lengths.isEmpty() && at < toStep) {
      int inCell = 0;
      for (int length : lengths) {
        if (at >= toStep) {
          break;
        }
        groups.add(
            group(at, Math.min(at + length, toStep), inCell >= tail, stepsPerBeat, stepsPerBar));
        at += length;
        inCell += length;
      }
    }
    return List.copyOf(groups);
  }

  private static Group group(int from, int to, boolean tail, int stepsPerBeat, int stepsPerBar) {
    List<Integer> beats =
        IntStream.range(from + 1, to).filter(step -> step % stepsPerBeat == 0).boxed().toList();
    List<Integer> bars = beats.stream().filter(step -> step % stepsPerBar == 0).toList();
    return new Group(from, to, tail, beats, bars, from % stepsPerBar == 0);
  }

  /**
   * The bar, from 0, on whose line the figure begins again for the first time after it was off the
   * bar line; empty where there is no grouping, where it never leaves the bar line, or where it
   * does not come round before {@code bars} bars are over.
   */
  public static Optional<Integer> comesRound(
      Drill.Cell cell, int entryStep, int stepsPerBeat, int stepsPerBar, int bars) {
    boolean left = entryStep % stepsPerBar != 0;
    int next = entryStep;
    for (Group group : lay(cell, entryStep, stepsPerBeat, stepsPerBar, bars * stepsPerBar)) {
      for (int line = (next + stepsPerBar - 1) / stepsPerBar * stepsPerBar;
          line < group.fromStep();
          line += stepsPerBar) {
        left = true;
      }
      if (group.onBarLine() && left) {
        return Optional.of(group.fromStep() / stepsPerBar);
      }
      next = group.fromStep() + 1;
    }
    return Optional.empty();
  }

  /** Steps after which a grouping and the bar begin together again: their least common multiple. */
  public static int realignsAfter(int grouping, int cycleSteps) {
    int a = grouping;
    int b = cycleSteps;
    while (b != 0) {
      int rest = a % b;
      a = b;
      b = rest;
    }
    return grouping / a * cycleSteps;
  }
}
