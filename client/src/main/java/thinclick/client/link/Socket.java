package thinclick.client.link;

import io.netty.bootstrap.Bootstrap;
import io.netty.channel.Channel;
import io.netty.channel.ChannelFuture;
import io.netty.channel.ChannelInitializer;
import io.netty.channel.ChannelOption;
import io.netty.channel.socket.SocketChannel;
import io.netty.channel.socket.nio.NioSocketChannel;
import io.netty.handler.codec.http.DefaultHttpHeaders;
import io.netty.handler.codec.http.HttpClientCodec;
import io.netty.handler.codec.http.HttpObjectAggregator;
import io.netty.handler.codec.http.websocketx.CloseWebSocketFrame;
import io.netty.handler.codec.http.websocketx.TextWebSocketFrame;
import io.netty.handler.codec.http.websocketx.WebSocketClientProtocolConfig;
import io.netty.handler.codec.http.websocketx.WebSocketClientProtocolHandler;
import io.netty.handler.codec.http.websocketx.WebSocketFrameAggregator;
import io.netty.handler.codec.http.websocketx.WebSocketVersion;
import io.netty.handler.ssl.SslContext;
import io.netty.handler.ssl.SslContextBuilder;
import javax.net.ssl.SSLException;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.MessageCodec;

/** One WebSocket connection: bytes and frames on this side, messages on the other. */
@SuppressWarnings(
    "FutureReturnValueIgnored") // a write or close that fails shows as a closed channel
final class Socket {
  /** What RFC 6455, 7.4.1, reserves for a TLS handshake that failed; never on the wire. */
  static final int NOT_TRUSTED = 1015;

  /** Nobody answers there, or not in a way of ours; never on the wire. */
  static final int NO_HOST = 0;

  private static final int CONNECT_MILLIS = 5_000;

  /** What a connection tells its owner, always on the loop. */
  interface Owner {
    /** The WebSocket stands; messages may be sent. */
    void opened();

    /** A text frame, read at {@code arrivedNanos} of the link's clock. */
    void received(String json, long arrivedNanos);

    /** It is over; said once. Without a close frame {@code code} is 1006. */
    void closed(int code, String says);
  }

  private final Channel channel;
  private final SocketHandler handler;

  private Socket(Channel channel, SocketHandler handler) {
    this.channel = channel;
    this.handler = handler;
  }

  /** Starts to connect; the owner hears how it went. */
  static Socket connect(RoomAddress address, LinkOptions options, Trust trust, Owner owner) {
    SocketHandler handler = new SocketHandler(owner, options.loop());
    ChannelFuture connecting =
        new Bootstrap()
            .group(options.loop().eventLoop())
            .channel(NioSocketChannel.class)
            .option(ChannelOption.TCP_NODELAY, true)
            .option(ChannelOption.CONNECT_TIMEOUT_MILLIS, CONNECT_MILLIS)
            .handler(new Pipeline(address, trust, handler))
            .connect(address.host(), address.uri().getPort());
    options.loop().begun(connecting.channel());
    connecting.addListener(
        done -> {
          if (!done.isSuccess()) {
            handler.end(NO_HOST, "no server answers at " + address);
          }
        });
    return new Socket(connecting.channel(), handler);
  }

  /** Sends a message; one sent on a dead line is lost, which the outbox makes good. */
  void send(ClientMessage message) {
    handler.sends();
    channel.writeAndFlush(
        new TextWebSocketFrame(MessageCodec.write(message)), channel.voidPromise());
  }

  /** Says goodbye and closes. */
  void close(int code, String says) {
    channel.writeAndFlush(new CloseWebSocketFrame(code, says)).addListener(done -> channel.close());
  }

  /** Cuts the line without a word. */
  void cut() {
    channel.close();
  }

  private static final class Pipeline extends ChannelInitializer<SocketChannel> {
    private final RoomAddress address;
    private final Trust trust;
    private final SocketHandler handler;

    Pipeline(RoomAddress address, Trust trust, SocketHandler handler) {
      this.address = address;
      this.trust = trust;
      this.handler = handler;
    }

    @Override
    protected void initChannel(SocketChannel channel) throws SSLException {
      if (address.encrypted()) {
        // The name is checked by Trust too, where it is the name that counts.
        SslContext encryption =
            SslContextBuilder.forClient()
                .trustManager(trust)
                .protocols("TLSv1.3", "TLSv1.2")
                .build();
        channel
            .pipeline()
            .addLast(
                encryption.newHandler(channel.alloc(), address.host(), address.uri().getPort()));
      }
      WebSocketClientProtocolConfig config =
          WebSocketClientProtocolConfig.newBuilder()
              .webSocketUri(address.uri())
              .version(WebSocketVersion.V13)
              .customHeaders(new DefaultHttpHeaders())
              .generateOriginHeader(false)
              .handleCloseFrames(false)
              .dropPongFrames(false)
              .maxFramePayloadLength(MessageCodec.MAX_SERVER_FRAME)
              .handshakeTimeoutMillis(CONNECT_MILLIS)
              .build();
      channel
          .pipeline()
          .addLast(
              new HttpClientCodec(),
              new HttpObjectAggregator(8 << 10),
              new WebSocketClientProtocolHandler(config),
              new WebSocketFrameAggregator(MessageCodec.MAX_SERVER_FRAME),
              handler);
    }
  }
}
