package thinclick.server.net;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/** How much has been begun elsewhere and will come back to a room. */
final class Busy {
  private final AtomicLong open = new AtomicLong();
  private final AtomicLong begun = new AtomicLong();
  private final AtomicReference<@Nullable CompletableFuture<Void>> idling = new AtomicReference<>();

  void begin() {
    begun.incrementAndGet();
    open.incrementAndGet();
  }

  void end() {
    if (open.decrementAndGet() == 0) {
      CompletableFuture<Void> waiting = idling.getAndSet(null);
      if (waiting != null) {
        waiting.complete(null);
      }
    }
  }

  /** Completes when nothing is open any more, or has been for a moment. */
  CompletableFuture<Void> whenIdle() {
    CompletableFuture<Void> waiting =
        idling.updateAndGet(known -> known == null ? new CompletableFuture<>() : known);
    if (idle()) {
      waiting.complete(null); // ended before anybody waited
      idling.compareAndSet(waiting, null);
    }
    return waiting;
  }

  boolean idle() {
    return open.get() == 0;
  }

  /** Counts every beginning, so that two readings tell whether something was begun between. */
  long begun() {
    return begun.get();
  }
}
