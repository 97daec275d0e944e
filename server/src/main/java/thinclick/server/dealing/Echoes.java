package thinclick.server.dealing;

import static thinclick.protocol.file.DealKind.TRADING;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.file.Answer;

/**
 * Which stretches of a part answer another: those that repeat, a turn later, what the player of the
 * turn before has played, so that they can be judged against the call as it was played. A part with
 * a figure of its own answers nobody in this sense.
 */
final class Echoes {
  private Echoes() {}

  /** The answers of one seat, in order. */
  static List<Answer> of(DealFrame frame, List<Seat> seats, int seat) {
    int turns =
        switch (frame.drill().deal().kind()) {
          case CALL_AND_ANSWER -> 2;
          case TRADING -> Seating.turns(frame);
          case AS_WRITTEN, UNISON, CANON, HOCKET, LAYERS, ROLES -> 1;
        };
    if (turns < 2) {
      return List.of();
    }
    int period = frame.periodSteps();
    int turn = seat % turns;
    int caller = turn > 0 ? seat - 1 : Math.min(seat + turns, seats.size()) - 1;
    if (turn == 0 && turns == 2 && frame.drill().deal().kind() != TRADING) {
      return List.of(); // who calls answers nobody
    }
    if (!seats.get(seat).chair().free().isEmpty() || !seats.get(caller).chair().free().isEmpty()) {
      return List.of(); // what is free repeats nothing
    }
    if (caller == seat
        || !inTurn(seats.get(seat), period).equals(inTurn(seats.get(caller), period))) {
      return List.of();
    }
    List<Answer> answers = new ArrayList<>();
    for (int at = turn * period; at + period <= frame.totalSteps(); at += turns * period) {
      if (at >= period) {
        answers.add(new Answer(caller, at, at + period, period));
      }
    }
    return answers;
  }

  /** A seat's figure counted from the beginning of its turn. */
  private static List<Integer> inTurn(Seat seat, int period) {
    return seat.cell().attackSteps().stream().map(step -> step % period).toList();
  }
}
