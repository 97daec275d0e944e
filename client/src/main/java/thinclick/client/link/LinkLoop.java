package thinclick.client.link;

import io.netty.channel.EventLoop;
import io.netty.channel.MultiThreadIoEventLoopGroup;
import io.netty.channel.nio.NioIoHandler;
import io.netty.util.concurrent.DefaultThreadFactory;
import io.netty.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import thinclick.protocol.time.MonotonicClock;

/** The thread that links live on; several links may share one. */
public final class LinkLoop implements AutoCloseable {
  private final MultiThreadIoEventLoopGroup group;
  private final EventLoop loop;
  private final LinkTime time;

  private LinkLoop(MonotonicClock clock) {
    group =
        new MultiThreadIoEventLoopGroup(
            1, new DefaultThreadFactory("link", true), NioIoHandler.newFactory());
    loop = group.next();
    time = new LoopTime(loop, clock);
  }

  /** Starts a loop on the computer's own clock. */
  public static LinkLoop start() {
    return new LinkLoop(MonotonicClock.SYSTEM);
  }

  EventLoop eventLoop() {
    return loop;
  }

  LinkTime time() {
    return time;
  }

  /** Stops the thread; links that are still open are cut. */
  @Override
  public void close() {
    group.shutdownGracefully(0, 2, TimeUnit.SECONDS).awaitUninterruptibly(3, TimeUnit.SECONDS);
  }

  private record LoopTime(EventLoop loop, MonotonicClock clock) implements LinkTime {
    @Override
    public long nanos() {
      return clock.nanos();
    }

    @Override
    public long wallMillis() {
      return System.currentTimeMillis();
    }

    @Override
    public Runnable at(long atNanos, Runnable task) {
      long inNanos = Math.max(0, atNanos - clock.nanos());
      ScheduledFuture<?> future = loop.schedule(task, inNanos, TimeUnit.NANOSECONDS);
      return () -> future.cancel(false);
    }

    @Override
    public void run(Runnable task) {
      loop.execute(task);
    }
  }
}
