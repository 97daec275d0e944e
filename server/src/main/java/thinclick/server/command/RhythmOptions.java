package thinclick.server.command;

import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.Cells;
import thinclick.server.material.Composition;
import thinclick.server.material.Euclid;
import thinclick.server.material.GroupedCell;
import thinclick.server.material.Places;

/** The options of {@code compose} that say which steps are attacked, how long and how. */
final class RhythmOptions {
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

  /** Whether these say a figure, so that no drill need be named. */
  boolean sayAFigure() {
    return cell != null || grouping != null || euclid != null || leaveOut != null;
  }

  /** What a figure of one's own is called where no title is given. */
  String ownTitle() {
    if (grouping != null) {
      String groupsOf = Places.groupsOf(grouping);
      return "Own " + groupsOf;
    }
    return euclid != null ? "Own even cell " + euclid.strip() : "Own cell";
  }

  /** Works them into every chair's figure, in the order a player would. */
  void in(Composition made) {
    List<Integer> steps = cell == null ? null : Typed.numbers("--cell", cell);
    if (grouping != null) {
      int of = grouping;
      Typed.of(() -> made.grouping(of, steps, period, aim()), "--grouping", "--period", "--cell");
    } else if (euclid != null) {
      List<Integer> two = Typed.numbers("--euclid", euclid);
      if (two.size() != 2) {
        throw new BadInput(
            "--euclid", "expected attacks and steps such as \"3 8\", found \"" + euclid + "\"");
      }
      Typed.of(() -> made.cell(Euclid.cell(two.get(0), two.get(1))), "--euclid");
    } else if (steps != null) {
      Typed.of(() -> made.cell(steps, period), "--cell", "--period");
    }
    if (tail != null && grouping == null) {
      throw new BadInput("--tail", "expected only with --grouping, found it without");
    }
    if (period != null && grouping == null && steps == null) {
      int bars = period;
      Typed.of(() -> made.period(bars), "--period");
    }
    if (retrograde) {
      every(made, "--retrograde", Cells::retrograde);
    }
    if (rotate != null) {
      int first = rotate;
      every(made, "--rotate", one -> Cells.rotate(one, first));
    }
    if (displace != null) {
      int by = displace;
      every(made, "--displace", one -> Cells.displace(one, by));
    }
    if (augment != null) {
      int times = augment;
      every(made, "--augment", one -> Cells.augment(one, times));
    }
    omissions(made);
    marked(made, "--accents", accents, Cells::accented);
    marked(made, "--staccato", staccato, Cells::staccato);
    marked(made, "--tenuto", tenuto, Cells::tenuto);
    marked(made, "--lengths", lengths, Cells::withLengths);
  }

  private static void every(Composition made, String option, UnaryOperator<Drill.Cell> change) {
    Typed.of(() -> made.every(change), option);
  }

  /** What is said of single steps, as numbers. */
  private static void marked(
      Composition made,
      String option,
      @Nullable String numbers,
      BiFunction<Drill.Cell, List<Integer>, Drill.Cell> mark) {
    if (numbers != null) {
      List<Integer> on = Typed.numbers(option, numbers);
      every(made, option, one -> mark.apply(one, on));
    }
  }

  private void omissions(Composition made) {
    if (leaveOut != null) {
      int levels = leaveOut;
      every(
          made,
          "--leave-out",
          one ->
              Cells.leaveOutHeaviest(
                  one, levels, made.meter(), made.stepsPerBeat(), made.groups()));
    }
    marked(made, "--without", without, Cells::leaveOut);
    if (beginOff) {
      every(made, "--begin-off", one -> Cells.beginOffBeat(one, made.stepsPerBeat()));
    }
    if (endOff != null) {
      @Nullable Integer length = endOff == 0 ? null : endOff;
      every(
          made,
          "--end-off",
          one -> Cells.endOffBeat(one, made.meter(), made.stepsPerBeat(), length));
    }
  }

  private GroupedCell.Aim aim() {
    return tail == null
        ? GroupedCell.Aim.UPBEAT
        : Typed.word(
            "--tail",
            tail,
            Map.of("upbeat", GroupedCell.Aim.UPBEAT, "downbeat", GroupedCell.Aim.DOWNBEAT));
  }
}
