package thinclick.server.engraving;

import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.server.material.pitch.DrumVoice;
import thinclick.server.material.pitch.Pitch;

/**
 * A note as it is read.
 *
 * @param span when it sounds
 * @param pitch what is read on a pitched staff; null on a rhythm staff
 * @param position its place in half spaces above the middle line
 * @param voice what is struck; null with pitch
 * @param head the notehead's shape
 * @param articulations the signs it carries
 */
public record StaffNote(
    NoteSpan span,
    @Nullable Pitch pitch,
    int position,
    @Nullable DrumVoice voice,
    Head head,
    Set<Articulation> articulations) {
  public StaffNote {
    articulations = Set.copyOf(articulations);
  }

  /** A note on a pitched staff. */
  public static StaffNote pitched(
      int start, int length, Clef clef, Pitch pitch, Set<Articulation> articulations) {
    int position = clef.position(pitch);
    return new StaffNote(
        new NoteSpan(start, length), pitch, position, null, Head.NORMAL, articulations);
  }

  /**
   * A stroke on a staff for percussion.
   *
   * @param position its place in half spaces above the middle line
   */
  public static StaffNote struck(
      int start, int length, DrumVoice voice, int position, Set<Articulation> articulations) {
    Head head = voice.cross() ? Head.CROSS : Head.NORMAL;
    return new StaffNote(new NoteSpan(start, length), null, position, voice, head, articulations);
  }

  /** The same note, ending earlier. */
  StaffNote until(int step) {
    NoteSpan shorter = new NoteSpan(span.start(), step - span.start());
    return new StaffNote(shorter, pitch, position, voice, head, articulations);
  }

  /** A note without pitch. */
  public static StaffNote unpitched(
      int start, int length, int position, Head head, Set<Articulation> articulations) {
    return new StaffNote(new NoteSpan(start, length), null, position, null, head, articulations);
  }
}
