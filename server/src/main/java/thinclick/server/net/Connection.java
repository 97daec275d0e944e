package thinclick.server.net;

import io.netty.channel.Channel;
import io.netty.channel.ChannelFuture;
import io.netty.channel.ChannelFutureListener;
import io.netty.channel.ChannelHandlerContext;
import io.netty.handler.codec.http.websocketx.CloseWebSocketFrame;
import io.netty.handler.codec.http.websocketx.WebSocketFrameEncoder;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.ServerMessage;

/** One client's way in and out; written to from the room's loop and from its own. */
@SuppressWarnings("FutureReturnValueIgnored") // a write or timer that fails ends with its channel
final class Connection {
  /** Over this many bytes not yet taken by the network, what may be dropped is dropped. */
  static final int LOW_MARK = 64 << 10;

  /** Over this for {@link #SLOW_MILLIS} the receiver is given up. */
  static final int HIGH_MARK = 256 << 10;

  static final long SLOW_MILLIS = 5_000;

  private static final AtomicLong NUMBERS = new AtomicLong();
  private static final int LONGEST_REASON = 123;
  private static final byte FINAL_TEXT = (byte) 0x81;
  private static final byte LENGTH_IN_2 = 126;
  private static final byte LENGTH_IN_8 = 127;

  private final long number = NUMBERS.incrementAndGet();
  private final Channel channel;
  private final Outgoing outgoing;
  private volatile @Nullable HostedRoom room;
  private volatile boolean joined;
  private volatile boolean closing;
  private volatile @Nullable ChannelHandlerContext framer;

  private volatile long silentMicros;

  private static final long LINGER_MILLIS = 500;

  Connection(Channel channel) {
    this.channel = channel;
    this.outgoing = new Outgoing(channel);
  }

  /** Unique in this process. */
  long number() {
    return number;
  }

  /** The room it has asked, also before it is let in; null until one was found. */
  @Nullable HostedRoom room() {
    return room;
  }

  void room(@Nullable HostedRoom found) {
    room = found;
  }

  /** True once the room has let it in. */
  boolean joined() {
    return joined;
  }

  void joined(boolean in) {
    joined = in;
  }

  /** For how long nothing had come when it was given up for dead; 0 for every other end. */
  long silentMicros() {
    return silentMicros;
  }

  void silentFor(long micros) {
    silentMicros = micros;
  }

  boolean closing() {
    return closing;
  }

  /** Sends one message and flushes it. */
  void send(ServerMessage message) {
    write(message);
    flush();
  }

  private void write(ServerMessage message) {
    write(encode(message), false);
  }

  /**
   * A message as a whole frame (RFC 6455, 5.2: final, text, not masked), made once however many are
   * to get it.
   */
  static byte[] encode(ServerMessage message) {
    byte[] text = MessageCodec.writeBytes(message);
    int head = text.length < LENGTH_IN_2 ? 2 : text.length <= 0xffff ? 4 : 10;
    ByteBuffer frame = ByteBuffer.allocate(head + text.length).put(FINAL_TEXT);
    if (text.length < LENGTH_IN_2) {
      frame.put((byte) text.length);
    } else if (text.length <= 0xffff) {
      frame.put(LENGTH_IN_2).putShort((short) text.length);
    } else {
      frame.put(LENGTH_IN_8).putLong(text.length);
    }
    return frame.put(text).array();
  }

  /**
   * Queues a frame, without a flush. It goes to the network past the handlers that make frames.
   *
   * @param frame the same for everybody who is given it, and not changed any more
   * @param droppable true where a receiver that lags may go without it
   * @return false where it was dropped
   */
  boolean write(byte[] frame, boolean droppable) {
    ChannelHandlerContext past = framer();
    if (closing || past == null || (droppable && outgoing.pendingBytes() > LOW_MARK)) {
      return false;
    }
    outgoing.add(past, frame);
    return true;
  }

  private @Nullable ChannelHandlerContext framer() {
    ChannelHandlerContext known = framer;
    if (known == null) {
      known = channel.pipeline().context(WebSocketFrameEncoder.class);
      framer = known;
    }
    return known;
  }

  void flush() {
    ChannelHandlerContext past = framer();
    if (past != null) {
      outgoing.flush(past);
    }
  }

  /** The line is gone; on its loop. */
  void over() {
    outgoing.over();
  }

  /** Says goodbye, closes with the code, and lets the line go; does nothing the second time. */
  void close(CloseCode code, String says, @Nullable Long retryAfterMillis) {
    if (closing) {
      return;
    }
    write(new ServerMessage.Goodbye(says, retryAfterMillis, null));
    closing = true;
    ChannelHandlerContext past = framer();
    if (past != null) {
      outgoing.handOnAll(past); // the close frame goes the handlers' way, behind all that was said
    }
    ChannelFuture said =
        channel.writeAndFlush(new CloseWebSocketFrame(code.number(), shortened(says)));
    if (code == CloseCode.FLOOD) {
      // A socket closed over unread input resets the line, and the reason would be lost with it.
      var unused =
          channel.eventLoop().schedule(() -> channel.close(), LINGER_MILLIS, TimeUnit.MILLISECONDS);
    } else {
      said.addListener(ChannelFutureListener.CLOSE);
    }
  }

  /** A close frame has room for 123 bytes of reason. */
  private static String shortened(String says) {
    String reason = says;
    while (reason.getBytes(StandardCharsets.UTF_8).length > LONGEST_REASON) {
      reason = reason.substring(0, reason.offsetByCodePoints(reason.length(), -1));
    }
    return reason;
  }
}
