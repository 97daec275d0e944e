package thinclick.client.sound;

/** Room time against this computer's monotonic clock, as believed now; allocates nothing. */
public interface RoomTimes {
  /** The instant of the monotonic clock at which the room's shows {@code micros}. */
  long nanosOf(long micros);

  /** Room time at an instant of the monotonic clock. */
  long roomMicros(long nanos);
}
