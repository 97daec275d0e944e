package thinclick.server.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.Meter;
import thinclick.server.folder.MaterialFolder;
import thinclick.server.material.Composition;
import thinclick.server.material.DrillCheck;
import thinclick.server.material.pitch.Instrument;

/** The options of {@code compose} that say what is rehearsed, and the drill they make. */
final class ComposeMaterial {
  @Option(
      names = "--title",
      paramLabel = "TEXT",
      description = "The title of what is composed; left out, the drill's.")
  private @Nullable String title;

  @Option(
      names = "--meter",
      paramLabel = "METER",
      description = "2/4 to 7/4, 6/8, 9/8 or 12/8, where no drill is named; 4/4 if left out.")
  private @Nullable String meter;

  @Option(
      names = "--steps-per-beat",
      paramLabel = "N",
      description = "2 eighths, 3 triplets or the eighths of 6/8, 4 sixteenths, 6.")
  private @Nullable Integer stepsPerBeat;

  @Option(
      names = "--groups",
      paramLabel = "\"3 2\"",
      description = "How the beats of a bar stand together.")
  private @Nullable String groups;

  @Option(names = "--entry", paramLabel = "STEP", description = "Where the first chair comes in.")
  private @Nullable Integer entry;

  @Option(
      names = "--instrument",
      paramLabel = "NAMES",
      description = "What is read on, in the chairs' order, commas between; --list instruments.")
  private @Nullable String instrument;

  @Mixin private RhythmOptions rhythm = new RhythmOptions();

  @Mixin private LineOptions lines = new LineOptions();

  @Mixin private RunOptions run = new RunOptions();

  /** The instruments asked for, in the chairs' order; empty where none are. */
  List<Instrument> instruments() {
    if (instrument == null) {
      return List.of();
    }
    return Arrays.stream(instrument.split(",", -1))
        .map(name -> Instrument.find("--instrument", name))
        .toList();
  }

  /** The drill that these options make of a named one, or of even steps. */
  Drill drill(@Nullable String named, MaterialFolder material) {
    Composition made = begin(named, material);
    if (groups != null) {
      List<Integer> together = Typed.numbers("--groups", groups);
      Typed.of(() -> made.groups(together), "--groups");
    }
    rhythm.in(made);
    if (entry != null) {
      int step = entry;
      Typed.of(() -> made.entry(step), "--entry");
    }
    lines.in(made);
    List<Instrument> on = instruments();
    if (!on.isEmpty()) {
      Typed.of(() -> made.instruments(on), "--instrument");
    }
    run.in(made);
    if (title != null) {
      String called = title;
      Typed.of(() -> made.title(called), "--title");
    }
    return Typed.byField(() -> DrillCheck.checked(made.drill()), "--groups");
  }

  private Composition begin(@Nullable String named, MaterialFolder material) {
    if (named == null) {
      if (!rhythm.sayAFigure()) {
        throw new BadInput(
            "compose",
            "expected a drill's title, --cell, --grouping, --euclid or --leave-out, found none;"
                + " --list names the drills");
      }
      return Typed.of(this::even, "--meter", "--steps-per-beat");
    }
    if (meter != null || stepsPerBeat != null) {
      throw new BadInput(
          meter != null ? "--meter" : "--steps-per-beat",
          "expected only where no drill is named, found it beside \"" + named + "\"");
    }
    return Composition.from(found(named, material));
  }

  private Composition even() {
    Meter in = meter == null ? Meter.FOUR_FOUR : Meter.parse(meter);
    int steps = stepsPerBeat == null ? (in.compound() ? 3 : 2) : stepsPerBeat;
    return Composition.even(rhythm.ownTitle(), in, steps);
  }

  private static Drill found(String named, MaterialFolder material) {
    Path file = Path.of(named);
    if (named.endsWith(".json") || Files.isRegularFile(file)) {
      return InputFile.read(file, bytes -> DrillCheck.checked(FileCodec.readDrill(bytes)));
    }
    return material.drill(named);
  }
}
