package thinclick.server.dealing;

import java.util.List;
import thinclick.protocol.file.Drill;

/** How many attack each step once everybody is in. */
final class Occupancy {
  /** Longer cycles than this many bars are looked at in part. */
  private static final int MOST_BARS = 24;

  private final int[] attacks;

  private Occupancy(int[] attacks) {
    this.attacks = attacks;
  }

  /** Of a stretch that begins where every figure is being repeated; step 0 is a bar line. */
  static Occupancy of(DealFrame frame, List<Seat> seated) {
    int[] attacks = new int[MOST_BARS * frame.stepsPerBar()];
    for (Seat seat : seated) {
      forEachAttack(seat.cell(), seat.entryStep(), attacks.length, step -> attacks[step]++);
    }
    return new Occupancy(attacks);
  }

  /** How many of those seated are met by an attack of the figure, on the average. */
  double meetings(Drill.Cell cell, int entryStep) {
    int[] met = new int[2];
    forEachAttack(
        cell,
        entryStep,
        attacks.length,
        step -> {
          met[0] += attacks[step];
          met[1]++;
        });
    return met[1] == 0 ? 0 : (double) met[0] / met[1];
  }

  private interface StepAction {
    void at(int step);
  }

  private static void forEachAttack(Drill.Cell cell, int entryStep, int end, StepAction action) {
    int first = Math.floorMod(entryStep, cell.steps()) - cell.steps();
    for (int at = first; at < end; at += cell.steps()) {
      for (int step : cell.attackSteps()) {
        if (at + step >= 0 && at + step < end) {
          action.at(at + step);
        }
      }
    }
  }
}
