package thinclick.client.rehearse;

import static org.assertj.core.api.Assertions.fail;

import java.util.ArrayList;
import java.util.List;
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
  private final List<LinkLoop> loops;

  LockStep(VirtualTime time, RehearsalHost host, LinkLoop... loops) {
    this.time = time;
    this.host = host;
    this.loops = new ArrayList<>(List.of(loops));
  }

  /** One more computer. */
  void with(LinkLoop loop) {
    loops.add(loop);
  }

  /** A computer that sleeps or has died; nobody waits for it. */
  void without(LinkLoop loop) {
    loops.remove(loop);
  }

  /** Waits, with the clock standing still, until nothing is under way any more. */
  void settle() {
    long before;
    do {
      before = loops.stream().map(LinkLoop::heard).toList().stream().mapToLong(this::await).sum();
      await(host.settled()); // it has handled and stored it, and its answers are with the sockets
      loops.stream().map(LinkLoop::turned).toList().forEach(this::await);
    } while (loops.stream().mapToLong(LinkLoop::sent).sum() != before);
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

  private <T> T await(CompletableFuture<T> coming) {
    try {
      return coming.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (ExecutionException | TimeoutException problem) {
      throw new AssertionError("nothing settles any more", problem);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new AssertionError(stopped);
    }
  }
}
