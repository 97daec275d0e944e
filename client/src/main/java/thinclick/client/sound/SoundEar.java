package thinclick.client.sound;

/** Hears what becomes of the sound; called on the sound's own thread. */
public interface SoundEar {
  /**
   * The output came, went or was not there.
   *
   * @param output its name; empty where there is none
   */
  void soundChanged(SoundState state, String output);

  /** The click did not sound as planned between two room times, both in microseconds. */
  void clickInterrupted(long fromMicros, long toMicros);
}
