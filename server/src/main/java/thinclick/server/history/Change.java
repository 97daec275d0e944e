package thinclick.server.history;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.words.Quantity;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;

/** What has changed between two like takes; only what can be told apart is called a change. */
public final class Change {
  private Change() {}

  /** "Over three weeks: spread 31 to 22 ms." */
  public static Said said(
      Duration span,
      @Nullable Figure firstHold,
      @Nullable Figure lastHold,
      @Nullable Figure firstSpread,
      @Nullable Figure lastSpread) {
    List<Said> changes = new ArrayList<>();
    if (firstHold != null && lastHold != null && apart(firstHold, lastHold)) {
      changes.add(Said.of("history.hold", Quantity.percent(firstHold), Quantity.percent(lastHold)));
    }
    if (firstSpread != null && lastSpread != null && apart(firstSpread, lastSpread)) {
      changes.add(
          Said.of("history.spread", Quantity.millis(firstSpread), Quantity.millis(lastSpread)));
    }
    Said over = over(span);
    return changes.isEmpty()
        ? Said.of("history.steady", over)
        : Said.of("history.changed", over, new Said.Row(changes, true));
  }

  /** True where both are known with intervals that have nothing in common. */
  private static boolean apart(Figure one, Figure other) {
    Interval a = one.interval();
    Interval b = other.interval();
    return a != null && b != null && a.partsFrom(b);
  }

  private static Said over(Duration span) {
    int days = (int) span.toDays();
    if (days < 1) {
      return Said.of("history.oneDay");
    }
    return days < 14
        ? Said.of("history.days", days, Speaker.number(days))
        : Said.of("history.weeks", (days + 3) / 7, Speaker.number((days + 3) / 7));
  }
}
