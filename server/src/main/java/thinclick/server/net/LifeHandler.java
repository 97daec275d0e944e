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
 * slept, lagged, or did not read because the disk is behind, no line was silent.
 */
@SuppressWarnings("FutureReturnValueIgnored") // a write or timer that fails ends with its channel
final class LifeHandler extends ChannelInboundHandlerAdapter {
  static final long PING_MILLIS = 5_000;
  static final long DEAD_MILLIS = 15_000;

  private static final long PING_NANOS = TimeUnit.MILLISECONDS.toNanos(PING_MILLIS);

  private final Connection connection;
  private final ArrivalStamp arrival;
  private @Nullable ScheduledFuture<?> beating;
  private @Nullable Deadline slow;
  private long beatNanos;

  /** Silence counts from here, or from the last byte where that came later. */
  private long listeningNanos;

  LifeHandler(Connection connection, ArrivalStamp arrival) {
    this.connection = connection;
    this.arrival = arrival;
  }

  @Override
  public void channelActive(ChannelHandlerContext context) throws Exception {
    // Whoever has not even asked for a conversation by then is not here for one.
    Deadline.in(
        context.executor(),
        FrameHandler.FIRST_MESSAGE_MILLIS,
        () -> {
          if (beating == null) {
            context.close();
          }
        });
    super.channelActive(context);
  }

  @Override
  public void userEventTriggered(ChannelHandlerContext context, Object event) throws Exception {
    if (event instanceof HandshakeComplete) {
      beatNanos = context.executor().ticker().nanoTime();
      listeningNanos = beatNanos;
      beating =
          context
              .executor()
              .scheduleWithFixedDelay( // no burst of them after a sleep
                  () -> beat(context), PING_MILLIS, PING_MILLIS, TimeUnit.MILLISECONDS);
    }
    super.userEventTriggered(context, event);
  }

  private void beat(ChannelHandlerContext context) {
    long now = context.executor().ticker().nanoTime();
    long since = now - beatNanos;
    beatNanos = now;
    listeningNanos = Math.max(listeningNanos, arrival.heardNanos());
    if (since > PING_NANOS + Deadline.LATE_NANOS || !context.channel().config().isAutoRead()) {
      listeningNanos += since; // what came meanwhile may still lie in the socket
    }
    long silentMillis = TimeUnit.NANOSECONDS.toMillis(now - listeningNanos);
    if (silentMillis >= DEAD_MILLIS) {
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
    if (context.channel().isWritable()) {
      if (slow != null) {
        slow.cancel();
        slow = null;
      }
    } else if (slow == null) {
      slow = Deadline.in(context.executor(), Connection.SLOW_MILLIS, () -> giveUp(context));
    }
    super.channelWritabilityChanged(context);
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
    }
  }
}
