package thinclick.protocol.file;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/**
 * The pitches that a rhythm carries; rhythm and pitch are separate layers, so any cell carries any
 * line. Either a scale is run through or a progression is outlined.
 *
 * @param key concert key such as {@code "Eb"} or {@code "G minor"}; null for C, or for the key that
 *     the progression comes home to
 * @param scale the scale that is run through, such as {@code "dorian"}, or null where a progression
 *     is given
 * @param pattern the scale cell: degrees counted from 0, repeated from each next degree, such as 0,
 *     2 for broken thirds; null for one degree after the other
 * @param direction where the line goes; null for up and back at the end of the range
 * @param progression chords by bar such as {@code "Dm7 | G7 | Cmaj7 | % |"}, or the name of a known
 *     one; null where a scale is given
 * @param between what stands between the chord notes; null for chord notes alone
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Line(
    @Nullable String key,
    @Nullable String scale,
    @Nullable List<Integer> pattern,
    @Nullable Direction direction,
    @Nullable String progression,
    @Nullable Between between) {

  /** Where a line goes. */
  public enum Direction {
    /** Up to the end of the range, then again from below. */
    @JsonProperty("up")
    UP,
    /** Down to the end of the range, then again from above. */
    @JsonProperty("down")
    DOWN,
    /** Up, and back at each end of the range. */
    @JsonProperty("turning")
    TURNING
  }

  /** What stands between the chord notes of a line over a progression. */
  public enum Between {
    /** Chord notes alone. */
    @JsonProperty("chordNotes")
    CHORD_NOTES,
    /** Notes of the chord's scale on the lighter places. */
    @JsonProperty("passing")
    PASSING,
    /** A half step leads into each arrival. */
    @JsonProperty("approach")
    APPROACH
  }

  public Line {
    if (key != null) {
      Check.length("key", key, 1, 16);
    }
    if ((scale == null) == (progression == null)) {
      throw new BadInput(
          "",
          "expected either scale or progression, found " + (scale == null ? "neither" : "both"));
    }
    if (scale != null) {
      Check.length("scale", scale, 1, 40);
    }
    if (progression != null) {
      Check.length("progression", progression, 1, 2_000);
    }
    if (pattern != null) {
      pattern = Check.list("pattern", pattern);
      Check.size("pattern", pattern, 1, 16);
      for (int i = 0; i < pattern.size(); i++) {
        Check.range("pattern[" + i + "]", pattern.get(i).longValue(), -7, 7);
      }
      if (scale == null) {
        throw new BadInput("pattern", "expected a pattern only with a scale, found one without");
      }
    }
    if (between != null && progression == null) {
      throw new BadInput("between", "expected only with a progression, found one without");
    }
  }

  /** A scale run through one degree after the other. */
  public static Line ofScale(String key, String scale) {
    return new Line(key, scale, null, null, null, null);
  }

  /** Chord notes over a progression. */
  public static Line ofProgression(@Nullable String key, String progression) {
    return new Line(key, null, null, null, progression, null);
  }
}
