package thinclick.protocol.file;

import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/**
 * A stretch of room time, {@code fromMicros} included, {@code toMicros} not.
 *
 * @param fromMicros its beginning
 * @param toMicros its end, not before the beginning
 */
public record Span(long fromMicros, long toMicros) {
  public Span {
    Check.range("fromMicros", fromMicros, -Check.MAX_SAFE, Check.MAX_SAFE);
    Check.range("toMicros", toMicros, -Check.MAX_SAFE, Check.MAX_SAFE);
    if (toMicros < fromMicros) {
      throw new BadInput(
          "toMicros", "expected at least fromMicros, " + fromMicros + ", found " + toMicros);
    }
  }

  /** True where the instant lies inside. */
  public boolean contains(double micros) {
    return micros >= fromMicros && micros < toMicros;
  }
}
