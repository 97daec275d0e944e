package thinclick.server.dealing;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FreeBars;
import thinclick.protocol.file.FreeSpan;
import thinclick.server.words.Said;

/**
 * One player in a chair: the figure that is repeated from the entry to the end of the take.
 *
 * @param player the player's name
 * @param chair the chair that role, instrument, line and feel come from; its free bars count from
 *     bar 1 of the take
 * @param cell the figure
 * @param entryStep the step at which the figure begins for the first time
 * @param follows the seat whose figure this one plays later, or null
 * @param how what else is to be said of it
 */
record Seat(
    String player,
    Drill.Chair chair,
    Drill.Cell cell,
    int entryStep,
    @Nullable Seat follows,
    List<Said> how) {
  Seat {
    how = List.copyOf(how);
  }

  /** A seat of which nothing else is to be said. */
  Seat(String player, Drill.Chair chair, Drill.Cell cell, int entryStep, @Nullable Seat follows) {
    this(player, chair, cell, entryStep, follows, List.of());
  }

  Seat withCell(Drill.Cell other, Said said) {
    List<Said> all = new ArrayList<>(how);
    all.add(said);
    return new Seat(player, chair, other, entryStep, follows, all);
  }

  /** The same with other free bars. */
  Seat withFree(List<FreeBars> free) {
    return new Seat(player, chair.edited().free(free).chair(), cell, entryStep, follows, how);
  }

  /** Written attacks from the entry to {@code totalSteps}, the entry applied, none in free bars. */
  List<Integer> attackSteps(int totalSteps, int stepsPerBar) {
    return repeated(cell.attackSteps(), totalSteps, stepsPerBar);
  }

  /** Accents among them, or null where the figure has none written. */
  @Nullable List<Integer> accentSteps(int totalSteps, int stepsPerBar) {
    return cell.accentSteps() == null
        ? null
        : repeated(cell.accentSteps(), totalSteps, stepsPerBar);
  }

  private List<Integer> repeated(List<Integer> steps, int totalSteps, int stepsPerBar) {
    List<Integer> all = new ArrayList<>();
    for (int at = entryStep; at < totalSteps; at += cell.steps()) {
      for (int step : steps) {
        if (at + step < totalSteps && !chair.freeAt((at + step) / stepsPerBar)) {
          all.add(at + step);
        }
      }
    }
    return all;
  }

  /**
   * Written lengths as many as attacks, cut at free bars and the end; null where none are written.
   */
  @Nullable List<Integer> lengthSteps(int totalSteps, int stepsPerBar) {
    if (cell.lengthSteps() == null) {
      return null;
    }
    List<Integer> lengths = new ArrayList<>();
    for (int at = entryStep; at < totalSteps; at += cell.steps()) {
      for (int i = 0; i < cell.attackSteps().size(); i++) {
        int step = at + cell.attackSteps().get(i);
        if (step < totalSteps && !chair.freeAt(step / stepsPerBar)) {
          int end = Math.min(step + cell.lengthSteps().get(i), totalSteps);
          lengths.add(chair.writtenUntil(step, end, stepsPerBar) - step);
        }
      }
    }
    return lengths;
  }

  /** The stretches of the take that are played freely. */
  List<FreeSpan> free(int bars) {
    List<FreeSpan> spans = new ArrayList<>();
    for (int bar = 0; bar < bars; bar++) {
      if (chair.freeAt(bar)) {
        int from = bar;
        while (bar < bars && chair.freeAt(bar)) {
          bar++;
        }
        spans.add(new FreeSpan(from, bar));
      }
    }
    return spans;
  }

  /** This seat as a chair of the drill that was dealt, named by the player. */
  Drill.Chair asChair(String name) {
    return chair.edited().named(name).cell(cell).entryStep(entryStep).chair();
  }
}
