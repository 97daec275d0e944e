package thinclick.server.net;

import io.netty.bootstrap.ServerBootstrap;
import io.netty.channel.AdaptiveRecvByteBufAllocator;
import io.netty.channel.Channel;
import io.netty.channel.ChannelFuture;
import io.netty.channel.ChannelOption;
import io.netty.channel.EventLoopGroup;
import io.netty.channel.MultiThreadIoEventLoopGroup;
import io.netty.channel.RecvByteBufAllocator;
import io.netty.channel.WriteBufferWaterMark;
import io.netty.channel.group.ChannelGroup;
import io.netty.channel.group.DefaultChannelGroup;
import io.netty.channel.nio.NioIoHandler;
import io.netty.channel.socket.nio.NioServerSocketChannel;
import io.netty.util.concurrent.DefaultThreadFactory;
import io.netty.util.concurrent.EventExecutor;
import io.netty.util.concurrent.GlobalEventExecutor;
import java.net.InetSocketAddress;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.message.MessageCodec;
import thinclick.server.room.RoomEvent;

/** The bound port and its event loops. */
public final class Listener implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Listener.class);
  private static final long LAST_WORDS_MILLIS = 2_000;

  /** How the thread of those who are in no room is called. */
  static final String DOOR = "thinclick-door";

  private final MultiThreadIoEventLoopGroup door;
  private final MultiThreadIoEventLoopGroup loops;
  private final Channel server;
  private final ChannelGroup lines;
  private final Rooms rooms;
  private final Busy busy;

  private Listener(
      MultiThreadIoEventLoopGroup door,
      MultiThreadIoEventLoopGroup loops,
      Channel server,
      ChannelGroup lines,
      Rooms rooms,
      Busy busy) {
    this.door = door;
    this.loops = loops;
    this.server = server;
    this.lines = lines;
    this.rooms = rooms;
    this.busy = busy;
  }

  /**
   * Brings back the rooms that are stored, and takes in whoever comes to that port. Where it fails,
   * the port is let go and no thread stays.
   *
   * @throws IllegalStateException where the port has been let go
   * @throws java.util.concurrent.CompletionException where the store cannot be read
   */
  public static Listener open(Port port, Lines lines, HostParts parts) {
    // One loop a core: more would only hand the frames of one room from thread to thread.
    MultiThreadIoEventLoopGroup loops =
        new MultiThreadIoEventLoopGroup(
            Runtime.getRuntime().availableProcessors(), NioIoHandler.newFactory());
    Busy busy = new Busy();
    Rooms rooms = new Rooms(parts, loops, busy);
    DoorRation ration = new DoorRation(rooms::anyPlays, 0, System.nanoTime());
    MultiThreadIoEventLoopGroup door = door(ration);
    ChannelGroup all = new DefaultChannelGroup(GlobalEventExecutor.INSTANCE, true);
    ChannelFuture taken =
        new ServerBootstrap()
            .group(door)
            .channelFactory(() -> new NioServerSocketChannel(port.channel()))
            .childOption(ChannelOption.TCP_NODELAY, true)
            .childOption(
                ChannelOption.WRITE_BUFFER_WATER_MARK,
                new WriteBufferWaterMark(Connection.LOW_MARK, Connection.HIGH_MARK))
            .childOption(ChannelOption.RECVBUF_ALLOCATOR, aLittleAtATime())
            .option(ChannelOption.AUTO_READ, false)
            .childHandler(new PipelineInitializer(parts, rooms, ration, lines, all))
            .register()
            .awaitUninterruptibly();
    if (!taken.isSuccess()) {
      stop(door);
      stop(loops);
      throw new IllegalStateException("the port was let go", taken.cause());
    }
    try {
      // Only a host that has its port may open rooms: opening fences off whoever had them.
      rooms.restore();
    } catch (RuntimeException unread) {
      taken.channel().close().awaitUninterruptibly();
      stop(door);
      stop(loops);
      throw unread;
    }
    taken.channel().config().setAutoRead(true);
    return new Listener(door, loops, taken.channel(), all, rooms, busy);
  }

  /**
   * The loop of those who are in no room: only who is about to be let in goes over to that room's.
   */
  private static MultiThreadIoEventLoopGroup door(DoorRation ration) {
    return new MultiThreadIoEventLoopGroup(
        1,
        new DefaultThreadFactory(DOOR, Thread.MIN_PRIORITY),
        RestingIo.of(NioIoHandler.newFactory(), ration));
  }

  /** The largest message at most, and then it is somebody else's turn: a loop serves many rooms. */
  private static RecvByteBufAllocator aLittleAtATime() {
    return new AdaptiveRecvByteBufAllocator(256, 1_024, MessageCodec.MAX_CLIENT_FRAME)
        .maxMessagesPerRead(1);
  }

  /** The port that was bound. */
  public int port() {
    return ((InetSocketAddress) server.localAddress()).getPort();
  }

  /** Tells every room whether the disk can be written. */
  public void storeChanged(boolean available) {
    rooms.storeAvailable(available);
  }

  /** Tells open rooms, by their ids, that a name was put right. */
  public void renamed(List<String> rooms, RoomEvent.Renamed renamed) {
    this.rooms.tell(rooms, renamed);
  }

  /** Takes no new rooms, and ends each that is there after the take that runs in it. */
  public void drain() {
    rooms.drain();
  }

  /** Completes once all rooms have ended after {@link #drain}, whoever asked for that. */
  public CompletableFuture<Void> drained() {
    return rooms.drained();
  }

  /** Completes when nothing that had come before is under way any more. */
  public CompletableFuture<Void> settled() {
    long begun = busy.begun();
    return busy.whenIdle()
        .thenCompose(idle -> turn())
        .thenCompose(once -> turn())
        .thenCompose(
            twice ->
                busy.idle() && busy.begun() == begun
                    ? CompletableFuture.completedFuture(null)
                    : settled());
  }

  /** Every event loop works through what it holds. */
  private CompletableFuture<Void> turn() {
    List<CompletableFuture<Void>> turns = new ArrayList<>();
    for (EventLoopGroup group : List.of(door, loops)) {
      for (EventExecutor loop : group) {
        turns.add(CompletableFuture.runAsync(() -> {}, loop));
      }
    }
    return CompletableFuture.allOf(turns.toArray(CompletableFuture[]::new));
  }

  /**
   * Tells the rooms that the host is going, waits for their last words, and lets the port and every
   * line go.
   */
  @Override
  public void close() {
    server.close().awaitUninterruptibly();
    rooms.tellAll(new RoomEvent.HostGoing());
    try {
      settled().get(LAST_WORDS_MILLIS, TimeUnit.MILLISECONDS);
    } catch (TimeoutException | ExecutionException late) {
      LOG.warn("rooms were still busy after {} ms", LAST_WORDS_MILLIS);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
    // A loop that is stopped while it turns ends without closing what it has.
    lines.close().awaitUninterruptibly(LAST_WORDS_MILLIS);
    stop(door);
    stop(loops);
  }

  private static void stop(MultiThreadIoEventLoopGroup loops) {
    loops.shutdownGracefully(0, 2, TimeUnit.SECONDS).awaitUninterruptibly();
  }
}
