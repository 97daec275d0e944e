package thinclick.server.history;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
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
    List<Quantity> hold = apart(firstHold, lastHold, Quantity::percent);
    List<Quantity> spread = apart(firstSpread, lastSpread, Quantity::millis);
    if (hold.isEmpty() && spread.isEmpty()) {
      return Said.of("history.steady", over(span));
    }
    List<Object> values = new ArrayList<>(hold);
    values.addAll(spread);
    String key =
        hold.isEmpty()
            ? "history.spread"
            : spread.isEmpty() ? "history.hold" : "history.holdAndSpread";
    return Said.of("history.changed", over(span), Said.of(key, values.toArray()));
  }

  /** Both, where they are known with intervals that have nothing in common; else neither. */
  private static List<Quantity> apart(
      @Nullable Figure one, @Nullable Figure other, Function<Figure, Quantity> read) {
    Interval a = one == null ? null : one.interval();
    Interval b = other == null ? null : other.interval();
    return one != null && other != null && a != null && b != null && a.partsFrom(b)
        ? List.of(read.apply(one), read.apply(other))
        : List.of();
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
