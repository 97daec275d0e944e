package thinclick.server.net;

import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.netty.handler.codec.http.websocketx.PingWebSocketFrame;
import io.netty.handler.codec.http.websocketx.WebSocketServerProtocolHandler.HandshakeComplete;
import io.netty.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.CloseCode;

/**
 * Finds lines that only look open: a ping every 5 s, dead after 15 s without a byte; and receivers
 * that do not read: 5 s over the high mark. Only time in which this host listened counts: while it
 * slept, or did not read because the disk is behind, no line was silent; a host that lags all the
 * time counts its own pings instead of seconds.
 */
@SuppressWarnings("FutureReturnValueIgnored") // a write or timer that fails ends with its channel
final class LifeHandler extends ChannelInboundHandlerAdapter {
  static final long PING_MILLIS = 5_000;
  static final long DEAD_MILLIS = 15_000;

  private static final long PING_NANOS = TimeUnit.MILLISECONDS.toNanos(PING_MILLIS);

  private final Connection connection;
  private final ArrivalStamp arrival;
  private @Nullable Deadline asking;
  private @Nullable ScheduledFuture<?> beating;
  private @Nullable Deadline slow;
  private boolean moving;
  private long beatNanos;
  private boolean lateBefore;

  /** Silence counts from here, or from the last byte where that came later. */
  private long listeningNanos;

  LifeHandler(Connection connection, ArrivalStamp arrival) {
    this.connection = connection;
    this.arrival = arrival;
  }

  @Override
  public void channelActive(ChannelHandlerContext context) throws Exception {
    // Whoever has not even asked for a conversation by then is not here for one.
    asking = Deadline.in(context.executor(), Reception.FIRST_MESSAGE_MILLIS, () -> context.close());
    super.channelActive(context);
  }

  @Override
  public void userEventTriggered(ChannelHandlerContext context, Object event) throws Exception {
    if (event instanceof HandshakeComplete) {
      cancel(asking);
      asking = null;
      beatNanos = context.executor().ticker().nanoTime();
      listeningNanos = beatNanos;
      beatAfter(context, PING_NANOS);
    }
    super.userEventTriggered(context, event);
  }

  private void beatAfter(ChannelHandlerContext context, long nanos) {
    beating =
        context
            .executor()
            .scheduleWithFixedDelay( // no burst of them after a sleep
                () -> beat(context), nanos, PING_NANOS, TimeUnit.NANOSECONDS);
  }

  /** The line leaves the loop it was on: what is timed there stops. */
  @Override
  public void channelUnregistered(ChannelHandlerContext context) throws Exception {
    moving = beating != null;
    stopBeating();
    cancel(asking);
    stopBeingSlow();
    super.channelUnregistered(context);
  }

  /** It has come to another, where the next ping is due when it would have been. */
  @Override
  public void channelRegistered(ChannelHandlerContext context) throws Exception {
    if (moving) {
      moving = false;
      long due = beatNanos + PING_NANOS - context.executor().ticker().nanoTime();
      beatAfter(context, Math.max(0, due));
      judgeSpeed(context);
    }
    super.channelRegistered(context);
  }

  private void beat(ChannelHandlerContext context) {
    long now = context.executor().ticker().nanoTime();
    long since = now - beatNanos;
    beatNanos = now;
    listeningNanos = Math.max(listeningNanos, arrival.heardNanos());
    boolean late = since > PING_NANOS + Deadline.LATE_NANOS;
    if (!context.channel().config().isAutoRead()) {
      listeningNanos += since; // what came meanwhile still lies in the socket
    } else if (late) {
      listeningNanos += since - PING_NANOS; // it counts as one ping, however long it took
    }
    // What came while the host slept may lie in the socket; by a second late beat it was read.
    boolean mayLieUnread = late && !lateBefore;
    lateBefore = late;
    long silentMillis = TimeUnit.NANOSECONDS.toMillis(now - listeningNanos);
    if (silentMillis >= DEAD_MILLIS && !mayLieUnread) {
      connection.silentFor(TimeUnit.NANOSECONDS.toMicros(now - arrival.heardNanos()));
      connection.close(CloseCode.TIMEOUT, "nothing heard for " + silentMillis + " ms", null);
      // A dead line does not take the close frame either.
      context.executor().schedule(() -> context.close(), 1, TimeUnit.SECONDS);
      stopBeating();
    } else {
      context.writeAndFlush(new PingWebSocketFrame());
    }
  }

  @Override
  public void channelWritabilityChanged(ChannelHandlerContext context) throws Exception {
    judgeSpeed(context);
    super.channelWritabilityChanged(context);
  }

  private void judgeSpeed(ChannelHandlerContext context) {
    if (context.channel().isWritable()) {
      stopBeingSlow();
    } else if (slow == null) {
      slow = Deadline.in(context.executor(), Connection.SLOW_MILLIS, () -> giveUp(context));
    }
  }

  private void stopBeingSlow() {
    cancel(slow);
    slow = null;
  }

  private void giveUp(ChannelHandlerContext context) {
    connection.close(CloseCode.SLOW, CloseCode.SLOW.says(), null);
    context.executor().schedule(() -> context.close(), 1, TimeUnit.SECONDS);
  }

  @Override
  public void channelInactive(ChannelHandlerContext context) throws Exception {
    stopBeating();
    super.channelInactive(context);
  }

  private void stopBeating() {
    ScheduledFuture<?> beats = beating;
    if (beats != null) {
      beats.cancel(false);
      beating = null;
    }
  }

  private static void cancel(@Nullable Deadline deadline) {
    if (deadline != null) {
      deadline.cancel();
    }
  }
}
