package thinclick.server.material;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Line;
import thinclick.protocol.music.Meter;
import thinclick.server.material.pitch.Key;
import thinclick.server.material.pitch.Pitch;
import thinclick.server.material.pitch.PitchName;
import thinclick.server.material.pitch.Progression;
import thinclick.server.material.pitch.Progressions;
import thinclick.server.material.pitch.Range;
import thinclick.server.material.pitch.Scale;
import thinclick.server.material.pitch.Transposition;

/**
 * The pitches for a rhythm.
 *
 * @param notes one for each attack, as they sound
 * @param chords the chords under them; empty for a scale
 * @param key whose signature is written, as it sounds
 * @param root the root of the scale or of the key, as it sounds
 * @param kind what the line is, without its root: {@code "dorian"}, {@code "ii-V-I"}
 */
record LineWriter(List<Pitch> notes, List<ChordAt> chords, Key key, PitchName root, String kind) {

  /**
   * Where the attacks of a line stand.
   *
   * @param attacks their steps, ascending
   * @param bars bars written
   * @param repeatFromBar the bar from which they are repeated
   */
  record Rhythm(
      List<Integer> attacks,
      Meter meter,
      int stepsPerBeat,
      @Nullable List<Integer> groups,
      int bars,
      int repeatFromBar) {}

  static LineWriter write(Line line, Rhythm rhythm, Range range) {
    return line.scale() != null
        ? scale(line, line.scale(), rhythm, range)
        : chords(line, Objects.requireNonNull(line.progression()), rhythm, range);
  }

  private static LineWriter scale(Line line, String name, Rhythm rhythm, Range range) {
    Scale scale = Scale.find("scale", name);
    PitchName root = line.key() == null ? PitchName.C : Key.tonicOf("key", line.key());
    ScaleLine written =
        new ScaleLine(
            scale,
            root,
            line.pattern() == null ? List.of(0) : line.pattern(),
            direction(line),
            range);
    return new LineWriter(
        written.write(rhythm.attacks().size()),
        List.of(),
        scale.signature(root),
        root,
        scale.name());
  }

  private static LineWriter chords(Line line, String text, Rhythm rhythm, Range range) {
    @Nullable Key asked = line.key() == null ? null : Key.parse("key", line.key());
    Progression progression = Progressions.in("progression", text, asked);
    Key key = Progressions.home("progression", text, asked);
    Harmony harmony =
        Harmony.lay(
            progression,
            rhythm.meter(),
            rhythm.stepsPerBeat(),
            rhythm.groups(),
            rhythm.bars(),
            rhythm.repeatFromBar());
    int[] weights = MetricWeights.ofBar(rhythm.meter(), rhythm.stepsPerBeat(), rhythm.groups());
    List<Pitch> notes =
        new ChordLine(harmony, key, range, weights)
            .write(
                rhythm.attacks(),
                rhythm.bars() * weights.length,
                direction(line),
                line.between() == null ? Line.Between.CHORD_NOTES : line.between());
    return new LineWriter(
        notes, harmony.chords(), key, key.tonic(), Progressions.properName(text).orElse(""));
  }

  private static Line.Direction direction(Line line) {
    return line.direction() == null ? Line.Direction.TURNING : line.direction();
  }

  /** How many bars a line lasts by itself; 1 for a scale, which goes on as it likes. */
  static int barsOf(@Nullable Line line) {
    if (line == null || line.progression() == null) {
      return 1;
    }
    return Progressions.in("progression", line.progression(), null).bars().size();
  }

  /** What the line is, as it is read: {@code "E dorian"}, {@code "ii-V-I in C major"}. */
  String words(Transposition transposition) {
    PitchName read = transposition.written(root);
    if (chords.isEmpty()) {
      return read.words() + " " + kind;
    }
    String home = new Key(transposition.written(key.tonic()), key.minor()).words();
    return kind.isEmpty() ? home : kind + " in " + home;
  }
}
