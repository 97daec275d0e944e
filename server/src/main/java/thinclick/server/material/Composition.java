package thinclick.server.material;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Line;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;
import thinclick.server.material.pitch.Instrument;

/**
 * A drill in the making: begins with a drill or with even steps, changes one thing at a time, each
 * change answering itself, and is finished by {@link #drill()}.
 */
public final class Composition {
  private static final int DEFAULT_TEMPO = 100;

  private String title;
  private Meter meter;
  private int stepsPerBeat;
  private int periodBars;
  private List<Drill.Chair> chairs;
  private Swing swing;
  private Drill.TempoRange tempo;
  private @Nullable Double toleranceMillis;
  private DealKind kind;
  private long seed;
  private @Nullable List<Integer> groups;
  private @Nullable List<Stage> stages;
  private @Nullable Integer level;
  private @Nullable List<Rung> rungs;
  private int stageBars;

  private Composition(
      String title, Meter meter, int stepsPerBeat, int periodBars, List<Drill.Chair> chairs) {
    this.title = title;
    this.meter = meter;
    this.stepsPerBeat = stepsPerBeat;
    this.periodBars = periodBars;
    this.chairs = chairs;
    this.swing = Swing.STRAIGHT;
    this.tempo = new Drill.TempoRange(60, 200, DEFAULT_TEMPO);
    this.kind = DealKind.CANON;
    this.seed = 7;
  }

  /** Begins with a drill. */
  public static Composition from(Drill drill) {
    Composition made =
        new Composition(
            drill.title(), drill.meter(), drill.stepsPerBeat(), drill.periodBars(), drill.chairs());
    made.swing = drill.swing();
    made.tempo = drill.tempo();
    made.toleranceMillis = drill.toleranceMillis();
    made.kind = drill.deal().kind();
    made.seed = drill.deal().seed();
    made.groups = drill.groups();
    made.stages = drill.stages();
    made.level = drill.level();
    return made;
  }

  /** Begins with every step of a bar. */
  public static Composition even(String title, Meter meter, int stepsPerBeat) {
    meter.checkStepsPerBeat(stepsPerBeat);
    Drill.Cell cell = Cells.even(meter, stepsPerBeat, 1);
    return new Composition(title, meter, stepsPerBeat, 1, List.of(Drill.Chair.of("1", cell)));
  }

  public Composition title(String text) {
    title = text;
    return this;
  }

  /** How the beats of a bar stand together. */
  public Composition groups(List<Integer> sizes) {
    groups = List.copyOf(sizes);
    return this;
  }

  /** One cell for everybody in place of what was there, in bars enough for it. */
  public Composition cell(List<Integer> attackSteps, @Nullable Integer bars) {
    Check.size("cell", attackSteps, 1, 10_000);
    int last = attackSteps.get(attackSteps.size() - 1);
    int needed = last / stepsPerBar() + 1;
    int period = bars == null ? needed : bars;
    if (period < needed) {
      throw new BadInput(
          "period", "expected at least " + needed + " bars for step " + last + ", found " + period);
    }
    Check.ascending("cell", attackSteps, 0, period * stepsPerBar() - 1);
    return single(Drill.Cell.of(period * stepsPerBar(), attackSteps), period);
  }

  /** One cell of any length in steps, which need not fill bars. */
  public Composition cell(Drill.Cell cell) {
    int bars = Groupings.realignsAfter(cell.steps(), stepsPerBar()) / stepsPerBar();
    return single(cell, bars);
  }

  /** A grouping with its tail over a period. */
  public Composition grouping(
      int steps, @Nullable List<Integer> inner, @Nullable Integer bars, GroupedCell.Aim aim) {
    int period = bars == null ? Math.max(2, periodBars) : bars;
    Check.range("period", period, 1L, 64);
    List<Integer> figure = inner == null ? List.of(0) : inner;
    return single(GroupedCell.of(steps, figure, period * stepsPerBar(), stepsPerBeat, aim), period);
  }

  private Composition single(Drill.Cell cell, int bars) {
    Drill.Chair first = chairs.get(0);
    chairs =
        List.of(
            first
                .edited()
                .named("1")
                .role(chairs.size() == 1 ? first.role() : null)
                .cell(cell)
                .chair());
    if (kind == DealKind.AS_WRITTEN) {
      kind = DealKind.CANON;
    }
    periodChanged(bars);
    return this;
  }

  /** Repeats what is there to fill more bars. */
  public Composition period(int bars) {
    Check.range("period", bars, 1L, 64);
    every(cell -> cell.steps() > bars * stepsPerBar() ? tooLong(cell, bars) : filled(cell, bars));
    periodChanged(bars);
    return this;
  }

  private Drill.Cell tooLong(Drill.Cell cell, int bars) {
    throw new BadInput(
        "period",
        "expected at least the "
            + (cell.steps() + stepsPerBar() - 1) / stepsPerBar()
            + " bars of the cell, found "
            + bars);
  }

  private Drill.Cell filled(Drill.Cell cell, int bars) {
    return Cells.repeated(cell, bars * stepsPerBar());
  }

  private void periodChanged(int bars) {
    periodBars = bars;
    level = null;
    if (stages != null && stages.stream().anyMatch(stage -> stage.bars() % bars != 0)) {
      stages =
          stages.stream()
              .map(
                  stage ->
                      new Stage(
                          (stage.bars() + bars - 1) / bars * bars,
                          stage.everyBars(),
                          stage.beats(),
                          stage.steps()))
              .toList();
    }
  }

  /** Changes every chair's cell. */
  public Composition every(UnaryOperator<Drill.Cell> change) {
    List<Drill.Chair> changed = new ArrayList<>();
    int bars = 1;
    for (Drill.Chair chair : chairs) {
      Drill.Cell cell = change.apply(chair.cell());
      changed.add(chair.edited().cell(cell).chair());
      bars = Math.max(bars, Groupings.realignsAfter(cell.steps(), stepsPerBar()) / stepsPerBar());
    }
    chairs = changed;
    if (bars > periodBars) {
      periodChanged(bars);
    }
    level = null;
    return this;
  }

  /** The first chair enters at a step, the others as much later as they were. */
  public Composition entry(int step) {
    Check.range("entry", step, 0L, 10_000);
    int by = step - chairs.get(0).entryStep();
    chairs =
        chairs.stream()
            .map(chair -> chair.edited().entryStep(Math.max(0, chair.entryStep() + by)).chair())
            .toList();
    return this;
  }

  /** Every chair carries a line made from the one it has. */
  public Composition lines(UnaryOperator<@Nullable Line> change) {
    chairs =
        chairs.stream()
            .map(chair -> chair.edited().line(change.apply(chair.line())).chair())
            .toList();
    return this;
  }

  /** Changes the chairs, all of them at once. */
  public Composition chairs(UnaryOperator<List<Drill.Chair>> change) {
    chairs = List.copyOf(change.apply(chairs));
    return this;
  }

  /** The chairs read these instruments in turn. */
  public Composition instruments(List<Instrument> instruments) {
    List<Drill.Chair> changed = new ArrayList<>();
    for (int i = 0; i < chairs.size(); i++) {
      changed.add(on(chairs.get(i), instruments.get(i % instruments.size())));
    }
    chairs = changed;
    return this;
  }

  /** A chair on another instrument. */
  public static Drill.Chair on(Drill.Chair chair, Instrument instrument) {
    return chair.edited().instrument(instrument.name()).chair();
  }

  public Composition deal(DealKind way) {
    kind = way;
    return this;
  }

  public Composition seed(long number) {
    Check.range("seed", number, 0L, Check.MAX_SAFE);
    seed = number;
    return this;
  }

  /** Starts at a tempo; the range is widened where it lies outside. */
  public Composition tempo(double beatsAMinute) {
    Check.range("tempo", beatsAMinute, StepGrid.MIN_TEMPO, StepGrid.MAX_TEMPO);
    tempo =
        new Drill.TempoRange(
            Math.min(tempo.from(), beatsAMinute), Math.max(tempo.to(), beatsAMinute), beatsAMinute);
    return this;
  }

  public Composition swing(Swing ratio) {
    ratio.checkStepsPerBeat(stepsPerBeat);
    swing = ratio;
    return this;
  }

  /** The click plan as rungs; each stage lasts as many whole periods as reach eight bars. */
  public Composition plan(List<Rung> asked) {
    rungs = List.copyOf(asked);
    level = null;
    return this;
  }

  /** Bars of each stage, in whole periods. */
  public Composition stageBars(int bars) {
    if (bars < 1 || bars % periodBars != 0) {
      throw new BadInput(
          "stage-bars", "expected whole periods of " + periodBars + " bars, found " + bars);
    }
    stageBars = bars;
    if (rungs == null && stages != null) {
      stages =
          stages.stream()
              .map(stage -> new Stage(bars, stage.everyBars(), stage.beats(), stage.steps()))
              .toList();
    }
    return this;
  }

  public Meter meter() {
    return meter;
  }

  public int stepsPerBeat() {
    return stepsPerBeat;
  }

  public @Nullable List<Integer> groups() {
    return groups;
  }

  /** How many steps a bar has. */
  public int stepsPerBar() {
    return meter.stepsPerBar(stepsPerBeat);
  }

  /** The drill; where the material or the plan was changed its level is computed. */
  public Drill drill() {
    List<Stage> plan =
        rungs == null && stages != null
            ? stages
            : ClickLadder.stages(
                rungs == null ? List.of(Rung.ALL_BEATS) : rungs,
                meter,
                stepsPerBeat,
                groups,
                stageBars == 0 ? ClickLadder.barsOfStage(periodBars) : stageBars,
                seed);
    Drill drill = drill(plan, 5);
    return drill(plan, level == null ? Difficulty.level(drill) : level);
  }

  private Drill drill(List<Stage> plan, int itsLevel) {
    return new Drill(
        Drill.FORMAT,
        Drill.VERSION,
        title,
        itsLevel,
        meter,
        stepsPerBeat,
        swing,
        tempo,
        toleranceMillis,
        periodBars,
        new Drill.Deal(kind, seed),
        chairs,
        plan,
        groups);
  }
}
