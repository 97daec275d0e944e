package thinclick.client.link;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Arrays;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.DelayQueue;
import java.util.concurrent.Delayed;
import java.util.concurrent.TimeUnit;

/** A line to a host far away: every byte takes so long in each direction, and keeps its order. */
final class FarLine implements AutoCloseable {
  private final ServerSocket door;
  private final int target;
  private final long oneWayNanos;
  private final Set<Socket> open = ConcurrentHashMap.newKeySet();

  FarLine(int targetPort, int oneWayMillis) throws IOException {
    target = targetPort;
    oneWayNanos = TimeUnit.MILLISECONDS.toNanos(oneWayMillis);
    door = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    start(this::accept);
  }

  int port() {
    return door.getLocalPort();
  }

  /** Bytes under way; an empty piece is the line's end. */
  private record Piece(byte[] bytes, long dueNanos) implements Delayed {
    @Override
    public long getDelay(TimeUnit unit) {
      return unit.convert(dueNanos - System.nanoTime(), TimeUnit.NANOSECONDS);
    }

    @Override
    public int compareTo(Delayed other) {
      return Long.compare(dueNanos, ((Piece) other).dueNanos);
    }
  }

  private void accept() {
    try {
      while (!door.isClosed()) {
        Socket client = door.accept();
        Socket host = new Socket(InetAddress.getLoopbackAddress(), target);
        for (Socket end : new Socket[] {client, host}) {
          end.setTcpNoDelay(true);
          open.add(end);
        }
        join(client, host);
        join(host, client);
      }
    } catch (IOException closed) {
      // the test is over
    }
  }

  private void join(Socket from, Socket to) {
    DelayQueue<Piece> underWay = new DelayQueue<>();
    start(() -> read(from, underWay));
    start(() -> write(underWay, to));
  }

  private void read(Socket from, DelayQueue<Piece> underWay) {
    byte[] buffer = new byte[1 << 12];
    long last = System.nanoTime();
    int read = 0;
    while (read >= 0) {
      try {
        InputStream in = from.getInputStream();
        read = in.read(buffer);
      } catch (IOException cut) {
        read = -1;
      }
      last = Math.max(last + 1, System.nanoTime() + oneWayNanos);
      underWay.add(new Piece(Arrays.copyOf(buffer, Math.max(0, read)), last));
    }
  }

  private static void write(DelayQueue<Piece> underWay, Socket to) {
    try (to) {
      OutputStream out = to.getOutputStream();
      for (Piece next = underWay.take(); next.bytes().length > 0; next = underWay.take()) {
        out.write(next.bytes());
      }
    } catch (IOException cut) {
      // so is the other direction
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  private static void start(Runnable task) {
    Thread thread = new Thread(task, "far line");
    thread.setDaemon(true);
    thread.start();
  }

  @Override
  public void close() throws IOException {
    door.close();
    for (Socket end : open) {
      end.close();
    }
  }
}
