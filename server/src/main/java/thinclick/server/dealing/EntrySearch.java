package thinclick.server.dealing;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import thinclick.protocol.file.Drill;

/**
 * Finds displaced entries: no two players enter a figure at the same step, and each new entry is
 * the one whose attacks fall least on those of the players before.
 */
final class EntrySearch {
  /** Up to this level entries stay on the beat as long as there are enough beats. */
  private static final int LEVEL_OF_BEATS = 2;

  private static final double SAME_PHASE_COST = 0.75;
  private static final double LATE_COST = 0.2;
  private static final double CHANCE_COST = 0.3;

  private final DealFrame frame;
  private final SplittableRandom random;

  EntrySearch(DealFrame frame) {
    this.frame = frame;
    this.random = new SplittableRandom(frame.seed());
  }

  /**
   * An entry for one more player of a figure.
   *
   * @param seated who sits already
   * @param chair the chair that is doubled
   * @param stillToCome how many more players of the same figure will need an entry, this one
   *     included
   */
  int entry(List<Seat> seated, Drill.Chair chair, int stillToCome) {
    Drill.Cell cell = chair.cell();
    Set<Integer> taken = new HashSet<>();
    Set<Integer> phases = new HashSet<>();
    for (Seat seat : seated) {
      if (seat.cell().equals(cell)) {
        taken.add(seat.entryStep());
        phases.add(seat.entryStep() % cell.steps());
      }
    }
    List<Integer> candidates = candidates(chair.entryStep(), cell, taken, stillToCome);
    Occupancy occupancy = Occupancy.of(frame, seated);
    double least = Double.POSITIVE_INFINITY;
    int best = chair.entryStep();
    for (int entry : candidates) {
      double cost =
          occupancy.meetings(cell, entry)
              + (phases.contains(entry % cell.steps()) ? SAME_PHASE_COST : 0)
              + LATE_COST * (entry - chair.entryStep()) / frame.stepsPerBar()
              + CHANCE_COST * random.nextDouble();
      if (cost < least) {
        least = cost;
        best = entry;
      }
    }
    return best;
  }

  private List<Integer> candidates(
      int first, Drill.Cell cell, Set<Integer> taken, int stillToCome) {
    int bar = frame.stepsPerBar();
    int latest = Math.max(first + 1, Math.min(frame.totalSteps() / 2, frame.totalSteps() - bar));
    int window = Math.max(cell.steps() > 4 * bar ? bar : cell.steps(), 2 * bar);
    if (frame.drill().level() <= LEVEL_OF_BEATS) {
      List<Integer> onBeats =
          free(first, first + window, latest, frame.drill().stepsPerBeat(), taken);
      if (onBeats.size() >= stillToCome) {
        return onBeats;
      }
    }
    while (true) {
      List<Integer> anywhere = free(first, first + window, latest, 1, taken);
      if (anywhere.size() >= stillToCome || first + window >= latest) {
        return anywhere;
      }
      window += bar;
    }
  }

  private static List<Integer> free(int first, int before, int latest, int by, Set<Integer> taken) {
    return new ArrayList<>(
        IntStream.range(first + 1, Math.min(before, latest))
            .filter(step -> step % by == 0 && !taken.contains(step))
            .boxed()
            .toList());
  }
}
