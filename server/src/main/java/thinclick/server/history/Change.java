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

  /** "Over three weeks the spread went from 31 to 22 ms." */
  public static Said said(
      Duration span,
      @Nullable Figure firstHold,
      @Nullable Figure lastHold,
      @Nullable Figure firstSpread,
      @Nullable Figure lastSpread) {
    boolean hold = apart(firstHold, lastHold);
    boolean spread = apart(firstSpread, lastSpread);
    List<Object> values = new ArrayList<>();
    if (hold) {
      values.addAll(List.of(Quantity.percent(firstHold), Quantity.percent(lastHold)));
    }
    if (spread) {
      values.addAll(List.of(Quantity.millis(firstSpread), Quantity.millis(lastSpread)));
    }
    if (values.isEmpty()) {
      return Said.of("history.steady", over(span));
    }
    String key =
        hold && spread ? "history.holdAndSpread" : hold ? "history.hold" : "history.spread";
    return Said.of("history.changed", over(span), Said.of(key, values.toArray()));
  }

  /** True where both are known with intervals that have nothing in common. */
  private static boolean apart(@Nullable Figure one, @Nullable Figure other) {
    Interval a = one == null ? null : one.interval();
    Interval b = other == null ? null : other.interval();
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
