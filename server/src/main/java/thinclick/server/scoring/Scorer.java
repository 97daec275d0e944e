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
    Sheet sheet = new Sheet(take);
    return new Figures(new Decoding(sheet).understand()).analysis();
  }
}
