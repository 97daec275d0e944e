package thinclick.client.link;

import org.jspecify.annotations.Nullable;
import thinclick.client.clock.ClockView;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.message.TakeMessage.WireAttack;

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

  /**
   * The attack in room time, less what its chair is late by; unsure while the clock is not steady.
   *
   * @param clock what is believed of room time at this moment
   * @param chairLateMillis how late stamps are at this chair, positive late
   */
  WireAttack stamped(ClockView clock, double chairLateMillis) {
    double raw = clock.mapping().roomAt(nanos);
    return new WireAttack(
        Math.max(0, Math.round(raw - chairLateMillis * 1e3)),
        chairLateMillis == 0 ? null : (Long) Math.max(0, Math.round(raw)),
        velocity,
        pitch,
        lengthMillis,
        lateByMillis,
        clock.state() != ClockState.STEADY);
  }

  /** How long it was held, tenths of a millisecond, where it was released at that instant. */
  double heldMillis(long releasedNanos) {
    return Math.round(Math.max(0, releasedNanos - nanos) / 1e5) / 10.0;
  }
}
