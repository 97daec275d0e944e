package thinclick.protocol.file;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;

/**
 * Material, tempo and click plan: what a take is made from.
 *
 * @param title unique; any case, hyphens for spaces
 * @param level 1-10
 * @param meter the meter
 * @param stepsPerBeat 2, 3, 4 or 6
 * @param swing the ratio, or as the band plays it
 * @param tempo the range and where to start
 * @param toleranceMillis null: by the rule of the smallest gap
 * @param periodBars how many bars the material lasts before it starts again
 * @param deal how the material is shared out
 * @param chairs at least one
 * @param stages the click plan
 * @param groups how the beats of a bar stand together, such as 3, 2 in 5/4; null for the usual
 */
public record Drill(
    String format,
    int version,
    String title,
    int level,
    Meter meter,
    int stepsPerBeat,
    Swing swing,
    TempoRange tempo,
    @Nullable Double toleranceMillis,
    int periodBars,
    Deal deal,
    List<Chair> chairs,
    List<Stage> stages,
    @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<Integer> groups) {
  /** What {@code format} says. */
  public static final String FORMAT = "thinclick.drill";

  /** The version this code writes and the newest it reads. */
  public static final int VERSION = 1;

  /** A range of tempos, beats a minute. */
  public record TempoRange(double from, double to, double start) {
    public TempoRange {
      Check.range("from", from, StepGrid.MIN_TEMPO, StepGrid.MAX_TEMPO);
      Check.range("to", to, from, StepGrid.MAX_TEMPO);
      Check.range("start", start, from, to);
    }
  }

  /**
   * How the material is shared out.
   *
   * @param kind the way
   * @param seed makes the deal repeatable
   */
  public record Deal(DealKind kind, long seed) {
    public Deal {
      Check.present("kind", kind);
      Check.range("seed", seed, 0L, Check.MAX_SAFE);
    }
  }

  /**
   * A rhythm cell.
   *
   * @param steps its length in steps; it is repeated
   * @param attackSteps attacked steps, ascending, from 0
   * @param accentSteps those of them with an accent, or null
   * @param lengthSteps the written length of each attack in steps, none over the next attack; null
   *     for the usual lengths
   * @param staccatoSteps those of the attacks that are cut short, or null
   * @param tenutoSteps those of them that are held for all of their length, or null
   * @param grouping how many steps the figure inside lasts before it starts again, so that bearings
   *     can be given; what it leaves over is the tail; null where nothing is grouped
   */
  public record Cell(
      int steps,
      List<Integer> attackSteps,
      @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<Integer> accentSteps,
      @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<Integer> lengthSteps,
      @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<Integer> staccatoSteps,
      @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<Integer> tenutoSteps,
      @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Integer grouping) {
    public Cell {
      Check.range("steps", steps, 1L, 10_000);
      attackSteps = Check.list("attackSteps", attackSteps);
      Check.size("attackSteps", attackSteps, 1, 10_000);
      Check.ascending("attackSteps", attackSteps, 0, steps - 1);
      accentSteps = marked("accentSteps", accentSteps, attackSteps);
      staccatoSteps = marked("staccatoSteps", staccatoSteps, attackSteps);
      tenutoSteps = marked("tenutoSteps", tenutoSteps, attackSteps);
      if (lengthSteps != null) {
        lengthSteps = Check.list("lengthSteps", lengthSteps);
        Check.size("lengthSteps", lengthSteps, attackSteps.size(), attackSteps.size());
        for (int i = 0; i < lengthSteps.size(); i++) {
          Check.range(
              "lengthSteps[" + i + "]",
              lengthSteps.get(i).longValue(),
              1,
              gap(steps, attackSteps, i));
        }
      }
      Check.range("grouping", grouping, 2, Math.max(2, steps));
    }

    /** A cell of attacks alone. */
    public static Cell of(int steps, List<Integer> attackSteps) {
      return of(steps, attackSteps, null);
    }

    /** A cell of attacks with a figure inside that starts again. */
    public static Cell of(int steps, List<Integer> attackSteps, @Nullable Integer grouping) {
      return new Cell(steps, attackSteps, null, null, null, null, grouping);
    }

    private static @Nullable List<Integer> marked(
        String field, @Nullable List<Integer> marked, List<Integer> attackSteps) {
      if (marked == null) {
        return null;
      }
      List<Integer> steps = Check.list(field, marked);
      Check.ascending(field, steps, 0, Integer.MAX_VALUE);
      for (int i = 0; i < steps.size(); i++) {
        if (!attackSteps.contains(steps.get(i))) {
          throw new BadInput(
              field + "[" + i + "]", "expected one of the attackSteps, found " + steps.get(i));
        }
      }
      return steps;
    }

    /** Steps from an attack to the next one, the cell repeated. */
    public int gapAfter(int attack) {
      return gap(steps, attackSteps, attack);
    }

    private static int gap(int steps, List<Integer> attackSteps, int attack) {
      int next =
          attack + 1 < attackSteps.size()
              ? attackSteps.get(attack + 1)
              : steps + attackSteps.get(0);
      return next - attackSteps.get(attack);
    }
  }

  /**
   * A place in the ensemble.
   *
   * @param chair its name on the drill, unique
   * @param role what it does for the whole, or null
   * @param cell its rhythm
   * @param entryStep where it comes in, from 0
   * @param line the pitches, or null for rhythm alone
   * @param feelMillis a lean asked for, or null
   * @param instrument what it is read on, or null
   * @param free bars in which it plays freely, counted as the deal says; empty for none
   */
  public record Chair(
      String chair,
      @Nullable String role,
      Cell cell,
      int entryStep,
      @Nullable Line line,
      @Nullable Feel feelMillis,
      @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable String instrument,
      @JsonInclude(JsonInclude.Include.NON_EMPTY) List<FreeBars> free) {
    /** A chair that plays what is written, throughout. */
    public Chair(
        String chair,
        @Nullable String role,
        Cell cell,
        int entryStep,
        @Nullable Line line,
        @Nullable Feel feelMillis,
        @Nullable String instrument) {
      this(chair, role, cell, entryStep, line, feelMillis, instrument, List.of());
    }

    /** A chair that beats a cell from the first step on. */
    public static Chair of(String chair, Cell cell) {
      return new Chair(chair, null, cell, 0, null, null, null);
    }

    public Chair {
      Check.length("chair", Check.present("chair", chair), 1, 32);
      if (role != null) {
        Check.length("role", role, 1, 32);
      }
      if (instrument != null) {
        Check.length("instrument", instrument, 1, 40);
      }
      Check.present("cell", cell);
      Check.range("entryStep", entryStep, 0L, 10_000);
      free = Check.listOrEmpty("free", free);
      Check.size("free", free, 0, 64);
    }

    /** A copy of this chair, to be changed. */
    public ChairEdit edited() {
      return new ChairEdit(this);
    }

    /** True where a bar, from 0, is played freely. */
    public boolean freeAt(int bar) {
      return free.stream().anyMatch(some -> some.covers(bar));
    }

    /** Where what is written at a step and would last until another ends: free bars cut it off. */
    public int writtenUntil(int step, int end, int stepsPerBar) {
      for (int bar = step / stepsPerBar + 1; bar * stepsPerBar < end; bar++) {
        if (freeAt(bar)) {
          return bar * stepsPerBar;
        }
      }
      return end;
    }
  }

  public Drill {
    Check.length("title", Check.present("title", title), 1, 200);
    Check.range("level", level, 1L, 10);
    Check.present("meter", meter);
    swing = swing == null ? Swing.STRAIGHT : swing;
    Check.present("tempo", tempo);
    StepGrid grid = new StepGrid(meter, stepsPerBeat, tempo.start(), swing, 0);
    Check.range("toleranceMillis", toleranceMillis, 1, 1_000);
    Check.range("periodBars", periodBars, 1L, 64);
    Check.present("deal", deal);
    chairs = Check.list("chairs", chairs);
    Check.size("chairs", chairs, 1, 24);
    Set<String> names = new HashSet<>();
    for (int i = 0; i < chairs.size(); i++) {
      if (!names.add(chairs.get(i).chair())) {
        throw new BadInput(
            "chairs[" + i + "].chair",
            "expected a name not used before, found \"" + chairs.get(i).chair() + "\" again");
      }
    }
    ClickPlan plan = new ClickPlan(stages);
    plan.checkMeter(grid.meter(), stepsPerBeat);
    stages = plan.stages();
    if (groups != null) {
      groups = Check.list("groups", groups);
      int beats = 0;
      for (int i = 0; i < groups.size(); i++) {
        Check.range("groups[" + i + "]", groups.get(i).longValue(), 1, meter.beatsPerBar());
        beats += groups.get(i);
      }
      if (beats != meter.beatsPerBar()) {
        throw new BadInput(
            "groups",
            "expected groups that add up to the "
                + meter.beatsPerBar()
                + " beats of "
                + meter
                + ", found "
                + beats);
      }
    }
  }

  /** Steps a bar. */
  public int stepsPerBar() {
    return meter.stepsPerBar(stepsPerBeat);
  }

  /** This drill with other stages. */
  public Drill withStages(List<Stage> others) {
    return with(chairs, others);
  }

  /** This drill with other chairs. */
  public Drill withChairs(List<Chair> others) {
    return with(others, stages);
  }

  private Drill with(List<Chair> otherChairs, List<Stage> otherStages) {
    return new Drill(
        format,
        version,
        title,
        level,
        meter,
        stepsPerBeat,
        swing,
        tempo,
        toleranceMillis,
        periodBars,
        deal,
        otherChairs,
        otherStages,
        groups);
  }
}
