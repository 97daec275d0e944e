package thinclick.server.net;

import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.SimpleChannelInboundHandler;
import io.netty.handler.codec.TooLongFrameException;
import io.netty.handler.codec.http.HttpHeaderNames;
import io.netty.handler.codec.http.websocketx.CorruptedWebSocketFrameException;
import io.netty.handler.codec.http.websocketx.TextWebSocketFrame;
import io.netty.handler.codec.http.websocketx.WebSocketFrame;
import io.netty.handler.codec.http.websocketx.WebSocketServerProtocolHandler.HandshakeComplete;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.PreparingMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeMessage;
import thinclick.server.room.RoomEvent;

/** Text frames of one connection: read strictly, answered or handed to the room. */
@SuppressWarnings("FutureReturnValueIgnored") // a write or timer that fails ends with its channel
final class FrameHandler extends SimpleChannelInboundHandler<WebSocketFrame> {
  private static final Logger LOG = LoggerFactory.getLogger(FrameHandler.class);

  private static final long PACED_MILLIS = 100;

  private final HostParts parts;
  private final Connection connection;
  private final Reception reception;
  private final Hold hold;
  private final ArrivalStamp arrival;
  private final Traffic traffic;
  private boolean counted;

  FrameHandler(
      HostParts parts,
      Connection connection,
      Reception reception,
      Hold hold,
      ArrivalStamp arrival) {
    this.parts = parts;
    this.connection = connection;
    this.reception = reception;
    this.hold = hold;
    this.arrival = arrival;
    this.traffic = new Traffic(parts.clock().nanos());
  }

  @Override
  public void userEventTriggered(ChannelHandlerContext context, Object event) throws Exception {
    if (event instanceof HandshakeComplete handshake) {
      counted = true;
      parts.meters().connected(1);
      context.pipeline().remove(HttpHandler.class); // its part is over
      if (handshake.requestHeaders().contains(HttpHeaderNames.ORIGIN)) {
        connection.close(CloseCode.ORIGIN, CloseCode.ORIGIN.says(), null);
        return;
      }
      reception.begin(context);
    }
    super.userEventTriggered(context, event);
  }

  @Override
  public void channelUnregistered(ChannelHandlerContext context) throws Exception {
    reception.leave();
    super.channelUnregistered(context);
  }

  /** The last to hear of it: whatever else is timed on a line goes on by then. */
  @Override
  public void channelRegistered(ChannelHandlerContext context) throws Exception {
    reception.arrive(context);
    super.channelRegistered(context);
  }

  @Override
  protected void channelRead0(ChannelHandlerContext context, WebSocketFrame frame) {
    if (connection.closing()) {
      return;
    }
    if (frame instanceof TextWebSocketFrame text) {
      read(context, text.text());
    } else {
      connection.close(CloseCode.BINARY, CloseCode.BINARY.says(), null);
    }
  }

  private void read(ChannelHandlerContext context, String json) {
    ClientMessage message;
    try {
      message = MessageCodec.readClient(json);
    } catch (MessageCodec.Malformed malformed) {
      connection.close(CloseCode.MALFORMED, String.valueOf(malformed.getMessage()), null);
      return;
    } catch (MessageCodec.UnknownType | BadInput unread) {
      if (!traffic.allowsUnread(parts.clock().nanos())) {
        connection.close(CloseCode.FLOOD, CloseCode.FLOOD.says(), null);
      } else if (unread instanceof BadInput bad) {
        error(ErrorCode.BAD_FIELD, bad.says(), bad.where(), json);
      } else {
        error(ErrorCode.UNKNOWN_TYPE, String.valueOf(unread.getMessage()), "type", json);
      }
      return;
    }
    take(context, message);
  }

  private void take(ChannelHandlerContext context, ClientMessage message) {
    if (message instanceof TakeMessage.Attacks && !parts.store().hasRoom()) {
      // The disk is behind: nothing more is read until it has caught up, and nothing is dropped.
      hold.begin(context);
      parts.store().whenRoom(() -> context.executor().execute(() -> resume(context, message)));
      return;
    }
    if (!traffic.allows(message, parts.clock().nanos())) {
      if (message instanceof TakeMessage.Attacks) {
        hold.begin(context); // a long resend is slowed down, not punished
        context
            .executor()
            .schedule(() -> resume(context, message), PACED_MILLIS, TimeUnit.MILLISECONDS);
      } else {
        connection.close(CloseCode.FLOOD, CloseCode.FLOOD.says(), null);
      }
      return;
    }
    HostedRoom room = connection.room();
    if (room == null || !connection.joined()) {
      reception.hear(context, message);
    } else if (message instanceof PreparingMessage.Clock clock) {
      answer(room, clock);
    } else {
      count(message);
      room.post(new RoomEvent.Said(connection.number(), message));
    }
  }

  private void count(ClientMessage message) {
    if (message instanceof TakeMessage.Attacks sent) {
      parts.meters().received(sent.attacks().size());
    } else if (message instanceof PreparingMessage.ClockReport report) {
      parts.meters().clockUncertainty(report.uncertaintyMicros());
    }
  }

  /** Takes a message that was held, and reads on where it is not held again. */
  private void resume(ChannelHandlerContext context, ClientMessage message) {
    hold.lift();
    if (!connection.closing()) {
      take(context, message);
    }
    hold.readOn(context);
  }

  private void error(ErrorCode code, String says, String field, String json) {
    connection.send(
        new ServerMessage.Problem(
            code, says, field.isEmpty() ? null : field, MessageCodec.requestIdIn(json), false));
  }

  /** t2 was read when the bytes came, t3 is read just before the answer is written. */
  private void answer(HostedRoom room, PreparingMessage.Clock clock) {
    long t2 = room.micros(arrival.nanos());
    connection.send(
        new AnswerMessage.ClockAnswer(
            clock.id(), clock.t1Micros(), t2, room.micros(parts.clock().nanos()), room.epoch()));
  }

  // ------------------------------------------------------------------ the end

  @Override
  public void channelInactive(ChannelHandlerContext context) throws Exception {
    if (counted) {
      parts.meters().connected(-1);
    }
    connection.over();
    HostedRoom room = connection.room();
    if (room != null) {
      room.left(connection);
    }
    super.channelInactive(context);
  }

  @Override
  public void exceptionCaught(ChannelHandlerContext context, Throwable problem) {
    LOG.debug("connection {}: {}", connection.number(), problem.toString());
    if (problem instanceof CorruptedWebSocketFrameException frame) {
      connection.close(code(frame), String.valueOf(frame.getMessage()), null);
    } else if (problem instanceof TooLongFrameException) {
      connection.close(CloseCode.TOO_BIG, CloseCode.TOO_BIG.says(), null);
    } else {
      context.close();
    }
  }

  private static CloseCode code(CorruptedWebSocketFrameException frame) {
    return switch (frame.closeStatus().code()) {
      case 1007 -> CloseCode.NOT_UTF8;
      case 1009 -> CloseCode.TOO_BIG;
      default -> CloseCode.PROTOCOL;
    };
  }
}
