package thinclick.server.net;

import io.netty.channel.Channel;
import io.netty.channel.ChannelInitializer;
import io.netty.channel.group.ChannelGroup;
import io.netty.handler.codec.http.HttpObjectAggregator;
import io.netty.handler.codec.http.HttpServerCodec;
import io.netty.handler.codec.http.websocketx.WebSocketFrameAggregator;
import io.netty.handler.codec.http.websocketx.WebSocketServerProtocolConfig;
import io.netty.handler.codec.http.websocketx.WebSocketServerProtocolHandler;
import io.netty.handler.flow.FlowControlHandler;
import io.netty.handler.ssl.SslContext;
import thinclick.protocol.message.MessageCodec;

/** What every connection goes through, in order, with its limits. */
final class PipelineInitializer extends ChannelInitializer<Channel> {
  private static final int MAX_REQUEST_LINE = 1_024;
  private static final int MAX_HEADERS = 8_192;
  private static final int MAX_CHUNK = 4_096;
  private static final int MAX_BODY = 1_024;
  private static final WebSocketServerProtocolConfig CONVERSATION =
      WebSocketServerProtocolConfig.newBuilder()
          .websocketPath(MessageCodec.PATH)
          .maxFramePayloadLength(MessageCodec.MAX_CLIENT_FRAME)
          .allowExtensions(false)
          .expectMaskedFrames(true)
          .closeOnProtocolViolation(false) // FrameHandler does it, with a goodbye
          .withUTF8Validator(true)
          .handshakeTimeoutMillis(Reception.FIRST_MESSAGE_MILLIS)
          .build();

  private final HostParts parts;
  private final Rooms rooms;
  private final Strangers strangers;
  private final DoorRation ration;
  private final Lines lines;
  private final ChannelGroup open;

  /**
   * @param open every line, from its first moment until it is closed
   */
  PipelineInitializer(
      HostParts parts, Rooms rooms, DoorRation ration, Lines lines, ChannelGroup open) {
    this.parts = parts;
    this.rooms = rooms;
    this.ration = ration;
    this.lines = lines;
    this.open = open;
    this.strangers = new Strangers(parts.clock().nanos());
  }

  @Override
  protected void initChannel(Channel channel) {
    open.add(channel);
    Connection connection = new Connection(channel);
    ArrivalStamp arrival = new ArrivalStamp(parts.clock(), connection);
    Hold hold = new Hold();
    Reception reception = new Reception(parts, rooms, strangers, ration, connection, hold);
    channel.pipeline().addLast(arrival);
    SslContext encryption = lines.encryption();
    if (encryption != null) {
      channel.pipeline().addLast(new LineOpening(encryption, lines, strangers, parts));
    }
    channel
        .pipeline()
        .addLast(new HttpServerCodec(MAX_REQUEST_LINE, MAX_HEADERS, MAX_CHUNK))
        .addLast(new HttpObjectAggregator(MAX_BODY))
        .addLast(new HttpHandler(parts, rooms))
        .addLast(new WebSocketServerProtocolHandler(CONVERSATION))
        .addLast(new LifeHandler(connection, arrival))
        .addLast(new WebSocketFrameAggregator(MessageCodec.MAX_CLIENT_FRAME))
        .addLast(new FlowControlHandler())
        .addLast(new FrameHandler(parts, connection, reception, hold, arrival));
  }
}
