package thinclick.server.material;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;
import thinclick.server.material.pitch.DrumVoice;
import thinclick.server.material.pitch.Instrument;
import thinclick.server.material.pitch.Key;
import thinclick.server.material.pitch.Pitch;
import thinclick.server.material.pitch.Transposition;

/**
 * All that a page, a MusicXML file or a MIDI file needs to know of one part.
 *
 * @param heading what stands above the part
 * @param instrument what it is read on
 * @param transposition from written to sounding in this part; the instrument's, or respelled so
 *     that the written key has few accidentals
 * @param meter the meter
 * @param stepsPerBeat 2, 3, 4 or 6
 * @param groups how the beats of a bar stand together where the drill says so, else null
 * @param swing the ratio that stands above straight notes
 * @param bars how many bars are written
 * @param repeatFromBar the bar, from 0, from which the part is repeated to the end; what stands
 *     before is played once
 * @param writtenKey the key signature that is read, or null for rhythm alone
 * @param concertKey the key that sounds, or null for rhythm alone
 * @param notes in order, none reaching over the next
 * @param chords in order; empty without harmony
 * @param bearings one for each note
 * @param groupings in order; empty without a grouping
 * @param comesRoundBar the first bar after the first, from 0, whose line a group begins on again,
 *     {@code bars} where that is the repeat; null where the material has no grouping, never left
 *     the bar line or does not come round until then
 * @param stages the click plan
 * @param freeBars the bars, from 0, in which the player plays freely; nothing is written there
 */
public record WrittenPart(
    Heading heading,
    Instrument instrument,
    Transposition transposition,
    Meter meter,
    int stepsPerBeat,
    @Nullable List<Integer> groups,
    Swing swing,
    int bars,
    int repeatFromBar,
    @Nullable Key writtenKey,
    @Nullable Key concertKey,
    List<Note> notes,
    List<ChordSign> chords,
    List<Bearing> bearings,
    List<Group> groupings,
    @Nullable Integer comesRoundBar,
    List<Stage> stages,
    List<Integer> freeBars) {
  public WrittenPart {
    groups = groups == null ? null : List.copyOf(groups);
    notes = List.copyOf(notes);
    chords = List.copyOf(chords);
    bearings = List.copyOf(bearings);
    groupings = List.copyOf(groupings);
    stages = List.copyOf(stages);
    freeBars = List.copyOf(freeBars);
  }

  /** The same part with the words on its page in another language. */
  public WrittenPart in(Locale language) {
    return new WrittenPart(
        heading.in(language),
        instrument,
        transposition,
        meter,
        stepsPerBeat,
        groups,
        swing,
        bars,
        repeatFromBar,
        writtenKey,
        concertKey,
        notes,
        chords,
        bearings,
        groupings,
        comesRoundBar,
        stages,
        freeBars);
  }

  /**
   * What stands above the part.
   *
   * @param title the drill's title
   * @param chair the chair's or the player's name
   * @param role what the chair does for the whole, or null
   * @param level 1-10
   * @param tempo beats a minute; the dotted quarter in meters of 8
   * @param says who comes in where, a sentence; empty where nothing is to be said
   * @param line what the notes are, as read on this instrument: {@code "E dorian"}, {@code "ii-V-I
   *     in C major"}; null for rhythm alone
   * @param concertLine the same as it sounds: {@code "D dorian"}
   * @param language of the words on the page; {@code says} is in it already
   */
  public record Heading(
      String title,
      String chair,
      @Nullable String role,
      int level,
      double tempo,
      String says,
      @Nullable String line,
      @Nullable String concertLine,
      Locale language) {
    /** The heading of rhythm alone, in English. */
    public Heading(
        String title, String chair, @Nullable String role, int level, double tempo, String says) {
      this(title, chair, role, level, tempo, says, null, null, Locale.ENGLISH);
    }

    /** The same in another language. */
    Heading in(Locale other) {
      return new Heading(title, chair, role, level, tempo, says, line, concertLine, other);
    }
  }

  /**
   * One written attack.
   *
   * @param step its step from bar 1
   * @param lengthSteps how long it is written, steps; never over the next attack
   * @param accent true with an accent
   * @param staccato true where it is cut short
   * @param tenuto true where it is held for all of its length
   * @param written the pitch that is read, or null without pitch
   * @param concert the pitch that sounds, or null without pitch
   * @param voice what is struck, or null with pitch
   */
  public record Note(
      int step,
      int lengthSteps,
      boolean accent,
      boolean staccato,
      boolean tenuto,
      @Nullable Pitch written,
      @Nullable Pitch concert,
      @Nullable DrumVoice voice) {}

  /**
   * A chord symbol.
   *
   * @param bar its bar, from 0
   * @param stepInBar its step in the bar, from 0
   * @param written as the reader's instrument reads it: {@code "Gm7"}
   * @param concert as it sounds: {@code "Fm7"}
   */
  public record ChordSign(int bar, int stepInBar, String written, String concert) {}
}
