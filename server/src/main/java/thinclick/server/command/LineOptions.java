package thinclick.server.command;

import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import thinclick.protocol.file.Line;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.Composition;
import thinclick.server.material.pitch.Key;
import thinclick.server.material.pitch.Progressions;
import thinclick.server.material.pitch.Scale;

/** The options of {@code compose} that give a figure its notes. */
final class LineOptions {
  @Option(
      names = "--key",
      paramLabel = "KEY",
      description = "Concert key such as Eb or \"G minor\".")
  private @Nullable String key;

  @Option(
      names = "--scale",
      paramLabel = "SCALE",
      description = "Run through a scale; --list scales names them.")
  private @Nullable String scale;

  @Option(
      names = "--pattern",
      paramLabel = "\"0 2\"",
      description = "The scale cell in degrees, repeated from each next degree.")
  private @Nullable String pattern;

  @Option(
      names = "--direction",
      paramLabel = "up|down|turning",
      description = "Where the line goes; turning if left out.")
  private @Nullable String direction;

  @Option(
      names = "--progression",
      paramLabel = "CHORDS",
      description = "\"Dm7 | G7 | Cmaj7 | %%\", or a name; --list progressions names them.")
  private @Nullable String progression;

  @Option(
      names = "--between",
      paramLabel = "WHAT",
      description = "Between the chord notes: chord notes, passing or approach.")
  private @Nullable String between;

  /** Gives every chair its line where one is asked for. */
  void in(Composition made) {
    if (scale != null && progression != null) {
      throw new BadInput("--scale", "expected either --scale or --progression, found both");
    }
    if (key == null
        && scale == null
        && progression == null
        && pattern == null
        && direction == null
        && between == null) {
      return;
    }
    if (key != null) {
      Key.tonicOf("--key", key);
    }
    if (scale != null) {
      Scale.find("--scale", scale);
    }
    if (progression != null) {
      Progressions.in("--progression", progression, null);
    }
    Typed.of(
        () -> made.lines(this::line),
        progression != null ? "--progression" : "--scale",
        "--key",
        "--pattern",
        "--between");
  }

  private Line line(@Nullable Line had) {
    @Nullable String itsScale = scale;
    @Nullable String itsChords = progression;
    if (itsScale == null && itsChords == null && had != null) {
      itsScale = had.scale();
      itsChords = had.progression();
    }
    if (itsScale == null && itsChords == null) {
      boolean minor = key != null && key.toLowerCase(Locale.ROOT).endsWith("minor");
      itsScale = minor ? "natural minor" : "major";
    }
    @Nullable Line same = had != null && Objects.equals(had.scale(), itsScale) ? had : null;
    return new Line(
        key != null ? key : had == null ? null : had.key(),
        itsScale,
        pattern != null
            ? Typed.numbers("--pattern", pattern)
            : same == null ? null : same.pattern(),
        direction != null
            ? Typed.word(
                "--direction",
                direction,
                Map.of(
                    "up", Line.Direction.UP,
                    "down", Line.Direction.DOWN,
                    "turning", Line.Direction.TURNING))
            : had == null ? null : had.direction(),
        itsChords,
        itsChords == null ? refused() : between(same));
  }

  private Line.@Nullable Between refused() {
    if (between != null) {
      throw new BadInput("--between", "expected only with --progression, found it with a scale");
    }
    return null;
  }

  private Line.@Nullable Between between(@Nullable Line had) {
    if (between == null) {
      return had == null ? null : had.between();
    }
    return Typed.word(
        "--between",
        between,
        Map.of(
            "chord notes", Line.Between.CHORD_NOTES,
            "passing", Line.Between.PASSING,
            "approach", Line.Between.APPROACH));
  }
}
