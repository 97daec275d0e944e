package thinclick.server.material.pitch;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.Nearest;

/**
 * A chord on a root, with another note in the bass where one is written.
 *
 * @param root its root
 * @param quality what stands on it
 * @param bass the bass note, or null for the root
 */
public record Chord(PitchName root, ChordQuality quality, @Nullable PitchName bass) {
  private static final Pattern WRITTEN = Pattern.compile("([A-G][b#\u266d\u266f]?)(.*)");
  private static final Pattern WITH_BASS = Pattern.compile("(.*)/([A-G][b#]?)");

  /** Reads {@code "Dm7"}, {@code "Bbmaj7"}, {@code "G7/B"}. */
  public static Chord parse(String where, String written) {
    String plain = written.replace('\u266d', 'b').replace('\u266f', '#');
    Matcher slash = WITH_BASS.matcher(plain);
    @Nullable PitchName bass = null;
    if (slash.matches()) {
      bass = PitchName.parse(where, slash.group(2));
      plain = slash.group(1);
    }
    Matcher matcher = WRITTEN.matcher(plain);
    if (!matcher.matches()) {
      throw new BadInput(
          where, "expected a chord such as Dm7, G7 or Bbmaj7, found \"" + written + "\"");
    }
    String kind = matcher.group(2);
    ChordQuality quality =
        ChordQuality.find(kind)
            .orElseThrow(
                () ->
                    new BadInput(
                        where,
                        "expected a known kind of chord, found \""
                            + kind
                            + "\" in \""
                            + written
                            + "\"; "
                            + Nearest.didYouMean(kind, ChordQuality.symbols())));
    return new Chord(PitchName.parse(where, matcher.group(1)), quality, bass);
  }

  /** Its notes, the root first, without octaves. */
  public List<PitchName> notes() {
    return quality.degrees().stream().map(degree -> degree.above(root)).toList();
  }

  /** The notes that a line runs through: all, or without the root where there is a ninth. */
  public List<PitchName> frame() {
    return quality.frame().stream().map(degree -> degree.above(root)).toList();
  }

  /** The notes that fill it: those of the key where it belongs to the key, else its own scale's. */
  public List<PitchName> scaleIn(Key key) {
    List<PitchName> ofKey =
        Scale.find("scale", key.minor() ? "natural minor" : "major").notes(key.tonic());
    return ofKey.containsAll(notes()) ? ofKey : quality.scale().notes(root);
  }

  /** This chord with every note moved, on a root of at most one accidental. */
  public Chord up(int letters, int semitones) {
    return new Chord(
        root.up(letters, semitones).readable(),
        quality,
        bass == null ? null : bass.up(letters, semitones).readable());
  }

  /** As it is written: {@code "Bbm7b5"}. */
  @Override
  public String toString() {
    return root + quality.symbol() + (bass == null ? "" : "/" + bass);
  }
}
