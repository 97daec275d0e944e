package thinclick.client.sound;

import java.util.List;

/** The outputs of a computer. */
interface Outputs {
  /** The names of those that take the click's format, the system's own choice first. */
  List<String> names();

  /**
   * Opens one.
   *
   * @param name one of {@link #names()}, or empty for the system's choice
   * @param bufferFrames how deep a buffer to ask for
   * @throws NoOutput where there is none or it is taken
   */
  OutputLine open(String name, int bufferFrames) throws NoOutput;

  /** There is no sound to be had; the message says why. */
  final class NoOutput extends Exception {
    private static final long serialVersionUID = 1L;

    NoOutput(String message) {
      super(message);
    }
  }
}
