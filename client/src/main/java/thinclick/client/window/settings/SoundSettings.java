package thinclick.client.window.settings;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thinclick.client.check.Verdict;
import thinclick.client.sound.CountIn;
import thinclick.client.sound.Loudness;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/**
 * What is remembered of sound and input: the chosen output, how loud each output was, what was
 * measured for each output and input together. Measured delays hold for that pair alone.
 *
 * @param output the chosen output; empty for the system's own choice
 * @param silentHere true where another computer sounds the click for all
 * @param hearing how the others are heard; null where nothing was chosen
 * @param countIn how the count-in sounds; absent in files of before it could be spoken
 * @param levels how loud each output was when it was last used
 * @param chairs what was measured, one for each pair
 */
@JsonPropertyOrder({"format", "version"})
public record SoundSettings(
    String format,
    int version,
    String output,
    boolean silentHere,
    Hearing.@Nullable Mode hearing,
    @Nullable CountIn countIn,
    List<Level> levels,
    List<Chair> chairs) {
  /** What {@code format} says. */
  public static final String FORMAT = "thinclick.sound";

  /** The version this code writes and the only one it reads. */
  public static final int VERSION = 1;

  /** What it is called in its folder. */
  public static final String NAME = "sound.json";

  private static final int MOST = 64;

  /** Where nothing is remembered. */
  public static final SoundSettings FIRST =
      new SoundSettings(FORMAT, VERSION, "", false, null, null, List.of(), List.of());

  /** An output's level. */
  public record Level(String output, double dbfs) {
    public Level {
      Check.length("output", Check.present("output", output), 0, 256);
      Check.range("dbfs", dbfs, Loudness.SOFTEST_DBFS, Loudness.CEILING_DBFS);
    }
  }

  /**
   * A measured pair.
   *
   * @param input {@code keys}, or the name of a MIDI input
   */
  public record Chair(
      String output,
      String input,
      Verdict.How how,
      double latencyMillis,
      double uncertaintyMillis,
      int taps) {
    public Chair {
      Check.length("output", Check.present("output", output), 0, 256);
      Check.length("input", Check.present("input", input), 1, 256);
      Check.present("how", how);
      Check.range("latencyMillis", latencyMillis, -350.0, 500.0);
      Check.range("uncertaintyMillis", uncertaintyMillis, 0.0, 250.0);
      Check.range("taps", taps, 8L, 200);
    }

    boolean isOf(String whichOutput, String whichInput) {
      return output.equals(whichOutput) && input.equals(whichInput);
    }
  }

  public SoundSettings {
    if (!FORMAT.equals(format)) {
      throw new BadInput("format", "expected \"" + FORMAT + "\", found \"" + format + "\"");
    }
    if (version != VERSION) {
      throw new BadInput("version", "expected " + VERSION + ", found " + version);
    }
    Check.length("output", Check.present("output", output), 0, 256);
    levels = Check.list("levels", levels);
    Check.size("levels", levels, 0, MOST);
    chairs = Check.list("chairs", chairs);
    Check.size("chairs", chairs, 0, MOST);
  }

  /** The file they are kept in. */
  public static KeptFile<SoundSettings> file(Path folder) {
    return new KeptFile<>(folder, NAME, SoundSettings.class, FIRST);
  }

  /** What an output opens at: never loud, and soft where it was never used. */
  public Loudness opening(String which) {
    return levels.stream()
        .filter(level -> level.output().equals(which))
        .findFirst()
        .map(level -> Loudness.remembered(level.dbfs()))
        .orElse(Loudness.FIRST);
  }

  /** What was measured for a pair. */
  public Optional<Chair> chair(String whichOutput, String whichInput) {
    return chairs.stream().filter(chair -> chair.isOf(whichOutput, whichInput)).findFirst();
  }

  /** With an output's level. */
  public SoundSettings withLevel(String which, double dbfs) {
    List<Level> next = new ArrayList<>(levels);
    next.removeIf(level -> level.output().equals(which));
    next.add(0, new Level(which, dbfs));
    return with(newest(next), chairs);
  }

  /** With a pair's measure in place of an older one. */
  public SoundSettings withChair(Chair measured) {
    List<Chair> next = new ArrayList<>(chairs);
    next.removeIf(chair -> chair.isOf(measured.output(), measured.input()));
    next.add(0, measured);
    return with(levels, newest(next));
  }

  /** Without a pair's measure. */
  public SoundSettings withoutChair(String whichOutput, String whichInput) {
    List<Chair> next = new ArrayList<>(chairs);
    next.removeIf(chair -> chair.isOf(whichOutput, whichInput));
    return with(levels, next);
  }

  /** With another output, its silence, and how the others are heard. */
  public SoundSettings choosing(String which, boolean silent, Hearing.@Nullable Mode how) {
    return new SoundSettings(format, version, which, silent, how, countIn, levels, chairs);
  }

  /** With another count-in. */
  public SoundSettings counting(CountIn how) {
    return new SoundSettings(format, version, output, silentHere, hearing, how, levels, chairs);
  }

  /** How the count-in sounds: clicked where nothing was chosen. */
  public CountIn countsIn() {
    return countIn == null ? CountIn.CLICKED : countIn;
  }

  private SoundSettings with(List<Level> nextLevels, List<Chair> nextChairs) {
    return new SoundSettings(
        format, version, output, silentHere, hearing, countIn, nextLevels, nextChairs);
  }

  private static <T> List<T> newest(List<T> all) {
    return all.subList(0, Math.min(MOST, all.size()));
  }
}
