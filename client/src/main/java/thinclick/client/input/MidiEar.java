package thinclick.client.input;

import java.util.List;
import thinclick.client.link.PlayedAttack;

/** Hears MIDI inputs; called on threads of the MIDI system. */
public interface MidiEar {
  /**
   * A note was struck.
   *
   * @param input the name of the input
   * @param channel 0-15
   */
  void struck(String input, int channel, PlayedAttack attack);

  /**
   * A note that was struck has been let go.
   *
   * @param attack the very one it was struck with
   * @param nanos when, this computer's monotonic clock
   */
  void released(String input, int channel, PlayedAttack attack, long nanos);

  /**
   * What counts as an attack on one input has been learned.
   *
   * @param input the name of the input
   */
  void learned(String input, NoteFilter filter);

  /** The open inputs have changed; their names in the system's order. */
  void inputsChanged(List<String> names);
}
