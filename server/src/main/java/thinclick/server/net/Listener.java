package thinclick.server.net;

import io.netty.bootstrap.ServerBootstrap;
import io.netty.channel.Channel;
import io.netty.channel.ChannelFuture;
import io.netty.channel.ChannelOption;
import io.netty.channel.MultiThreadIoEventLoopGroup;
import io.netty.channel.nio.NioIoHandler;
import io.netty.channel.socket.nio.NioServerSocketChannel;
import io.netty.util.concurrent.EventExecutor;
import java.net.BindException;
import java.net.InetSocketAddress;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import thinclick.protocol.json.BadInput;

/** The bound port and its event loops. */
public final class Listener implements AutoCloseable {
  private final MultiThreadIoEventLoopGroup loops;
  private final Channel server;

  private Listener(MultiThreadIoEventLoopGroup loops, Channel server) {
    this.loops = loops;
    this.server = server;
  }

  /**
   * Binds and listens.
   *
   * @throws BadInput where the address is unknown or the port is taken
   */
  public static Listener bind(String host, int port) {
    InetSocketAddress address = new InetSocketAddress(host, port);
    if (address.isUnresolved()) {
      throw new BadInput(
          "--host", "expected a name or address of this computer, found \"" + host + "\"");
    }
    MultiThreadIoEventLoopGroup loops = new MultiThreadIoEventLoopGroup(NioIoHandler.newFactory());
    ChannelFuture bound =
        new ServerBootstrap()
            .group(loops)
            .channel(NioServerSocketChannel.class)
            .childOption(ChannelOption.TCP_NODELAY, true)
            .childHandler(new PipelineInitializer())
            .bind(address)
            .awaitUninterruptibly();
    if (!bound.isSuccess()) {
      stop(loops);
      throw refused(host, port, bound.cause());
    }
    return new Listener(loops, bound.channel());
  }

  private static BadInput refused(String host, int port, Throwable cause) {
    if (cause instanceof BindException && String.valueOf(cause.getMessage()).contains("in use")) {
      return new BadInput(
          "--port", "expected a free port on " + host + ", found " + port + " in use");
    }
    return new BadInput(
        "--host",
        "expected an address of this computer, found \""
            + host
            + "\" with port "
            + port
            + " ("
            + cause.getMessage()
            + ")");
  }

  /** The port that was bound. */
  public int port() {
    return ((InetSocketAddress) server.localAddress()).getPort();
  }

  /** Completes after every event loop has worked through what it held. */
  public CompletableFuture<Void> settled() {
    List<CompletableFuture<Void>> turns = new ArrayList<>();
    for (EventExecutor loop : loops) {
      turns.add(CompletableFuture.runAsync(() -> {}, loop));
    }
    return CompletableFuture.allOf(turns.toArray(CompletableFuture[]::new));
  }

  @Override
  public void close() {
    server.close().awaitUninterruptibly();
    stop(loops);
  }

  private static void stop(MultiThreadIoEventLoopGroup loops) {
    loops.shutdownGracefully(0, 2, TimeUnit.SECONDS).awaitUninterruptibly();
  }
}
