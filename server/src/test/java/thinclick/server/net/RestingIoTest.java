package thinclick.server.net;

import static org.assertj.core.api.Assertions.assertThat;

import io.netty.channel.IoHandle;
import io.netty.channel.IoHandler;
import io.netty.channel.IoHandlerContext;
import io.netty.channel.IoRegistration;
import io.netty.util.concurrent.ThreadAwareExecutor;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** Which turns of the strangers' loop are charged, by the processor time that they really take. */
class RestingIoTest {
  private static final long MORE_THAN_AT_ONCE = 3 * DoorRation.AT_ONCE_NANOS;

  private int overdrawn;

  /** Asked only where more was used than is given at once; nobody plays, so that nothing rests. */
  private boolean anybodyPlays() {
    overdrawn++;
    return false;
  }

  /** A turn's sockets, which take so long, and so many of which had something to say. */
  private static final class Sockets implements IoHandler {
    long workNanos;
    int handled;

    @Override
    public int run(IoHandlerContext context) {
      ThreadMXBean threads = ManagementFactory.getThreadMXBean();
      long until = threads.getCurrentThreadCpuTime() + workNanos;
      while (threads.getCurrentThreadCpuTime() < until) {
        Thread.onSpinWait();
      }
      return handled;
    }

    @Override
    public IoRegistration register(IoHandle handle) {
      throw new UnsupportedOperationException("nobody comes");
    }

    @Override
    public void wakeup() {}

    @Override
    public boolean isCompatible(Class<? extends IoHandle> kind) {
      return true;
    }
  }

  /** Never blocks. */
  private static final IoHandlerContext AT_ONCE =
      new IoHandlerContext() {
        @Override
        public boolean canBlock() {
          return false;
        }

        @Override
        public long delayNanos(long nowNanos) {
          return 0;
        }

        @Override
        public long deadlineNanos() {
          return -1;
        }
      };

  private static final ThreadAwareExecutor HERE =
      new ThreadAwareExecutor() {
        @Override
        public boolean isExecutorThread(Thread thread) {
          return thread == Thread.currentThread();
        }

        @Override
        public void execute(Runnable task) {
          task.run();
        }
      };

  private int overdrawnAfter(int handled, long workNanos) {
    Sockets sockets = new Sockets();
    DoorRation ration = new DoorRation(this::anybodyPlays, 0, System.nanoTime());
    IoHandler loop = RestingIo.of(executor -> sockets, ration).newHandler(HERE);
    loop.run(AT_ONCE); // what this thread has used before is nobody's
    sockets.handled = handled;
    sockets.workNanos = workNanos;
    loop.run(AT_ONCE);
    sockets.handled = 0;
    sockets.workNanos = 0;
    loop.run(AT_ONCE); // what a turn took is known at the next
    return overdrawn;
  }

  @Test
  void turnInWhichAStrangersSocketWasServedIsCharged() {
    assertThat(overdrawnAfter(1, MORE_THAN_AT_ONCE)).isEqualTo(1);
  }

  @Test
  void whatTheHostDoesForItselfIsNot() {
    assertThat(overdrawnAfter(0, MORE_THAN_AT_ONCE)).isZero();
  }

  @Test
  void shortTurnIsWithinWhatIsGivenAtOnce() {
    assertThat(overdrawnAfter(1, TimeUnit.MICROSECONDS.toNanos(100))).isZero();
  }
}
