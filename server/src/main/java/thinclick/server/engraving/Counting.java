package thinclick.server.engraving;

import thinclick.protocol.music.Meter;

/** Places in the bar as they are counted aloud. Common practice, no source. */
final class Counting {
  private Counting() {}

  /** {@code "and of 2"} for a step of the bar. */
  static String words(Meter meter, int stepsPerBeat, int stepInBar) {
    int beat = stepInBar / stepsPerBeat + 1;
    int place = stepInBar % stepsPerBeat;
    if (place == 0) {
      return "beat " + beat;
    }
    String within =
        switch (stepsPerBeat) {
          case 2 -> "and";
          case 4 -> place == 1 ? "e" : place == 2 ? "and" : "a";
          case 3 -> place == 1 ? "second eighth" : "third eighth";
          default -> place == 3 && !meter.compound() ? "and" : "sixteenth " + (place + 1);
        };
    return within + " of " + beat;
  }
}
