package thinclick.client.link;

import io.netty.channel.Channel;
import io.netty.channel.EventLoop;
import io.netty.channel.MultiThreadIoEventLoopGroup;
import io.netty.channel.SingleThreadEventLoop;
import io.netty.channel.group.ChannelGroup;
import io.netty.channel.group.DefaultChannelGroup;
import io.netty.channel.nio.NioIoHandler;
import io.netty.util.concurrent.DefaultThreadFactory;
import io.netty.util.concurrent.GlobalEventExecutor;
import io.netty.util.concurrent.ScheduledFuture;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.time.MonotonicClock;
import thinclick.protocol.time.Timers;
import thinclick.protocol.time.VirtualTime;

/** The thread and the clock that links live on; several links may share one. */
public final class LinkLoop implements AutoCloseable {
  private static final long CUT_MILLIS = 2_000;

  private final MultiThreadIoEventLoopGroup group;
  private final EventLoop loop;
  private final ChannelGroup lines = new DefaultChannelGroup(GlobalEventExecutor.INSTANCE, true);
  private final MonotonicClock clock;
  private final LongSupplier wallMillis;
  private final @Nullable Timers timers;
  private final Set<SocketHandler> unheard = new LinkedHashSet<>(); // the loop's thread only
  private final AtomicLong sent = new AtomicLong();

  private LinkLoop(MonotonicClock clock, LongSupplier wallMillis, @Nullable Timers timers) {
    this.group =
        new MultiThreadIoEventLoopGroup(
            1, new DefaultThreadFactory("link", true), NioIoHandler.newFactory());
    this.loop = group.next();
    this.clock = clock;
    this.wallMillis = wallMillis;
    this.timers = timers;
  }

  /** Starts a loop on the computer's own clock. */
  public static LinkLoop start() {
    return new LinkLoop(MonotonicClock.SYSTEM, System::currentTimeMillis, null);
  }

  /** Starts a loop on a clock that a test moves. */
  public static LinkLoop start(VirtualTime time) {
    return new LinkLoop(time, () -> time.nanos() / 1_000_000, time);
  }

  /** This loop's clock, nanoseconds. */
  public long nanos() {
    return clock.nanos();
  }

  /** The wall clock, milliseconds since 1970; only to notice a computer that slept. */
  long wallMillis() {
    return wallMillis.getAsLong();
  }

  /** Runs a task on this thread, soon, in the order handed in. */
  public void run(Runnable task) {
    loop.execute(task);
  }

  /** Runs a task on this thread, not before {@code atNanos} of its clock. */
  public Timers.Pending at(long atNanos, Runnable task) {
    if (timers != null) {
      return timers.at(
          atNanos,
          () -> {
            if (!loop.isShuttingDown()) {
              loop.execute(task);
            }
          });
    }
    long inNanos = Math.max(0, atNanos - clock.nanos());
    ScheduledFuture<?> future = loop.schedule(task, inNanos, TimeUnit.NANOSECONDS);
    return () -> future.cancel(false);
  }

  /**
   * Completes when the server has read all that was sent on this loop before; answers {@link #sent}
   * as it was then. For tests that move the clock in lock step.
   */
  public CompletableFuture<Long> heard() {
    return CompletableFuture.supplyAsync(this::unheard, loop).thenCompose(Unheard::settled);
  }

  private Unheard unheard() {
    Unheard now = new Unheard(unheard.stream().map(SocketHandler::settled).toList(), sent.get());
    unheard.clear();
    return now;
  }

  /** What was sent and not yet known to be read, and how much had been sent in all by then. */
  private record Unheard(List<CompletableFuture<Void>> answers, long sent) {
    CompletableFuture<Long> settled() {
      return CompletableFuture.allOf(answers.toArray(CompletableFuture[]::new))
          .thenApply(done -> sent);
    }
  }

  /**
   * Completes when whatever lay ready in the sockets of this loop has been read and handled here,
   * with all that was put off to the loop's next turns. For the same tests.
   */
  public CompletableFuture<Void> turned() {
    SingleThreadEventLoop turning = (SingleThreadEventLoop) loop;
    CompletableFuture<Void> done = new CompletableFuture<>();
    turning.executeAfterEventLoopIteration(
        () ->
            turning.execute( // comes in the next turn, which begins with the sockets
                () -> turning.executeAfterEventLoopIteration(() -> done.complete(null))));
    return done;
  }

  /** How many messages went out over this loop's connections. */
  public long sent() {
    return sent.get();
  }

  void sends(SocketHandler socket) {
    sent.incrementAndGet();
    unheard.add(socket);
  }

  EventLoop eventLoop() {
    return loop;
  }

  /** A line of this loop's, which is cut with it at the latest. */
  void begun(Channel line) {
    lines.add(line);
  }

  /** Stops the thread; links that are still open are cut. */
  @Override
  public void close() {
    // A loop that is stopped while it turns ends without closing what it has.
    lines.close().awaitUninterruptibly(CUT_MILLIS);
    group.shutdownGracefully(0, 2, TimeUnit.SECONDS).awaitUninterruptibly(3, TimeUnit.SECONDS);
  }
}
