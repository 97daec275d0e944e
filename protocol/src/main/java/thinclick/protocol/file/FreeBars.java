package thinclick.protocol.file;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/**
 * Bars in which a chair plays freely: nothing is written there.
 *
 * @param fromBar the first of them, from 0
 * @param toBar the bar after the last
 * @param everyBars how many bars later they come again; null where they come once
 */
public record FreeBars(
    int fromBar,
    int toBar,
    @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Integer everyBars) {
  public FreeBars {
    Check.range("fromBar", fromBar, 0L, 9_999);
    Check.range("toBar", toBar, 1L, 10_000);
    if (toBar <= fromBar) {
      throw new BadInput("toBar", "expected more than fromBar, " + fromBar + ", found " + toBar);
    }
    Check.range("everyBars", everyBars, toBar, 10_000);
  }

  /** True where a bar, from 0, is one of them. */
  public boolean covers(int bar) {
    int inTurn = everyBars == null ? bar : bar % everyBars;
    return inTurn >= fromBar && inTurn < toBar;
  }
}
