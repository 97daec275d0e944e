package thinclick.client.sound;

import java.util.function.LongUnaryOperator;

/** Room time against this computer's monotonic clock, as believed now; allocates nothing. */
public interface RoomTimes {
  /** The instant of the monotonic clock at which the room's shows {@code micros}. */
  long nanosOf(long micros);

  /** Room time at an instant of the monotonic clock. */
  long roomMicros(long nanos);

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
