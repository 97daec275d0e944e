package thinclick.client.sound;

/** Something that can sound at an instant: samples, of which one belongs there. */
public sealed interface Sound permits SpokenNumber, Voice {
  /** How long it sounds, frames. */
  int frames();

  /** One sample, as a share of the click's peak. */
  float sample(int frame);

  /** How many frames it begins before the instant that it is placed at. */
  default int lead() {
    return 0;
  }

  /** True for what sounds on bar lines alone. */
  default boolean ofTheOne() {
    return false;
  }
}
