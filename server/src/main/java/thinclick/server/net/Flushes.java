package thinclick.server.net;

import io.netty.channel.EventLoop;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;

/**
 * When queued frames go to the network: a write to a socket costs more than all else that is done
 * for an attack. What comes for one receiver within one turn of the loop goes out in one write, so
 * that a loop which has fallen behind catches up; a loop that keeps up turns for every attack. One
 * for each event loop, used on it only.
 */
@SuppressWarnings("FutureReturnValueIgnored") // the loop outlives its timers
final class Flushes {
  /** What nobody waits for goes so late at most; an acknowledgement is allowed 50 ms. */
  static final long LATE_MILLIS = 30;

  /**
   * A turn in which much is read lets go of what it has to say so often at least. A loop that has
   * fallen so far behind writes to every line of its rooms each time, so that less would cost it
   * more than it gains.
   */
  static final long LONGEST_TURN_MILLIS = 20;

  private final EventLoop loop;
  private final Set<Connection> soon = new LinkedHashSet<>();
  private long soonSinceNanos;
  private List<Connection> late = new ArrayList<>();

  Flushes(EventLoop loop) {
    this.loop = loop;
  }

  /** What was queued on that connection goes out with this turn. */
  void soon(Connection connection) {
    if (soon.isEmpty()) {
      soonSinceNanos = loop.ticker().nanoTime();
      loop.execute(this::flushSoon);
    }
    soon.add(connection);
  }

  /** Called after every event, so that no turn is too long. */
  void inTime() {
    if (!soon.isEmpty()
        && loop.ticker().nanoTime() - soonSinceNanos
            > TimeUnit.MILLISECONDS.toNanos(LONGEST_TURN_MILLIS)) {
      flushSoon();
    }
  }

  private void flushSoon() {
    List<Connection> due = List.copyOf(soon);
    soon.clear();
    due.forEach(Connection::flush);
  }

  /** What was queued on that connection goes out with its next frame, or in a while. */
  void late(Connection connection) {
    if (late.isEmpty()) {
      loop.schedule(this::flushLate, LATE_MILLIS, TimeUnit.MILLISECONDS);
    }
    late.add(connection);
  }

  private void flushLate() {
    List<Connection> due = late;
    late = new ArrayList<>();
    due.forEach(Connection::flush); // does nothing where a later frame has taken it along
  }
}
