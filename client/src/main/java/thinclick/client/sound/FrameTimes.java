package thinclick.client.sound;

/** Where room time falls among the frames of an output; allocates nothing. */
@FunctionalInterface
interface FrameTimes {
  /** The frame, with its fraction, that is heard at a room time. */
  double frameAt(long micros);
}
