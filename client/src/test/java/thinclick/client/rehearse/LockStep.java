package thinclick.client.rehearse;

import static org.assertj.core.api.Assertions.fail;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import thinclick.client.link.LinkLoop;
import thinclick.protocol.time.VirtualTime;
import thinclick.server.host.RehearsalHost;

/**
 * Moves one virtual clock under a host and its clients: one task at a time, and the next only when
 * every frame that was sent has been received and handled on either side. So everybody hears
 * everybody in the order of their instants, as in real time over a line without delay.
 */
final class LockStep {
  private static final long PATIENCE_SECONDS = 20;

  private final VirtualTime time;
  private final RehearsalHost host;
  private final LinkLoop loop;

  LockStep(VirtualTime time, RehearsalHost host, LinkLoop loop) {
    this.time = time;
    this.host = host;
    this.loop = loop;
  }

  /** Waits, with the clock standing still, until nothing is under way any more. */
  void settle() {
    long before;
    do {
      before = loop.frames();
      await(loop.settled()); // the host has read what was sent
      await(host.settled()); // it has handled and stored it, and its answers are with the sockets
      await(loop.settled()); // they have arrived and been handled
    } while (loop.frames() != before);
  }

  /** Moves the clock until the condition holds. */
  void until(String what, double seconds, BooleanSupplier condition) {
    long end = time.nanos() + Math.round(seconds * 1e9);
    settle();
    while (!condition.getAsBoolean()) {
      if (!time.runNext(end)) {
        fail("waited %.1f s of virtual time for %s in vain", seconds, what);
      }
      settle();
    }
  }

  /** Moves the clock by this much. */
  void pass(double seconds) {
    long end = time.nanos() + Math.round(seconds * 1e9);
    settle();
    while (time.runNext(end)) {
      settle();
    }
  }

  private static void await(CompletableFuture<Void> coming) {
    try {
      coming.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (ExecutionException | TimeoutException problem) {
      throw new AssertionError("nothing settles any more", problem);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new AssertionError(stopped);
    }
  }
}
