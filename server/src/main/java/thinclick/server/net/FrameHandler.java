package thinclick.server.net;

import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.SimpleChannelInboundHandler;
import io.netty.handler.codec.TooLongFrameException;
import io.netty.handler.codec.http.HttpHeaderNames;
import io.netty.handler.codec.http.websocketx.CorruptedWebSocketFrameException;
import io.netty.handler.codec.http.websocketx.TextWebSocketFrame;
import io.netty.handler.codec.http.websocketx.WebSocketFrame;
import io.netty.handler.codec.http.websocketx.WebSocketServerProtocolHandler.HandshakeComplete;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
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
import thinclick.server.room.RoomDirectory.Place;
import thinclick.server.room.RoomEvent;
import thinclick.server.room.RoomWord;

/** Text frames of one connection: read strictly, answered or handed to the room. */
@SuppressWarnings("FutureReturnValueIgnored") // a write or timer that fails ends with its channel
final class FrameHandler extends SimpleChannelInboundHandler<WebSocketFrame> {
  /** A first message must have come by then. */
  static final long FIRST_MESSAGE_MILLIS = 5_000;

  private static final Logger LOG = LoggerFactory.getLogger(FrameHandler.class);

  private static final long PACED_MILLIS = 100;

  private final HostParts parts;
  private final Rooms rooms;
  private final Strangers strangers;
  private final Connection connection;
  private final ArrivalStamp arrival;
  private final Traffic traffic;
  private boolean placing;
  private boolean counted;

  FrameHandler(
      HostParts parts,
      Rooms rooms,
      Strangers strangers,
      Connection connection,
      ArrivalStamp arrival) {
    this.parts = parts;
    this.rooms = rooms;
    this.strangers = strangers;
    this.connection = connection;
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
      Deadline.in(context.executor(), FIRST_MESSAGE_MILLIS, this::firstMessageDue);
    }
    super.userEventTriggered(context, event);
  }

  private void firstMessageDue() {
    if (!connection.joined() && !placing) {
      connection.close(CloseCode.TIMEOUT, "expected join or openRoom within 5 s", null);
    }
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
      hold(context);
      parts.store().whenRoom(() -> context.executor().execute(() -> resume(context, message)));
      return;
    }
    if (!traffic.allows(message, parts.clock().nanos())) {
      if (message instanceof TakeMessage.Attacks) {
        hold(context); // a long resend is slowed down, not punished
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
      first(context, message);
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
    placing = false;
    if (!connection.closing()) {
      take(context, message);
    }
    if (!placing) {
      context.channel().config().setAutoRead(true);
    }
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

  // ------------------------------------------------------------------ the first message

  private void first(ChannelHandlerContext context, ClientMessage message) {
    if (message instanceof ClientMessage.OpenRoom open) {
      if (speaks(open.versionMin(), open.versionMax())) {
        open(context, open);
      }
    } else if (message instanceof ClientMessage.Join join) {
      if (speaks(join.versionMin(), join.versionMax())) {
        join(context, join);
      }
    } else {
      connection.close(CloseCode.MALFORMED, "expected join or openRoom first", null);
    }
  }

  private boolean speaks(int min, int max) {
    if (min <= MessageCodec.VERSION && max >= MessageCodec.VERSION) {
      return true;
    }
    connection.close(
        CloseCode.VERSION,
        "expected a range with version " + MessageCodec.VERSION + ", found " + min + " to " + max,
        null);
    return false;
  }

  private void open(ChannelHandlerContext context, ClientMessage.OpenRoom open) {
    if (!rooms.mayBeMadeBy(Remote.of(context), open.hostKey())) {
      connection.close(
          CloseCode.TOKEN, "expected the host key, which the operator gave it (--host-key)", null);
      return;
    }
    if (!strangers.mayMakeRoom(Remote.of(context), parts.clock().nanos())) {
      connection.close(CloseCode.FLOOD, "expected at most 3 new rooms a minute", 60_000L);
      return;
    }
    if (rooms.draining()) {
      connection.close(CloseCode.OVERLOAD, "the host takes no new rooms: it is going", 60_000L);
      return;
    }
    if (rooms.full()) {
      connection.close(CloseCode.OVERLOAD, "the host has " + Rooms.MOST + " rooms", null);
      return;
    }
    hold(context);
    rooms
        .make(context.channel().eventLoop())
        .whenCompleteAsync(
            (room, problem) -> {
              if (problem != null) {
                LOG.error("no room could be made", problem);
                connection.close(CloseCode.FAULT, CloseCode.FAULT.says(), null);
              } else {
                enter(context, room, open);
              }
            },
            context.executor());
  }

  private void join(ChannelHandlerContext context, ClientMessage.Join join) {
    if (!strangers.mayTryWord(Remote.of(context), parts.clock().nanos())) {
      connection.close(CloseCode.FLOOD, "expected at most 20 wrong words a minute", 60_000L);
      return;
    }
    hold(context);
    CompletableFuture<Place<HostedRoom>> place = rooms.find(RoomWord.normal(join.room()));
    if (place.isDone()) {
      found(
          context, place.join(), join); // before the next is read: a wrong word is counted at once
    } else {
      place.whenCompleteAsync((where, problem) -> found(context, where, join), context.executor());
    }
  }

  private void found(
      ChannelHandlerContext context, @Nullable Place<HostedRoom> place, ClientMessage.Join join) {
    if (place instanceof Place.Here<HostedRoom> here) {
      enter(context, here.room(), join);
    } else if (place instanceof Place.Nowhere<HostedRoom> && rooms.draining()) {
      // Its room may have been here a moment ago, and will be again when the host is back.
      connection.close(CloseCode.GOING, CloseCode.GOING.says(), 1_000L);
    } else if (place instanceof Place.Nowhere<HostedRoom>) {
      strangers.wordWasWrong(Remote.of(context), parts.clock().nanos());
      connection.close(CloseCode.ROOM, CloseCode.ROOM.says(), null);
    } else {
      connection.close(CloseCode.OVERLOAD, "the room cannot be reached now", 1_000L);
    }
  }

  private void enter(ChannelHandlerContext context, HostedRoom room, ClientMessage message) {
    HostedRoom asked = connection.room();
    if (asked != null && asked != room) {
      asked.left(connection); // refused there before
    }
    connection.room(room);
    if (!context.channel().isActive()) {
      return;
    }
    room.come(
        connection,
        new RoomEvent.Came(connection.number(), message, rooms.freshToken(), rooms.freshToken()),
        () -> context.executor().execute(() -> release(context)));
  }

  /** Nothing more is read until the room has answered, so that messages keep their order. */
  private void hold(ChannelHandlerContext context) {
    placing = true;
    context.channel().config().setAutoRead(false);
  }

  private void release(ChannelHandlerContext context) {
    placing = false;
    context.channel().config().setAutoRead(true);
    if (!connection.joined() && !connection.closing()) {
      Deadline.in(context.executor(), 6 * FIRST_MESSAGE_MILLIS, this::firstMessageDue);
    }
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
