package thinclick.server.dealing;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;

/**
 * One player in a chair: the figure that is repeated from the entry to the end of the take.
 *
 * @param player the player's name
 * @param chair the chair that role, instrument, line and feel come from
 * @param cell the figure
 * @param entryStep the step at which the figure begins for the first time
 * @param follows the seat whose figure this one plays later, or null
 * @param how what else is to be said of it, after a comma; empty where nothing is
 */
record Seat(
    String player,
    Drill.Chair chair,
    Drill.Cell cell,
    int entryStep,
    @Nullable Seat follows,
    String how) {

  /** A seat of which nothing else is to be said. */
  Seat(String player, Drill.Chair chair, Drill.Cell cell, int entryStep, @Nullable Seat follows) {
    this(player, chair, cell, entryStep, follows, "");
  }

  Seat withCell(Drill.Cell other, String said) {
    return new Seat(player, chair, other, entryStep, follows, how + said);
  }

  /** Written attacks from the entry to {@code totalSteps}, the entry applied. */
  List<Integer> attackSteps(int totalSteps) {
    return repeated(cell.attackSteps(), totalSteps);
  }

  /** Accents among them, or null where the figure has none written. */
  @Nullable List<Integer> accentSteps(int totalSteps) {
    return cell.accentSteps() == null ? null : repeated(cell.accentSteps(), totalSteps);
  }

  private List<Integer> repeated(List<Integer> steps, int totalSteps) {
    List<Integer> all = new ArrayList<>();
    for (int at = entryStep; at < totalSteps; at += cell.steps()) {
      for (int step : steps) {
        if (at + step < totalSteps) {
          all.add(at + step);
        }
      }
    }
    return all;
  }

  /** Written lengths as many as attacks, cut at the end; null where none are written. */
  @Nullable List<Integer> lengthSteps(int totalSteps) {
    if (cell.lengthSteps() == null) {
      return null;
    }
    List<Integer> attacks = attackSteps(totalSteps);
    List<Integer> lengths = new ArrayList<>();
    for (int i = 0; i < attacks.size(); i++) {
      int length = cell.lengthSteps().get(i % cell.lengthSteps().size());
      lengths.add(Math.min(length, totalSteps - attacks.get(i)));
    }
    return lengths;
  }

  /** This seat as a chair of the drill that was dealt, named by the player. */
  Drill.Chair asChair(String name) {
    return new Drill.Chair(
        name, chair.role(), cell, entryStep, chair.line(), chair.feelMillis(), chair.instrument());
  }
}
