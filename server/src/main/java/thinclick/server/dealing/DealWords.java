package thinclick.server.dealing;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Meter;
import thinclick.server.material.Groupings;
import thinclick.server.material.Places;

/** Who comes in where, a plain sentence for each seat. */
final class DealWords {
  private static final String[] NUMBERS = {
    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
    "twelve"
  };

  private DealWords() {}

  /** {@code "Ilse comes in on the and of 2 in bar 1, on threes that come round in bar 4."} */
  static String sentence(DealFrame frame, Seat seat) {
    Drill drill = frame.drill();
    List<Integer> attacks = seat.attackSteps(frame.totalSteps(), frame.stepsPerBar());
    if (attacks.isEmpty()) {
      return seat.player() + " has nothing to play in so short a take.";
    }
    int first = attacks.get(0);
    int bar = frame.stepsPerBar();
    return seat.player()
        + " comes in on "
        + place(first % bar, drill)
        + (first / bar + 1)
        + groups(frame, seat)
        + following(frame, seat)
        + seat.how()
        + free(seat)
        + ".";
  }

  /** {@code "the one of bar "}, {@code "beat 3 of bar "}, {@code "the and of 2 in bar "}. */
  private static String place(int stepInBar, Drill drill) {
    if (stepInBar == 0) {
      return "the one of bar ";
    }
    String place = Places.spoken(stepInBar, drill.meter(), drill.stepsPerBeat());
    return stepInBar % drill.stepsPerBeat() == 0
        ? "beat " + place + " of bar "
        : place + " in bar ";
  }

  private static String groups(DealFrame frame, Seat seat) {
    Integer grouping = seat.cell().grouping();
    if (grouping == null) {
      return "";
    }
    Optional<Integer> round =
        Groupings.comesRound(
            seat.cell(),
            seat.entryStep(),
            frame.drill().stepsPerBeat(),
            frame.stepsPerBar(),
            frame.bars());
    return ", on "
        + Places.groupsOf(grouping)
        + round.map(bar -> " that come round in bar " + (bar + 1)).orElse("");
  }

  /** {@code ", free in bars 5 to 8 of every 8"}. */
  private static String free(Seat seat) {
    return seat.chair().free().stream()
        .map(
            bars ->
                ", free in "
                    + (bars.toBar() - bars.fromBar() == 1
                        ? "bar " + bars.toBar()
                        : "bars " + (bars.fromBar() + 1) + " to " + bars.toBar())
                    + (bars.everyBars() == null ? "" : " of every " + bars.everyBars()))
        .collect(Collectors.joining());
  }

  private static String following(DealFrame frame, Seat seat) {
    if (seat.follows() == null || seat.entryStep() == seat.follows().entryStep()) {
      return "";
    }
    int steps = seat.entryStep() - seat.follows().entryStep();
    return ", "
        + distance(Math.abs(steps), frame.drill().meter(), frame.drill().stepsPerBeat())
        + (steps > 0 ? " after " : " before ")
        + seat.follows().player();
  }

  /** {@code "a beat"}, {@code "three eighths"}, {@code "two bars"}. */
  static String distance(int steps, Meter meter, int stepsPerBeat) {
    int perBar = meter.stepsPerBar(stepsPerBeat);
    if (steps % perBar == 0) {
      return counted(steps / perBar, "bar");
    }
    if (steps % stepsPerBeat == 0) {
      return counted(steps / stepsPerBeat, "beat");
    }
    return counted(steps, Places.stepName(meter, stepsPerBeat));
  }

  private static String counted(int count, String unit) {
    if (count == 1) {
      return ("eighth".equals(unit) ? "an " : "a ") + unit;
    }
    return (count < NUMBERS.length ? NUMBERS[count] : Integer.toString(count)) + " " + unit + "s";
  }
}
