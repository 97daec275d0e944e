package thinclick.protocol.file;

import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/**
 * Bars of a take in which a player plays freely. Nothing is written there, and what is played there
 * is neither right nor wrong: what is judged is how the player comes back after them, and whether
 * the others' pulse held meanwhile.
 *
 * @param fromBar the first of them, from 0
 * @param toBar the bar after the last
 */
public record FreeSpan(int fromBar, int toBar) {
  public FreeSpan {
    Check.range("fromBar", fromBar, 0L, Take.MAX_STEPS - 1L);
    Check.range("toBar", toBar, 1L, Take.MAX_STEPS);
    if (toBar <= fromBar) {
      throw new BadInput("toBar", "expected more than fromBar, " + fromBar + ", found " + toBar);
    }
  }

  /** How many bars. */
  public int bars() {
    return toBar - fromBar;
  }

  /** True where a bar, from 0, is one of them. */
  public boolean covers(int bar) {
    return bar >= fromBar && bar < toBar;
  }
}
