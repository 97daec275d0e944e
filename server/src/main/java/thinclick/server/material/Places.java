package thinclick.server.material;

import java.util.List;
import thinclick.protocol.music.Meter;

/** Places in the bar in the words that musicians count with. */
public final class Places {
  private static final List<String> GROUPS =
      List.of(
          "ones", "twos", "threes", "fours", "fives", "sixes", "sevens", "eights", "nines", "tens",
          "elevens", "twelves");

  private Places() {}

  /**
   * A place in the bar: {@code "3"}, {@code "and of 2"}, {@code "e of 1"}, {@code "last triplet of
   * 4"}, {@code "second eighth of 1"} in 6/8.
   *
   * @param stepInBar from 0
   */
  public static String place(int stepInBar, Meter meter, int stepsPerBeat) {
    int beat = stepInBar / stepsPerBeat + 1;
    int inBeat = stepInBar % stepsPerBeat;
    return inBeat == 0
        ? Integer.toString(beat)
        : insideBeat(inBeat, meter.compound(), stepsPerBeat) + " of " + beat;
  }

  private static String insideBeat(int inBeat, boolean compound, int stepsPerBeat) {
    return switch (stepsPerBeat) {
      case 2 -> "and";
      case 3 ->
          compound
              ? List.of("second eighth", "third eighth").get(inBeat - 1)
              : List.of("middle triplet", "last triplet").get(inBeat - 1);
      case 4 -> List.of("e", "and", "a").get(inBeat - 1);
      default ->
          List.of("second", "third", "fourth", "fifth", "sixth").get(inBeat - 1)
              + (compound ? " sixteenth" : " sextuplet");
    };
  }

  /** The place with its article where it needs one: {@code "the and of 2"}, {@code "1"}. */
  public static String spoken(int stepInBar, Meter meter, int stepsPerBeat) {
    String place = place(stepInBar, meter, stepsPerBeat);
    return stepInBar % stepsPerBeat == 0 ? place : "the " + place;
  }

  /** {@code "threes"} for 3; {@code "groups of 13"} beyond twelve. */
  public static String groupsOf(int steps) {
    return steps >= 1 && steps <= GROUPS.size() ? GROUPS.get(steps - 1) : "groups of " + steps;
  }

  /** What one step is called: an eighth, a triplet, a sixteenth, a sextuplet. */
  public static String stepName(Meter meter, int stepsPerBeat) {
    return switch (stepsPerBeat) {
      case 2 -> "eighth";
      case 3 -> meter.compound() ? "eighth" : "triplet";
      case 4 -> "sixteenth";
      default -> meter.compound() ? "sixteenth" : "sextuplet";
    };
  }
}
