package thinclick.client.link;

import org.jspecify.annotations.Nullable;

/**
 * An attack as the input delivers it, before the chair's delay is taken off.
 *
 * @param nanos when it happened, this computer's monotonic clock ({@link System#nanoTime()})
 * @param velocity 1-127, or null where the input has none
 * @param pitch MIDI note number, or null for a tap
 * @param lengthMillis how long it was held, or null where not known
 * @param lateByMillis how late the stamp may be at most, never early; null where not measured
 */
public record PlayedAttack(
    long nanos,
    @Nullable Integer velocity,
    @Nullable Integer pitch,
    @Nullable Double lengthMillis,
    @Nullable Double lateByMillis) {

  /** A tap without pitch or velocity. */
  public static PlayedAttack tap(long nanos) {
    return new PlayedAttack(nanos, null, null, null, null);
  }
}
