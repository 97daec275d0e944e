package thinclick.client.input;

import java.util.List;
import thinclick.client.link.PlayedAttack;

/** Hears MIDI inputs; called on threads of the MIDI system. */
public interface MidiEar {
  /**
   * A note was struck.
   *
   * @param input the name of the input
   */
  void struck(String input, PlayedAttack attack);

  /** The open inputs have changed; their names in the system's order. */
  void inputsChanged(List<String> names);
}
