package thinclick.server.gathering;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * When each tick of a recording sounds. Times are exact fractions until the last rounding: in ticks
 * of a quarter they are counted as micros times ticks a quarter.
 */
final class TempoMap {
  /** 120 quarters a minute, where a file says nothing (RP-001). */
  static final long DEFAULT_MICROS_A_QUARTER = 500_000;

  private record Segment(long fromTick, long fromScaled, long scaledATick) {}

  private final List<Segment> segments = new ArrayList<>();
  private final long scale;

  /**
   * @param division the file's division word
   * @param changes micros a quarter from each tick on; ignored under SMPTE time
   */
  TempoMap(short division, Map<Long, Long> changes) {
    if (division < 0) {
      int frames = -(division >> 8);
      int ticks = division & 0xff;
      // 29 stands for 30 frames in 1.001 s.
      scale = frames == 29 ? 30_000L * ticks : (long) frames * ticks;
      segments.add(new Segment(0, 0, frames == 29 ? 1_001_000_000L : 1_000_000));
      return;
    }
    scale = division;
    TreeMap<Long, Long> ordered = new TreeMap<>(changes);
    ordered.putIfAbsent(0L, DEFAULT_MICROS_A_QUARTER);
    ordered.forEach(
        (tick, micros) ->
            segments.add(new Segment(tick, segments.isEmpty() ? 0 : scaledAt(tick), micros)));
  }

  /**
   * Micros from the file's start.
   *
   * @throws ArithmeticException where they are more than a long holds
   */
  long microsAt(long tick) {
    long scaled = scaledAt(tick);
    return Math.floorDiv(Math.addExact(scaled, scale / 2), scale);
  }

  private long scaledAt(long tick) {
    int low = 0;
    int high = segments.size() - 1;
    while (low < high) {
      int middle = (low + high + 1) >>> 1;
      if (segments.get(middle).fromTick <= tick) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    Segment in = segments.get(low);
    return Math.addExact(in.fromScaled, Math.multiplyExact(tick - in.fromTick, in.scaledATick));
  }
}
