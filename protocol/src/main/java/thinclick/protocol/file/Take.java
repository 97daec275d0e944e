package thinclick.protocol.file;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;

/**
 * One run of a drill, recorded: what was written, what clicked, what was played.
 *
 * @param title the drill's title
 * @param meter the meter
 * @param tempo beats a minute, 30-320
 * @param stepsPerBeat 2, 3, 4 or 6
 * @param swing the ratio, or as the band plays it; straight where absent
 * @param startMicros room time of step 0
 * @param toleranceMillis how far from the ensemble pulse an attack is still placed; null: by the
 *     rule of the smallest gap
 * @param stages the click plan
 * @param parts who was dealt what; names differ
 * @param attacks in any order; each player has a part
 * @param endMicros where the take was stopped early; what is written less than a quarter of a step
 *     before it, or after it, is not counted
 * @param clickInterrupted spans in which the click did not sound as planned
 */
@JsonPropertyOrder({"format", "version"})
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Take(
    String format,
    int version,
    String title,
    Meter meter,
    double tempo,
    int stepsPerBeat,
    Swing swing,
    long startMicros,
    @Nullable Double toleranceMillis,
    List<Stage> stages,
    List<Part> parts,
    List<Attack> attacks,
    @Nullable Long endMicros,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Span> clickInterrupted) {
  /** What {@code format} says. */
  public static final String FORMAT = "thinclick.take";

  /** The version this code writes and the newest it reads. */
  public static final int VERSION = 1;

  /** The longest take, steps. */
  public static final int MAX_STEPS = 1_000_000;

  public Take {
    Check.length("title", Check.present("title", title), 0, 200);
    Check.present("meter", meter);
    swing = swing == null ? Swing.STRAIGHT : swing;
    Check.range("startMicros", startMicros, 0L, Check.MAX_SAFE);
    StepGrid grid = new StepGrid(meter, stepsPerBeat, tempo, swing, startMicros);
    Check.range("toleranceMillis", toleranceMillis, 1, 1_000);
    ClickPlan plan = new ClickPlan(stages);
    stages = plan.stages();
    plan.checkMeter(meter, stepsPerBeat);
    long steps = (long) plan.bars() * grid.stepsPerBar();
    if (steps > MAX_STEPS) {
      throw new BadInput("stages", "expected at most " + MAX_STEPS + " steps, found " + steps);
    }
    parts = Check.list("parts", parts);
    Check.size("parts", parts, 0, 64);
    Set<String> names = new HashSet<>();
    for (int i = 0; i < parts.size(); i++) {
      checkPart("parts[" + i + "]", parts.get(i), steps, names);
      checkAnswers("parts[" + i + "]", parts.get(i).answers(), i, parts.size(), steps);
      checkFree("parts[" + i + "]", parts.get(i), plan.bars(), grid.stepsPerBar());
    }
    attacks = Check.list("attacks", attacks);
    for (int i = 0; i < attacks.size(); i++) {
      if (!names.contains(attacks.get(i).player())) {
        throw new BadInput(
            "attacks[" + i + "].player",
            "expected a player with a part, found \"" + attacks.get(i).player() + "\"");
      }
    }
    if (endMicros != null) {
      Check.range("endMicros", endMicros.longValue(), 0L, Check.MAX_SAFE);
    }
    clickInterrupted = Check.listOrEmpty("clickInterrupted", clickInterrupted);
  }

  private static void checkPart(String where, Part part, long steps, Set<String> names) {
    if (!names.add(part.player())) {
      throw new BadInput(
          where + ".player",
          "expected a name not used before, found \"" + part.player() + "\" again");
    }
    int count = part.attackSteps().size();
    if (count > 0 && part.attackSteps().get(count - 1) >= steps) {
      throw new BadInput(
          where + ".attackSteps[" + (count - 1) + "]",
          "expected a step before the end of the stages, "
              + steps
              + ", found "
              + part.attackSteps().get(count - 1));
    }
    if (part.entryStep() >= steps) {
      throw new BadInput(
          where + ".entryStep",
          "expected a step before the end of the stages, " + steps + ", found " + part.entryStep());
    }
  }

  private static void checkAnswers(
      String where, List<Answer> answers, int self, int parts, long steps) {
    for (int i = 0; i < answers.size(); i++) {
      Answer answer = answers.get(i);
      String its = where + ".answers[" + i + "]";
      if (answer.of() >= parts || answer.of() == self) {
        throw new BadInput(
            its + ".of", "expected another part, 0 to " + (parts - 1) + ", found " + answer.of());
      }
      if (answer.toStep() > steps) {
        throw new BadInput(
            its + ".toStep",
            "expected at most the stages' " + steps + " steps, found " + answer.toStep());
      }
    }
  }

  private static void checkFree(String where, Part part, int bars, int stepsPerBar) {
    for (int i = 0; i < part.free().size(); i++) {
      if (part.free().get(i).toBar() > bars) {
        throw new BadInput(
            where + ".free[" + i + "].toBar",
            "expected at most the stages' " + bars + " bars, found " + part.free().get(i).toBar());
      }
    }
    for (int i = 0; !part.free().isEmpty() && i < part.attackSteps().size(); i++) {
      int step = part.attackSteps().get(i);
      if (part.freeAt(step / stepsPerBar)) {
        throw new BadInput(
            where + ".attackSteps[" + i + "]",
            "expected nothing written in bars that are free, found step "
                + step
                + " in bar "
                + step / stepsPerBar);
      }
    }
  }

  /**
   * A take as it is written, before its first attack.
   *
   * @param grid meter, tempo, steps and swing, and the room time of bar 1
   * @param toleranceMillis how far an attack may be off and is still placed; null: by the rule of
   *     the smallest gap
   */
  public static Take written(
      String title,
      StepGrid grid,
      @Nullable Double toleranceMillis,
      List<Stage> stages,
      List<Part> parts) {
    return new Take(
        FORMAT,
        VERSION,
        title,
        grid.meter(),
        grid.tempo(),
        grid.stepsPerBeat(),
        grid.swing(),
        grid.startMicros(),
        toleranceMillis,
        stages,
        parts,
        List.of(),
        null,
        List.of());
  }

  /** The click plan. */
  public ClickPlan plan() {
    return new ClickPlan(stages);
  }

  /** The written grid on room time. */
  public StepGrid grid() {
    return new StepGrid(meter, stepsPerBeat, tempo, swing, startMicros);
  }

  /** The same take, to be changed field by field. */
  public TakeEdit edited() {
    return new TakeEdit(this);
  }

  /** The same take with other parts, which must fit its attacks. */
  public Take withParts(List<Part> others) {
    return edited().parts(others).take();
  }

  /** The same take with other attacks. */
  public Take withAttacks(List<Attack> others) {
    return edited().attacks(others).take();
  }

  /** The same take, parts and attacks, with players under other names. */
  public Take renamed(UnaryOperator<String> names) {
    return edited()
        .parts(parts.stream().map(part -> part.renamed(names.apply(part.player()))).toList())
        .attacks(
            attacks.stream().map(attack -> attack.renamed(names.apply(attack.player()))).toList())
        .take();
  }
}
