package thinclick.server.material;

import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Meter;

/** An easier and a harder figure in the same cycle, so that a mixed class can play together. */
public final class Variations {
  private static final int ROOM_FOR_PICKUP = 3;

  private Variations() {}

  /** The heavier half of its attacks; of those as heavy, every other one. */
  public static Drill.Cell easier(
      Drill.Cell cell, Meter meter, int stepsPerBeat, @Nullable List<Integer> groups) {
    int[] weights = MetricWeights.ofBar(meter, stepsPerBeat, groups);
    List<Integer> attacks = cell.attackSteps();
    List<Integer> kept =
        IntStream.range(0, attacks.size())
            .boxed()
            .sorted(
                Comparator.comparingInt((Integer i) -> -weights[attacks.get(i) % weights.length])
                    .thenComparingInt(i -> i % 2)
                    .thenComparingInt(i -> i))
            .limit((attacks.size() + 1) / 2)
            .map(attacks::get)
            .sorted()
            .toList();
    return Cells.withAttacks(cell, kept);
  }

  /**
   * A pickup a step before each attack that leaves room for one; where there is no room the first
   * attack of each repetition is left out, so that the figure has to begin by itself.
   */
  public static Drill.Cell harder(Drill.Cell cell) {
    TreeSet<Integer> attacks = new TreeSet<>(cell.attackSteps());
    for (int i = 0; i < cell.attackSteps().size(); i++) {
      int next = cell.attackSteps().get(i) + cell.gapAfter(i);
      if (cell.gapAfter(i) >= ROOM_FOR_PICKUP && next - 1 < cell.steps()) {
        attacks.add(next - 1);
      }
    }
    if (attacks.size() == cell.attackSteps().size() && attacks.size() > 1) {
      attacks.pollFirst();
    }
    return Cells.withAttacks(cell, List.copyOf(attacks));
  }
}
