package thinclick.server.load;

import io.netty.bootstrap.ServerBootstrap;
import io.netty.channel.Channel;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInitializer;
import io.netty.channel.ChannelOption;
import io.netty.channel.MultiThreadIoEventLoopGroup;
import io.netty.channel.SimpleChannelInboundHandler;
import io.netty.channel.nio.NioIoHandler;
import io.netty.channel.socket.nio.NioServerSocketChannel;
import io.netty.handler.codec.http.HttpObjectAggregator;
import io.netty.handler.codec.http.HttpServerCodec;
import io.netty.handler.codec.http.websocketx.TextWebSocketFrame;
import io.netty.handler.codec.http.websocketx.WebSocketServerProtocolHandler;
import io.netty.handler.codec.http.websocketx.WebSocketServerProtocolHandler.HandshakeComplete;
import java.net.InetSocketAddress;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * The baseline: a Netty server of the same transport and as many loops that passes each text frame
 * on to the others at the same path, understands nothing and keeps nothing. Frames go to the
 * network as ours do, with the end of the loop's turn; with {@code -Dflush=each}, each for itself.
 */
@SuppressWarnings("FutureReturnValueIgnored")
final class BareRelay {
  private static final Map<String, List<Channel>> ROOMS = new ConcurrentHashMap<>();
  private static final boolean EACH = "each".equals(System.getProperty("flush"));
  private static final ThreadLocal<Set<Channel>> UNFLUSHED =
      ThreadLocal.withInitial(LinkedHashSet::new);

  private BareRelay() {}

  public static void main(String[] arguments) {
    int port = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 0;
    MultiThreadIoEventLoopGroup loops =
        new MultiThreadIoEventLoopGroup(
            Runtime.getRuntime().availableProcessors(), NioIoHandler.newFactory());
    Channel server =
        new ServerBootstrap()
            .group(loops)
            .channel(NioServerSocketChannel.class)
            .childOption(ChannelOption.TCP_NODELAY, true)
            .option(ChannelOption.SO_BACKLOG, 1_024)
            .childHandler(
                new ChannelInitializer<Channel>() {
                  @Override
                  protected void initChannel(Channel channel) {
                    channel
                        .pipeline()
                        .addLast(new HttpServerCodec())
                        .addLast(new HttpObjectAggregator(1_024))
                        .addLast(new WebSocketServerProtocolHandler("/", true))
                        .addLast(new Relay());
                  }
                })
            .bind(new InetSocketAddress("127.0.0.1", port))
            .syncUninterruptibly()
            .channel();
    System.out.println(
        "listens at ws://127.0.0.1:"
            + ((InetSocketAddress) server.localAddress()).getPort()
            + "/room");
  }

  private static final class Relay extends SimpleChannelInboundHandler<TextWebSocketFrame> {
    private List<Channel> room = List.of();

    @Override
    public void userEventTriggered(ChannelHandlerContext context, Object event) throws Exception {
      if (event instanceof HandshakeComplete handshake) {
        room = ROOMS.computeIfAbsent(handshake.requestUri(), uri -> new CopyOnWriteArrayList<>());
        room.add(context.channel());
      }
      super.userEventTriggered(context, event);
    }

    @Override
    protected void channelRead0(ChannelHandlerContext context, TextWebSocketFrame frame) {
      for (Channel other : room) {
        if (other != context.channel()) {
          if (EACH) {
            other.writeAndFlush(frame.retainedDuplicate());
          } else {
            other.write(frame.retainedDuplicate());
            flushSoon(context, other);
          }
        }
      }
    }

    private static void flushSoon(ChannelHandlerContext context, Channel other) {
      Set<Channel> unflushed = UNFLUSHED.get();
      if (unflushed.isEmpty()) {
        context.executor().execute(Relay::flush);
      }
      unflushed.add(other);
    }

    private static void flush() {
      Set<Channel> unflushed = UNFLUSHED.get();
      unflushed.forEach(Channel::flush);
      unflushed.clear();
    }

    @Override
    public void channelInactive(ChannelHandlerContext context) {
      room.remove(context.channel());
    }
  }
}
