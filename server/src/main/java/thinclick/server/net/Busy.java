package thinclick.server.net;

import java.util.concurrent.atomic.AtomicLong;

/** How much has been begun elsewhere and will come back to a room. */
final class Busy {
  private final AtomicLong open = new AtomicLong();
  private final AtomicLong begun = new AtomicLong();

  void begin() {
    begun.incrementAndGet();
    open.incrementAndGet();
  }

  void end() {
    open.decrementAndGet();
  }

  boolean idle() {
    return open.get() == 0;
  }

  /** Counts every beginning, so that two readings tell whether something was begun between. */
  long begun() {
    return begun.get();
  }
}
