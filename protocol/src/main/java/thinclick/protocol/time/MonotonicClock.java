package thinclick.protocol.time;

/** A clock that only goes forward. Given to whoever needs it, never fetched. */
@FunctionalInterface
public interface MonotonicClock {
  /** The computer's own monotonic clock. */
  MonotonicClock SYSTEM = System::nanoTime;

  /** Nanoseconds since an arbitrary but fixed origin; may be negative. */
  long nanos();
}
