package thinclick.client.sound;

import java.util.function.LongUnaryOperator;

/** Room time against this computer's monotonic clock, as believed now; allocates nothing. */
public interface RoomTimes {
  /** The instant of the monotonic clock at which the room's shows {@code micros}. */
  long nanosOf(long micros);

  /** Room time at an instant of the monotonic clock. */
  long roomMicros(long nanos);

  /** Those of two clocks that run alike: when one shows {@code micros}, the other {@code nanos}. */
  static RoomTimes meeting(long micros, long nanos) {
    return of(
        atMicros -> nanos + (atMicros - micros) * 1_000,
        atNanos -> micros + Math.floorDiv(atNanos - nanos, 1_000L));
  }

  /** Those of somebody who knows both ways. */
  static RoomTimes of(LongUnaryOperator nanosOf, LongUnaryOperator roomMicros) {
    return new RoomTimes() {
      @Override
      public long nanosOf(long micros) {
        return nanosOf.applyAsLong(micros);
      }

      @Override
      public long roomMicros(long nanos) {
        return roomMicros.applyAsLong(nanos);
      }
    };
  }
}
