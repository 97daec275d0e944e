package thinclick.client.clock;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;

/**
 * The samples' level: which exchanges say where the room's clock is. A minute of them once the skew
 * is known, half a minute before, since an unknown skew does the more harm the longer one looks.
 */
final class ExchangeWindow {
  /** How far back exchanges are kept. */
  static final long SETTLED_NANOS = 60_000_000_000L;

  /** How far back they are used while the skew is not known. */
  static final long UNSETTLED_NANOS = 30_000_000_000L;

  private final Deque<Exchange> kept = new ArrayDeque<>();
  private final SkewBlocks blocks = new SkewBlocks();

  /** Adds the newest exchange; those that are too old go. */
  void add(Exchange exchange) {
    kept.addLast(exchange);
    blocks.add(exchange);
    while (kept.getFirst().arrivedNanos() < exchange.arrivedNanos() - SETTLED_NANOS) {
      kept.removeFirst();
    }
  }

  /** How many are kept. */
  int size() {
    return kept.size();
  }

  Skew skew() {
    return blocks.skew();
  }

  /** The exchanges in use, oldest first. */
  List<Exchange> used() {
    long reach = skew().settled() ? SETTLED_NANOS : UNSETTLED_NANOS;
    long oldest = kept.getLast().arrivedNanos() - reach;
    return kept.stream().filter(exchange -> exchange.arrivedNanos() >= oldest).toList();
  }

  void clear() {
    kept.clear();
    blocks.clear();
  }
}
