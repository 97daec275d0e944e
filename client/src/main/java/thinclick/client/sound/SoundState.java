package thinclick.client.sound;

/** Where the sound output stands. */
public enum SoundState {
  /** Nothing was tried yet. */
  UNTRIED,
  /** Frames are being played. */
  SOUNDING,
  /** There is no output; the click only shows. */
  NONE,
  /** The output has gone in the middle; it is looked for again. */
  LOST
}
