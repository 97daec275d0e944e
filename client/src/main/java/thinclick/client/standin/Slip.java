package thinclick.client.standin;

import thinclick.protocol.json.Check;

/**
 * A stretch in which a stand-in plays its part off by whole steps, and does not know it.
 *
 * @param fromBar the first bar of the part that is displaced, from 0
 * @param toBar the first bar that is not
 * @param steps by how much, positive late
 */
public record Slip(int fromBar, int toBar, int steps) {
  /** Never out. */
  public static final Slip NONE = new Slip(0, 0, 0);

  public Slip {
    Check.range("fromBar", fromBar, 0L, Integer.MAX_VALUE);
    Check.range("toBar", toBar, (long) fromBar, Integer.MAX_VALUE);
    Check.range("steps", steps, -1_000L, 1_000);
  }

  int shiftAt(long bar) {
    return bar >= fromBar && bar < toBar ? steps : 0;
  }
}
