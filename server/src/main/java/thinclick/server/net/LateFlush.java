package thinclick.server.net;

import io.netty.channel.EventLoop;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * What nobody waits for on the spot goes out with the next frame of its connection, or a little
 * later: a write to a socket costs more than all else that is done for an attack. One for each
 * event loop, used on it only.
 */
@SuppressWarnings("FutureReturnValueIgnored") // the loop outlives its timers
final class LateFlush {
  /** So late at most; a fresh acknowledgement is allowed 50 ms and the disk. */
  static final long LATE_MILLIS = 15;

  private final EventLoop loop;
  private List<Connection> waiting = new ArrayList<>();

  LateFlush(EventLoop loop) {
    this.loop = loop;
  }

  /** What was queued on that connection is on the network in a while. */
  void add(Connection connection) {
    if (waiting.isEmpty()) {
      loop.schedule(this::flush, LATE_MILLIS, TimeUnit.MILLISECONDS);
    }
    waiting.add(connection);
  }

  private void flush() {
    List<Connection> due = waiting;
    waiting = new ArrayList<>();
    due.forEach(Connection::flush); // does nothing where a later frame has taken it along
  }
}
