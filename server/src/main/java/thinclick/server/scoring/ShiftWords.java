package thinclick.server.scoring;

import thinclick.protocol.music.Meter;

/** Says a displacement by whole steps: "an eighth late", "turned around", "a bar early". */
final class ShiftWords {
  private ShiftWords() {}

  /**
   * True where the beat side is swapped: off by half a beat, whatever whole beats come on top. A
   * beat of three steps has no half.
   */
  static boolean turnedAround(int steps, int stepsPerBeat) {
    return stepsPerBeat % 2 == 0 && Math.floorMod(steps, stepsPerBeat) == stepsPerBeat / 2;
  }

  static String of(int steps, Meter meter, int stepsPerBeat) {
    int size = Math.abs(steps);
    String side = steps > 0 ? " late" : " early";
    int bar = meter.stepsPerBar(stepsPerBeat);
    if (size % bar == 0) {
      return (size == bar ? "a bar out" : PlanWords.number(size / bar) + " bars out")
          + (steps > 0 ? ", late" : ", early");
    }
    if (turnedAround(steps, stepsPerBeat)) {
      return "turned around (" + distance(size, meter, stepsPerBeat) + side + ")";
    }
    return distance(size, meter, stepsPerBeat) + side;
  }

  private static String distance(int size, Meter meter, int stepsPerBeat) {
    if (size % stepsPerBeat == 0) {
      int beats = size / stepsPerBeat;
      return beats == 1 ? "a beat" : PlanWords.number(beats) + " beats";
    }
    String name = step(meter, stepsPerBeat);
    if (size == 1) {
      return (name.startsWith("e") ? "an " : "a ") + name;
    }
    return PlanWords.number(size) + " " + name + "s";
  }

  private static String step(Meter meter, int stepsPerBeat) {
    return switch (stepsPerBeat) {
      case 2 -> "eighth";
      case 3 -> meter.compound() ? "eighth" : "triplet";
      case 4 -> "sixteenth";
      default -> meter.compound() ? "sixteenth" : "sixth of a beat";
    };
  }
}
