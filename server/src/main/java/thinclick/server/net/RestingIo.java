package thinclick.server.net;

import io.netty.channel.IoEvent;
import io.netty.channel.IoHandle;
import io.netty.channel.IoHandler;
import io.netty.channel.IoHandlerContext;
import io.netty.channel.IoHandlerFactory;
import io.netty.channel.IoRegistration;
import io.netty.channel.nio.NioIoHandle;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.channels.SelectableChannel;
import java.util.concurrent.locks.LockSupport;

/**
 * The sockets of the strangers' event loop, which rests between turns as its ration wants it.
 * Charged are the turns that a stranger's socket had served, with all that was done before the next
 * turn; what the host does there for itself is not.
 */
final class RestingIo implements IoHandler {
  private final IoHandler sockets;
  private final DoorRation ration;
  private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();
  private boolean served;
  private long turnBegan;
  private long charged;

  private RestingIo(IoHandler sockets, DoorRation ration) {
    this.sockets = sockets;
    this.ration = ration;
  }

  /** For one loop, whose ration it is. */
  static IoHandlerFactory of(IoHandlerFactory sockets, DoorRation ration) {
    return executor -> new RestingIo(sockets.newHandler(executor), ration);
  }

  @Override
  public int run(IoHandlerContext context) {
    long used = threads.getCurrentThreadCpuTime();
    if (served) {
      charged += used - turnBegan;
      long rest = ration.restNanos(charged, System.nanoTime());
      if (rest > 0) {
        LockSupport.parkNanos(this, rest);
      }
    }
    turnBegan = used;
    int handled = sockets.run(context);
    served = handled > 0;
    return handled;
  }

  @Override
  public void initialize() {
    sockets.initialize();
  }

  @Override
  public void prepareToDestroy() {
    sockets.prepareToDestroy();
  }

  @Override
  public void destroy() {
    sockets.destroy();
  }

  @Override
  public IoRegistration register(IoHandle handle) throws Exception {
    return sockets.register(handle instanceof NioIoHandle socket ? new GivingWay(socket) : handle);
  }

  @Override
  public void wakeup() {
    sockets.wakeup();
  }

  @Override
  public boolean isCompatible(Class<? extends IoHandle> kind) {
    return sockets.isCompatible(kind);
  }

  /**
   * A stranger's socket, after which whoever plays has their turn: on one core a room's loop that
   * has become ready would wait on some systems for all strangers that are, and not for one.
   */
  @SuppressWarnings({
    "try", // what closing throws is the socket's
    "ThreadPriorityCheck" // a hint: where the system does not follow it, others wait as before
  })
  private record GivingWay(NioIoHandle socket) implements NioIoHandle {
    @Override
    public SelectableChannel selectableChannel() {
      return socket.selectableChannel();
    }

    @Override
    public void handle(IoRegistration registration, IoEvent event) {
      socket.handle(registration, event);
      Thread.yield();
    }

    @Override
    public void registered() {
      socket.registered();
    }

    @Override
    public void unregistered() {
      socket.unregistered();
    }

    @Override
    public void close() throws Exception {
      socket.close();
    }
  }
}
