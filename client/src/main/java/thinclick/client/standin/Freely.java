package thinclick.client.standin;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import thinclick.client.standin.Player.Next;
import thinclick.protocol.file.FreeSpan;
import thinclick.protocol.file.Part;
import thinclick.protocol.music.StepGrid;

/**
 * What a stand-in plays in bars that its part leaves free: beats, what lies between them, both or
 * nothing, by lot; the last beat is left to breathe before the return. Our own choice.
 */
final class Freely {
  private Freely() {}

  /** The moves of all free bars, in order; none stands for anything written. */
  static List<Next> moves(Part part, StepGrid grid, Random lots) {
    List<Next> moves = new ArrayList<>();
    for (FreeSpan span : part.free()) {
      int end = span.toBar() * grid.stepsPerBar() - grid.stepsPerBeat();
      for (int beat = span.fromBar() * grid.stepsPerBar();
          beat < end;
          beat += grid.stepsPerBeat()) {
        int off = beat + grid.stepsPerBeat() - Math.max(1, grid.stepsPerBeat() / 3);
        int lot = lots.nextInt(8);
        if (lot < 5) {
          moves.add(new Next(beat, beat, -1));
        }
        if (lot >= 3 && lot < 7) {
          moves.add(new Next(off, off, -1));
        }
      }
    }
    return moves;
  }
}
