package thinclick.server.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Line;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Swing;
import thinclick.server.folder.MaterialFolder;
import thinclick.server.material.Cells;
import thinclick.server.material.ClickPlans;
import thinclick.server.material.Composition;
import thinclick.server.material.DrillCheck;
import thinclick.server.material.Euclid;
import thinclick.server.material.GroupedCell;
import thinclick.server.material.Nearest;
import thinclick.server.material.Places;
import thinclick.server.material.pitch.Instrument;
import thinclick.server.material.pitch.Key;
import thinclick.server.material.pitch.Progressions;
import thinclick.server.material.pitch.Scale;

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

  @Option(
      names = "--cell",
      paramLabel = "\"0 3 6\"",
      description = "The attacked steps, from 0; with --grouping, those inside the group.")
  private @Nullable String cell;

  @Option(
      names = "--grouping",
      paramLabel = "N",
      description = "Groups of 2 to 12 steps across the bar lines.")
  private @Nullable Integer grouping;

  @Option(names = "--period", paramLabel = "BARS", description = "Bars until it starts again.")
  private @Nullable Integer period;

  @Option(
      names = "--tail",
      paramLabel = "upbeat|downbeat",
      description = "Where the tail of a grouping ends: on the last upbeat or the last beat.")
  private @Nullable String tail;

  @Option(
      names = "--euclid",
      paramLabel = "\"3 8\"",
      description = "So many attacks as evenly as they go into so many steps.")
  private @Nullable String euclid;

  @Option(
      names = "--leave-out",
      paramLabel = "N",
      description = "Leave out the heaviest positions: 1 the one, 2 group beginnings, 3 beats ...")
  private @Nullable Integer leaveOut;

  @Option(
      names = "--without",
      paramLabel = "\"0 4\"",
      description = "Leave out these steps of the cell.")
  private @Nullable String without;

  @Option(names = "--begin-off", description = "Begin off the beat.")
  private boolean beginOff;

  @Option(
      names = "--end-off",
      arity = "0..1",
      fallbackValue = "0",
      paramLabel = "STEPS",
      description = "End on an upbeat, written so many steps long.")
  private @Nullable Integer endOff;

  @Option(names = "--retrograde", description = "Read the cell backwards.")
  private boolean retrograde;

  @Option(
      names = "--rotate",
      paramLabel = "N",
      description = "Begin on the cell's attack number N, counted from 0.")
  private @Nullable Integer rotate;

  @Option(
      names = "--displace",
      paramLabel = "N",
      description = "Move the cell later by N steps, round itself; negative is earlier.")
  private @Nullable Integer displace;

  @Option(names = "--augment", paramLabel = "N", description = "Make everything N times as long.")
  private @Nullable Integer augment;

  @Option(names = "--accents", paramLabel = "\"0 6\"", description = "Accents on these steps.")
  private @Nullable String accents;

  @Option(names = "--staccato", paramLabel = "\"0 6\"", description = "These steps cut short.")
  private @Nullable String staccato;

  @Option(names = "--tenuto", paramLabel = "\"0 6\"", description = "These steps held.")
  private @Nullable String tenuto;

  @Option(
      names = "--lengths",
      paramLabel = "\"2 1 1\"",
      description = "The written length of each attack, steps.")
  private @Nullable String lengths;

  @Option(names = "--entry", paramLabel = "STEP", description = "Where the first chair comes in.")
  private @Nullable Integer entry;

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

  @Option(
      names = "--instrument",
      paramLabel = "NAMES",
      description = "What is read on, in the chairs' order, commas between; --list instruments.")
  private @Nullable String instrument;

  @Option(
      names = "--deal",
      paramLabel = "WAY",
      description = "How it is shared out; --list deals names the ways.")
  private @Nullable String deal;

  @Option(names = "--seed", paramLabel = "N", description = "Settles every free choice.")
  private @Nullable Long seed;

  @Option(names = "--tempo", paramLabel = "BPM", description = "Beats a minute, 30 to 320.")
  private @Nullable Double tempo;

  @Option(
      names = "--swing",
      paramLabel = "RATIO|band",
      description = "Long to short, 1 to 4, or as the band plays it.")
  private @Nullable String swing;

  @Option(
      names = "--plan",
      paramLabel = "PLAN",
      description = {
        "The click: \"first only\", \"all beats to every second bar\", several with commas;",
        "--list plans names them."
      })
  private @Nullable String plan;

  @Option(names = "--stage-bars", paramLabel = "N", description = "Bars of each stage.")
  private @Nullable Integer stageBars;

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
      made.groups(numbers("--groups", groups));
    }
    rhythm(made);
    if (entry != null) {
      made.entry(entry);
    }
    lines(made);
    List<Instrument> on = instruments();
    if (!on.isEmpty()) {
      made.instruments(on);
    }
    around(made);
    if (title != null) {
      made.title(title);
    }
    return DrillCheck.checked(made.drill());
  }

  private Composition begin(@Nullable String named, MaterialFolder material) {
    if (named == null) {
      if (cell == null && grouping == null && euclid == null && leaveOut == null) {
        throw new BadInput(
            "compose",
            "expected a drill's title, --cell, --grouping, --euclid or --leave-out, found none;"
                + " --list names the drills");
      }
      Meter in = meter == null ? Meter.FOUR_FOUR : Meter.parse(meter);
      int steps = stepsPerBeat == null ? (in.compound() ? 3 : 2) : stepsPerBeat;
      return Composition.even(ownTitle(), in, steps);
    }
    if (meter != null || stepsPerBeat != null) {
      throw new BadInput(
          meter != null ? "--meter" : "--steps-per-beat",
          "expected only where no drill is named, found it beside \"" + named + "\"");
    }
    return Composition.from(found(named, material));
  }

  private String ownTitle() {
    if (grouping != null) {
      String groupsOf = Places.groupsOf(grouping);
      return "Own " + groupsOf;
    }
    return euclid != null ? "Own even cell " + euclid.strip() : "Own cell";
  }

  private static Drill found(String named, MaterialFolder material) {
    Path file = Path.of(named);
    if (named.endsWith(".json") || Files.isRegularFile(file)) {
      return InputFile.read(file, bytes -> DrillCheck.checked(FileCodec.readDrill(bytes)));
    }
    return material.drill(named);
  }

  private void rhythm(Composition made) {
    List<Integer> steps = cell == null ? null : numbers("--cell", cell);
    if (grouping != null) {
      made.grouping(grouping, steps, period, aim());
    } else if (euclid != null) {
      List<Integer> two = numbers("--euclid", euclid);
      if (two.size() != 2) {
        throw new BadInput(
            "--euclid", "expected attacks and steps such as \"3 8\", found \"" + euclid + "\"");
      }
      made.cell(Euclid.cell(two.get(0), two.get(1)));
    } else if (steps != null) {
      made.cell(steps, period);
    }
    if (tail != null && grouping == null) {
      throw new BadInput("--tail", "expected only with --grouping, found it without");
    }
    if (period != null && grouping == null && steps == null) {
      made.period(period);
    }
    if (retrograde) {
      made.every(Cells::retrograde);
    }
    if (rotate != null) {
      int first = rotate;
      made.every(one -> Cells.rotate(one, first));
    }
    if (displace != null) {
      int by = displace;
      made.every(one -> Cells.displace(one, by));
    }
    if (augment != null) {
      int times = augment;
      made.every(one -> Cells.augment(one, times));
    }
    omissions(made);
    if (accents != null) {
      List<Integer> on = numbers("--accents", accents);
      made.every(one -> Cells.accented(one, on));
    }
    if (staccato != null) {
      List<Integer> on = numbers("--staccato", staccato);
      made.every(one -> Cells.staccato(one, on));
    }
    if (tenuto != null) {
      List<Integer> on = numbers("--tenuto", tenuto);
      made.every(one -> Cells.tenuto(one, on));
    }
    if (lengths != null) {
      List<Integer> each = numbers("--lengths", lengths);
      made.every(one -> Cells.withLengths(one, each));
    }
  }

  private void omissions(Composition made) {
    if (leaveOut != null) {
      int levels = leaveOut;
      made.every(
          one ->
              Cells.leaveOutHeaviest(
                  one, levels, made.meter(), made.stepsPerBeat(), made.groups()));
    }
    if (without != null) {
      List<Integer> out = numbers("--without", without);
      made.every(one -> Cells.leaveOut(one, out));
    }
    if (beginOff) {
      made.every(one -> Cells.beginOffBeat(one, made.stepsPerBeat()));
    }
    if (endOff != null) {
      @Nullable Integer length = endOff == 0 ? null : endOff;
      made.every(one -> Cells.endOffBeat(one, made.meter(), made.stepsPerBeat(), length));
    }
  }

  private GroupedCell.Aim aim() {
    return tail == null
        ? GroupedCell.Aim.UPBEAT
        : word(
            "--tail",
            tail,
            Map.of("upbeat", GroupedCell.Aim.UPBEAT, "downbeat", GroupedCell.Aim.DOWNBEAT));
  }

  private void lines(Composition made) {
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
    made.lines(this::line);
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
        pattern != null ? numbers("--pattern", pattern) : same == null ? null : same.pattern(),
        direction != null
            ? word(
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
    return word(
        "--between",
        between,
        Map.of(
            "chord notes", Line.Between.CHORD_NOTES,
            "passing", Line.Between.PASSING,
            "approach", Line.Between.APPROACH));
  }

  private void around(Composition made) {
    if (deal != null) {
      made.deal(way(deal));
    }
    if (seed != null) {
      made.seed(seed);
    }
    if (tempo != null) {
      made.tempo(tempo);
    }
    if (swing != null) {
      made.swing(ratio(swing));
    }
    if (plan != null) {
      made.plan(ClickPlans.parse("--plan", plan, made.meter(), made.groups()));
    }
    if (stageBars != null) {
      made.stageBars(stageBars);
    }
  }

  private static Swing ratio(String written) {
    if ("band".equals(written.strip())) {
      return Swing.BAND;
    }
    try {
      return Swing.of(Double.parseDouble(written.strip()));
    } catch (NumberFormatException notANumber) {
      throw new BadInput(
          "--swing", "expected a ratio from 1 to 4 or band, found \"" + written + "\"");
    }
  }

  private static DealKind way(String written) {
    return word("--deal", written, ways());
  }

  /** The ways of dealing by the words they are asked for with. */
  static Map<String, DealKind> ways() {
    return Arrays.stream(DealKind.values())
        .collect(
            Collectors.toMap(
                kind -> kind.name().toLowerCase(Locale.ROOT).replace('_', ' '),
                Function.identity(),
                (one, other) -> one,
                LinkedHashMap::new));
  }

  /** The value of a word in any case, hyphens for spaces; a miss names the nearest. */
  static <T> T word(String where, String typed, Map<String, T> words) {
    @Nullable T found = words.get(Nearest.folded(typed));
    if (found == null) {
      throw new BadInput(
          where,
          "expected "
              + String.join(", ", words.keySet().stream().sorted().toList())
              + ", found \""
              + typed
              + "\"; "
              + Nearest.didYouMean(typed, words.keySet()));
    }
    return found;
  }

  /** Whole numbers with spaces or commas between. */
  static List<Integer> numbers(String where, String written) {
    List<Integer> numbers = new ArrayList<>();
    for (String piece : written.strip().split("[\\s,]+", -1)) {
      try {
        numbers.add(Integer.parseInt(piece));
      } catch (NumberFormatException notANumber) {
        throw new BadInput(
            where, "expected whole numbers such as \"0 3 6\", found \"" + written + "\"");
      }
    }
    return numbers;
  }
}
