package thinclick.server.load;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.HdrHistogram.Histogram;

/**
 * Players that play whatever comes back: an open loop, so that a server that falls behind is
 * charged for it. Latencies count from the instant at which an attack should have been sent.
 */
final class Load {
  private static final long DRAIN_MICROS = 2_000_000;
  static final int SETTLING_SECONDS = 30;
  private static final long QUIET_MICROS = 300_000;

  private final Selector selector;
  private final long originNanos = System.nanoTime();
  private final ByteBuffer scratch = ByteBuffer.allocateDirect(512);
  private final ByteBuffer shared = ByteBuffer.allocateDirect(1 << 16);
  private Histogram delivery = new Histogram(3);
  private Histogram acknowledgement = new Histogram(3);

  /**
   * What came of a stretch of load.
   *
   * @param offered attacks that were to be sent
   * @param delivered copies that came to the others
   * @param seconds from the first intended instant until the last was sent
   * @param busy the share of one core that this generator took
   */
  record Stretch(
      long offered,
      long delivered,
      double seconds,
      double busy,
      Histogram delivery,
      Histogram acknowledgement) {
    double deliveryMillis(double percentile) {
      return delivery.getValueAtPercentile(percentile) / 1e3;
    }

    double acknowledgementMillis(double percentile) {
      return acknowledgement.getValueAtPercentile(percentile) / 1e3;
    }

    double deliveredPerSecond() {
      return delivered / seconds;
    }
  }

  Load(Selector selector) {
    this.selector = selector;
  }

  private long micros() {
    return (System.nanoTime() - originNanos) / 1_000;
  }

  /**
   * Plays on those lines, each in turn, so many attacks a second in all; then waits for the rest.
   */
  Stretch play(List<LoadLine> lines, double perSecond, double seconds) {
    List<LoadLine> order = new java.util.ArrayList<>(lines);
    Collections.shuffle(order, new Random(1));
    delivery = new Histogram(3);
    acknowledgement = new Histogram(3);
    long deliveredBefore = delivered(lines);
    long sentBefore = sent(lines);
    long cpuBefore = Cpu.ofThisThreadNanos();
    long begin = micros();
    long offered = Math.round(perSecond * seconds);
    double gapMicros = 1e6 / perSecond;
    try {
      for (long next = 0; next < offered; ) {
        long due = begin + (long) (next * gapMicros);
        long now = micros();
        if (now >= due) {
          order.get((int) (next % order.size())).attack(due, scratch);
          next++;
          if (next % 16 == 0) {
            read(0);
          }
        } else {
          read(Math.max(0, (due - now) / 1_000));
        }
      }
      long end = micros();
      double busy = (Cpu.ofThisThreadNanos() - cpuBefore) / 1e3 / (end - begin);
      long wanted = offered * 7;
      long deliveredInTime = delivered(lines) - deliveredBefore;
      while (micros() < end + DRAIN_MICROS && delivered(lines) - deliveredBefore < wanted) {
        read(1);
      }
      while (micros() < end + DRAIN_MICROS && acknowledged(lines) < sent(lines)) {
        read(1);
      }
      if (sent(lines) - sentBefore != offered) {
        throw new AssertionError(
            "lines were closed: "
                + lines.stream()
                    .filter(LoadLine::closed)
                    .collect(Collectors.groupingBy(LoadLine::closing, Collectors.counting())));
      }
      return new Stretch(
          offered, deliveredInTime, (end - begin) / 1e6, busy, delivery, acknowledgement);
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  /** Reads for a while without playing. */
  void listen(double seconds) {
    long end = micros() + (long) (seconds * 1e6);
    try {
      while (micros() < end) {
        read(5);
      }
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  /**
   * Reads until a server that had fallen behind has come to the end of what was sent: until the
   * network has taken everything, and nothing that was played has come for a while. What is
   * measured next is not charged for it.
   *
   * @return false where that takes too long
   */
  boolean settle(List<LoadLine> lines) {
    long end = micros() + SETTLING_SECONDS * 1_000_000L;
    long last = micros();
    long before = -1;
    try {
      while (micros() < end) {
        boolean owed = false;
        for (LoadLine line : lines) {
          owed |= line.push();
        }
        read(5);
        long come = delivered(lines) + acknowledged(lines);
        if (owed || come != before) {
          before = come;
          last = micros();
        } else if (micros() - last > QUIET_MICROS) {
          return true;
        }
      }
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
    return false;
  }

  private void read(long millis) throws IOException {
    int ready = millis == 0 ? selector.selectNow() : selector.select(millis);
    if (ready > 0) {
      long now = micros();
      for (SelectionKey key : selector.selectedKeys()) {
        ((LoadLine) key.attachment()).read(now, shared, delivery, acknowledgement);
      }
      selector.selectedKeys().clear();
    }
  }

  private static long delivered(List<LoadLine> lines) {
    return lines.stream().mapToLong(LoadLine::delivered).sum();
  }

  private static long sent(List<LoadLine> lines) {
    return lines.stream().mapToLong(LoadLine::sent).sum();
  }

  private static long acknowledged(List<LoadLine> lines) {
    return lines.stream().mapToLong(LoadLine::acknowledged).sum();
  }
}
