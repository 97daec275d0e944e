package thinclick.server.scoring;

import thinclick.protocol.file.Take;

/**
 * Scores a take: follows every player, estimates the pulse they share, matches attack to attack and
 * reports. A pure function of the take, whatever order its attacks stand in.
 */
public final class Scorer {
  private Scorer() {}

  /** The review of a take. */
  public static Review review(Take take) {
    return analyse(take).review();
  }

  /** The review of a take with what was decided about every attack. */
  public static Analysis analyse(Take take) {
    return new Figures(understand(take)).analysis();
  }

  /**
   * A stop is first taken by the written grid; where the band had drifted from it by more than the
   * stop allows, what counts is where the band itself had come to.
   */
  private static Understanding understand(Take take) {
    Sheet written = new Sheet(take);
    Understanding understood = new Decoding(written).understand();
    int last = written.lastCountedStep;
    if (last < 0 || take.endMicros() == null) {
      return understood;
    }
    Sheet played = new Sheet(take, understood.pulseMillis(last) - written.nominalMillis(last));
    return played.lastCountedStep == last ? understood : new Decoding(played).understand();
  }
}
