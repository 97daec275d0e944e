package thinclick.server.load;

import io.netty.bootstrap.Bootstrap;
import io.netty.channel.Channel;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInitializer;
import io.netty.channel.EventLoopGroup;
import io.netty.channel.SimpleChannelInboundHandler;
import io.netty.channel.socket.nio.NioSocketChannel;
import io.netty.handler.codec.http.DefaultHttpHeaders;
import io.netty.handler.codec.http.HttpClientCodec;
import io.netty.handler.codec.http.HttpObjectAggregator;
import io.netty.handler.codec.http.websocketx.CloseWebSocketFrame;
import io.netty.handler.codec.http.websocketx.TextWebSocketFrame;
import io.netty.handler.codec.http.websocketx.WebSocketClientHandshakerFactory;
import io.netty.handler.codec.http.websocketx.WebSocketClientProtocolHandler;
import io.netty.handler.codec.http.websocketx.WebSocketClientProtocolHandler.ClientHandshakeStateEvent;
import io.netty.handler.codec.http.websocketx.WebSocketFrame;
import io.netty.handler.codec.http.websocketx.WebSocketVersion;
import io.netty.handler.ssl.SslContext;
import java.net.URI;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.MessageCodec;

/** People who have joined and sit there; pings are answered by Netty's own client. */
@SuppressWarnings("FutureReturnValueIgnored")
final class IdleCrowd {
  private final EventLoopGroup loops;
  private final int port;
  private final @Nullable SslContext encryption;
  private final AtomicInteger here = new AtomicInteger();

  IdleCrowd(EventLoopGroup loops, int port, @Nullable SslContext encryption) {
    this.loops = loops;
    this.port = port;
    this.encryption = encryption;
  }

  /** How many are in their rooms now. */
  int here() {
    return here.get();
  }

  /** Somebody comes with that first message; completes with the host's welcome. */
  CompletableFuture<String> come(ClientMessage first) {
    CompletableFuture<String> welcome = new CompletableFuture<>();
    String join = MessageCodec.write(first);
    new Bootstrap()
        .group(loops)
        .channel(NioSocketChannel.class)
        .handler(
            new ChannelInitializer<Channel>() {
              @Override
              protected void initChannel(Channel channel) {
                if (encryption != null) {
                  channel.pipeline().addLast(encryption.newHandler(channel.alloc()));
                }
                URI address =
                    URI.create(
                        (encryption == null ? "ws" : "wss") + "://127.0.0.1:" + port + "/room");
                channel
                    .pipeline()
                    .addLast(new HttpClientCodec())
                    .addLast(new HttpObjectAggregator(8_192))
                    .addLast(
                        new WebSocketClientProtocolHandler(
                            WebSocketClientHandshakerFactory.newHandshaker(
                                address,
                                WebSocketVersion.V13,
                                null,
                                false,
                                new DefaultHttpHeaders(),
                                300_000,
                                true,
                                false,
                                -1,
                                false,
                                false)))
                    .addLast(new Sitter(join, welcome));
              }
            })
        .connect("127.0.0.1", port)
        .addListener(
            connected -> {
              if (!connected.isSuccess()) {
                welcome.completeExceptionally(connected.cause());
              }
            });
    return welcome;
  }

  private final class Sitter extends SimpleChannelInboundHandler<WebSocketFrame> {
    private final String join;
    private final CompletableFuture<String> welcome;

    Sitter(String join, CompletableFuture<String> welcome) {
      this.join = join;
      this.welcome = welcome;
    }

    @Override
    public void userEventTriggered(ChannelHandlerContext context, Object event) {
      if (event == ClientHandshakeStateEvent.HANDSHAKE_COMPLETE) {
        context.writeAndFlush(new TextWebSocketFrame(join));
      }
    }

    @Override
    protected void channelRead0(ChannelHandlerContext context, WebSocketFrame frame) {
      if (frame instanceof CloseWebSocketFrame close) {
        welcome.completeExceptionally(
            new IllegalStateException(close.statusCode() + " " + close.reasonText()));
      } else if (!welcome.isDone()
          && frame instanceof TextWebSocketFrame text
          && text.text().startsWith("{\"type\":\"welcome\"")) {
        here.incrementAndGet();
        welcome.complete(text.text());
      }
    }

    @Override
    public void channelInactive(ChannelHandlerContext context) {
      if (welcome.isDone() && !welcome.isCompletedExceptionally()) {
        here.decrementAndGet();
      }
      welcome.completeExceptionally(new IllegalStateException("closed"));
    }

    @Override
    public void exceptionCaught(ChannelHandlerContext context, Throwable problem) {
      welcome.completeExceptionally(problem);
      context.close();
    }
  }
}
