package thinclick.server.host;

import java.util.Set;

/**
 * Who played together, by their names.
 *
 * @param players stand-ins included
 */
record Band(Set<String> players) {
  /** A band is the same where so much of the larger one was in both: some are always missing. */
  private static final double SAME = 2.0 / 3;

  Band {
    players = Set.copyOf(players);
  }

  /** True where two thirds of the larger one were in both. */
  boolean sameAs(Band other) {
    long both = players.stream().filter(other.players::contains).count();
    return both >= SAME * Math.max(players.size(), other.players.size());
  }
}
