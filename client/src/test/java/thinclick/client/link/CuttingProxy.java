package thinclick.client.link;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A line that a test can cut: passes bytes between clients and a server until it is told not to.
 */
public final class CuttingProxy implements AutoCloseable {
  private final ServerSocket door;
  private final Set<java.net.Socket> open = ConcurrentHashMap.newKeySet();
  private final AtomicInteger toHangUpOn = new AtomicInteger();
  private volatile int target;

  public CuttingProxy(int targetPort) {
    target = targetPort;
    try {
      door = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
    start(this::accept);
  }

  public int port() {
    return door.getLocalPort();
  }

  /** Where new connections go from now on. */
  public void target(int port) {
    target = port;
  }

  /** Cuts every connection where it stands, in the middle of a frame if need be. */
  public void cut() {
    open.forEach(CuttingProxy::shut);
  }

  /** So many of the next connections are taken and then hung up on, as by a host that is busy. */
  public void hangUpOn(int count) {
    toHangUpOn.set(count);
  }

  private void accept() {
    while (!door.isClosed()) {
      try {
        java.net.Socket client = door.accept();
        if (toHangUpOn.getAndUpdate(left -> Math.max(0, left - 1)) > 0) {
          shut(client);
          continue;
        }
        open.add(client);
        java.net.Socket server;
        try {
          server = new java.net.Socket(InetAddress.getLoopbackAddress(), target);
        } catch (IOException nobody) {
          shut(client);
          continue;
        }
        client.setTcpNoDelay(true);
        server.setTcpNoDelay(true);
        open.add(server);
        start(() -> pass(client, server));
        start(() -> pass(server, client));
      } catch (IOException closed) {
        return;
      }
    }
  }

  private void pass(java.net.Socket from, java.net.Socket to) {
    byte[] buffer = new byte[512];
    try (InputStream in = from.getInputStream();
        OutputStream out = to.getOutputStream()) {
      for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
        out.write(buffer, 0, read);
      }
    } catch (IOException cut) {
      // as asked for
    } finally {
      shut(from);
      shut(to);
      open.remove(from);
      open.remove(to);
    }
  }

  private static void shut(java.net.Socket socket) {
    try {
      socket.close();
    } catch (IOException gone) {
      // it is
    }
  }

  private static void start(Runnable task) {
    Thread thread = new Thread(task, "proxy");
    thread.setDaemon(true);
    thread.start();
  }

  @Override
  public void close() throws IOException {
    door.close();
    cut();
  }
}
