package thinclick.client.sound;

/**
 * A place where frames are written and, later, heard: 16 bits, two channels, {@link Voice#RATE}
 * frames a second. One thread uses it.
 */
interface OutputLine extends AutoCloseable {
  /** How many frames fit into its buffer. */
  int bufferFrames();

  /** How many frames can be written now without waiting. */
  int availableFrames();

  /** How many frames it says it has played since it was opened. */
  long playedFrames();

  /**
   * Writes frames, waiting where there is no room.
   *
   * @param bytes four a frame, little end first
   * @return how many frames it took; fewer where the device is gone
   */
  int write(byte[] bytes, int frames);

  /** May hang where the device is gone; called on a thread that nobody waits for. */
  @Override
  void close();
}
