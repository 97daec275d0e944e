package thinclick.client.link;

import java.util.Random;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Whether and when a link tries again after its connection ended. */
final class Retry {
  private static final long FIRST_MILLIS = 250;
  private static final long LONGEST_MILLIS = 10_000;

  /** Endings after which trying again would end the same way. */
  private static final Set<Integer> FINAL =
      Set.of(
          1000,
          1003,
          1007,
          1008,
          1009,
          Socket.NOT_TRUSTED,
          4400,
          4401,
          4403,
          4404,
          4409,
          4410,
          4426);

  /** Endings of somebody who was never in that say "not now", not "not here". */
  private static final Set<Integer> PASSING = Set.of(1001, 1006, 1011, 1013, 4408, 4429);

  private final Random spread;
  private int failures;
  private @Nullable Long asked;

  Retry(long seed) {
    spread = new Random(seed);
  }

  /** True where the close code is an answer, not an accident. */
  static boolean isFinal(int code) {
    return FINAL.contains(code);
  }

  /** True where a first attempt that ended so may go better soon: the host is there, but busy. */
  static boolean passes(int code) {
    return PASSING.contains(code);
  }

  /** The server said when it wants to be asked again. */
  void asked(@Nullable Long afterMillis) {
    asked = afterMillis;
  }

  /** Welcomed: the next failure is the first again. */
  void succeeded() {
    failures = 0;
    asked = null;
  }

  /** How long to wait now: doubling, spread by a fifth either way so that a class does not rush. */
  long nextMillis() {
    long doubling = Math.min(LONGEST_MILLIS, FIRST_MILLIS << Math.min(failures, 10));
    failures++;
    long base = asked == null ? doubling : Math.max(asked, doubling);
    asked = null;
    return Math.round(base * (0.8 + 0.4 * spread.nextDouble()));
  }
}
