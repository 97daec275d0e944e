package thinclick.server.export;

import java.util.List;
import thinclick.protocol.music.Click;
import thinclick.protocol.music.StepGrid;

/**
 * What a MIDI file holds: a grid in time, the click that is left, and the parts.
 *
 * @param title the sequence's name
 * @param grid meter, tempo and swing; its start is not used
 * @param bars how many bars the parts last, without the count-in
 * @param countInBars clicked bars before bar 1, 0 to 4
 * @param clicks the clicks from bar 1 on; empty for none
 * @param parts the chairs
 */
public record MidiScore(
    String title,
    StepGrid grid,
    int bars,
    int countInBars,
    List<Click> clicks,
    List<MidiPart> parts) {
  public MidiScore {
    clicks = List.copyOf(clicks);
    parts = List.copyOf(parts);
  }
}
