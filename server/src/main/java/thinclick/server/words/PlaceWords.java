package thinclick.server.words;

import thinclick.protocol.music.Meter;

/** Places in the bar, groupings and roles in the words that musicians use. */
public final class PlaceWords {
  private static final int NAMED_GROUPS = 12;

  private PlaceWords() {}

  /** Where something comes in: "the one of bar 3", "beat 2 of bar 1", "the and of 2 in bar 1". */
  public static Said entry(int step, Meter meter, int stepsPerBeat) {
    int perBar = meter.stepsPerBar(stepsPerBeat);
    int inBar = step % perBar;
    int bar = step / perBar + 1;
    Said beat = beat(inBar, stepsPerBeat);
    if (inBar == 0) {
      return Said.of("entry.one", bar);
    }
    return inBar % stepsPerBeat == 0
        ? Said.of("entry.beat", beat, bar)
        : Said.of("entry.off", insideBeat(beat, inBar % stepsPerBeat, meter, stepsPerBeat), bar);
  }

  /** The same to whoever comes in: "Come in on the one of bar 3". */
  public static Said comeIn(int step, Meter meter, int stepsPerBeat) {
    return Said.of("you.enters", entry(step, meter, stepsPerBeat));
  }

  /** A place in the bar as it is read out: "beat 2", "the and of 2". */
  static Said inBar(int inBar, Meter meter, int stepsPerBeat) {
    Said beat = beat(inBar, stepsPerBeat);
    int inBeat = inBar % stepsPerBeat;
    return inBeat == 0
        ? Said.of("place.beat", beat)
        : insideBeat(beat, inBeat, meter, stepsPerBeat);
  }

  /** "the and of 2", "the e of 1", "the last triplet of 4", "the second eighth of 1" in 6/8. */
  private static Said insideBeat(Said beat, int inBeat, Meter meter, int stepsPerBeat) {
    boolean compound = meter.compound();
    return switch (stepsPerBeat) {
      case 2 -> Said.of("place.and", beat);
      case 3 ->
          compound
              ? Said.of("place.eighth", beat, ordinal(inBeat + 1))
              : Said.of(inBeat == 1 ? "place.middleTriplet" : "place.lastTriplet", beat);
      case 4 ->
          Said.of(
              inBeat == 2 ? "place.and" : inBeat == 1 ? "place.syllableE" : "place.syllableA",
              beat);
      default ->
          Said.of(compound ? "place.sixteenth" : "place.sextuplet", beat, ordinal(inBeat + 1));
    };
  }

  /** The beat that a step of the bar lies in, as it is called: "2", or "Zwei". */
  private static Said beat(int inBar, int stepsPerBeat) {
    return Said.of("beat." + (inBar / stepsPerBeat + 1));
  }

  private static Said ordinal(int number) {
    return Said.of("ordinal." + number);
  }

  /** "threes" for 3; "groups of 13" beyond twelve. */
  public static Said groupsOf(int steps) {
    return steps >= 1 && steps <= NAMED_GROUPS
        ? Said.of("groups." + steps)
        : Said.of("groups.other", steps);
  }
}
