package thinclick.server.words;

import thinclick.protocol.music.Meter;
import thinclick.server.scoring.Displacement;

/** A displacement by whole steps: "turned around", "a beat late", "a bar out". */
public final class ShiftWords {
  private ShiftWords() {}

  /**
   * What a player who is off by so many steps is called.
   *
   * @param steps positive late, not 0
   */
  public static Said of(int steps, Meter meter, int stepsPerBeat) {
    int bar = meter.stepsPerBar(stepsPerBeat);
    int size = Math.abs(steps);
    if (size % bar == 0) {
      return Said.of("shift.bars", size / bar, Speaker.number(size / bar), side(steps));
    }
    Said off = Said.of("shift.off", distance(size, meter, stepsPerBeat), side(steps));
    return turnedAround(steps, stepsPerBeat) ? Said.of("shift.turned", off) : off;
  }

  /**
   * A stretch off the part as a sentence: "Ilse was turned around (an eighth late) from bar 10, and
   * home again in bar 14."
   *
   * @param bars of the take; a stretch that lasts to its end came home nowhere
   */
  public static Said stretch(
      String player, Displacement one, int bars, Meter meter, int stepsPerBeat) {
    Said shift = of(one.steps(), meter, stepsPerBeat);
    if (one.toBar() < bars) {
      return Said.of("place.displacedHome", player, shift, one.fromBar() + 1, one.toBar() + 1);
    }
    Said where =
        one.fromBar() == 0
            ? Said.of("bars.throughout")
            : Said.of("bars.toTheEnd", one.fromBar() + 1);
    return Said.of("place.displaced", player, shift, where);
  }

  /**
   * True where the beat side is swapped: off by half a beat, whatever whole beats come on top. A
   * beat of three steps has no half.
   */
  static boolean turnedAround(int steps, int stepsPerBeat) {
    return stepsPerBeat % 2 == 0 && Math.floorMod(steps, stepsPerBeat) == stepsPerBeat / 2;
  }

  /** "an eighth", "two sixteenths", "a beat", "three beats". */
  static Said distance(int steps, Meter meter, int stepsPerBeat) {
    if (steps % stepsPerBeat == 0) {
      int beats = steps / stepsPerBeat;
      return Said.of("distance.beat", beats, Speaker.number(beats));
    }
    return Said.of("distance." + name(meter, stepsPerBeat), steps, Speaker.number(steps));
  }

  /** What a step of the grid is called, of several: "eighths". */
  public static Said steps(Meter meter, int stepsPerBeat) {
    return Said.of(stepsPerBeat == 1 ? "steps.beat" : "steps." + name(meter, stepsPerBeat));
  }

  private static String name(Meter meter, int stepsPerBeat) {
    return switch (stepsPerBeat) {
      case 2 -> "eighth";
      case 3 -> meter.compound() ? "eighth" : "triplet";
      case 4 -> "sixteenth";
      default -> meter.compound() ? "sixteenth" : "sixth";
    };
  }

  /** How far two entries lie apart: as a distance, or in bars: "two bars". */
  public static Said apart(int steps, Meter meter, int stepsPerBeat) {
    int bar = meter.stepsPerBar(stepsPerBeat);
    return steps % bar == 0
        ? Said.of("distance.bar", steps / bar, Speaker.number(steps / bar))
        : distance(steps, meter, stepsPerBeat);
  }

  private static Said side(int steps) {
    return Said.of(steps > 0 ? "side.late" : "side.early");
  }
}
