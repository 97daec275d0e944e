package thinclick.client.clock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** One offset for every ten seconds of the last five minutes, and the slope through them. */
final class SkewBlocks {
  /** Length of a block. */
  static final long BLOCK_NANOS = 10_000_000_000L;

  /** How far back blocks are kept. */
  static final long KEPT_NANOS = 300_000_000_000L;

  private static final int FEWEST = 3;

  private record Block(double seconds, double offsetMicros, double spreadMicros) {}

  private final List<Exchange> open = new ArrayList<>();
  private final List<Block> blocks = new ArrayList<>();
  private Skew skew = Skew.UNKNOWN;

  /** Adds the newest exchange; every ten seconds the skew is looked at anew. */
  void add(Exchange exchange) {
    if (!open.isEmpty() && exchange.sentNanos() - open.get(0).sentNanos() >= BLOCK_NANOS) {
      close();
    }
    open.add(exchange);
  }

  /** What is believed of the skew. */
  Skew skew() {
    return skew;
  }

  void clear() {
    open.clear();
    blocks.clear();
    skew = Skew.UNKNOWN;
  }

  private void close() {
    long first = open.get(0).sentNanos();
    long middle = first + (open.get(open.size() - 1).arrivedNanos() - first) / 2;
    if (open.size() >= OffsetEstimator.ENOUGH) {
      OffsetEstimate block = OffsetEstimator.estimate(Ways.of(open, middle, skew.ppm()));
      blocks.add(new Block(middle / 1e9, block.offsetMicros(), block.spreadMicros()));
    }
    open.clear();
    double oldest = (middle - KEPT_NANOS) / 1e9;
    blocks.removeIf(block -> block.seconds() < oldest);
    skew = look();
  }

  private Skew look() {
    int count = blocks.size();
    if (count < FEWEST) {
      return Skew.UNKNOWN;
    }
    double[] seconds = blocks.stream().mapToDouble(Block::seconds).toArray();
    double[] offsets = blocks.stream().mapToDouble(Block::offsetMicros).toArray();
    double slope = Numbers.theilSen(seconds, offsets);
    double[] left = new double[count];
    Arrays.setAll(left, i -> offsets[i] - slope * seconds[i]);
    double middle = Numbers.median(left);
    double scatter =
        1.4826 * Numbers.median(Arrays.stream(left).map(v -> Math.abs(v - middle)).toArray());
    double own = Numbers.median(blocks.stream().mapToDouble(Block::spreadMicros).toArray());
    // Few blocks know little of their own scatter, and a still line has none to show.
    double doubt = Math.sqrt((count + 6.0) / count);
    double sd = Math.max(1, doubt * Math.max(scatter, own));
    return Skew.believed(slope, Numbers.slopeError(seconds, sd));
  }
}
