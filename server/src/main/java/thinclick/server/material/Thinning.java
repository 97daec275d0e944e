package thinclick.server.material;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;

/**
 * The next thinner and the next fuller click, for one stage and for whole plans, in one meter.
 *
 * <p>The stem of the ladder runs from all beats to none; rungs beside it lead on along their own
 * branch and from its end to none.
 *
 * @param groups how the beats of a bar stand together, or null for the usual
 */
public record Thinning(Meter meter, int stepsPerBeat, @Nullable List<Integer> groups) {
  /** Clicked bars of a rescue. */
  public static final int RESCUE_BARS = 2;

  private static final List<Rung> STEM = ClickLadder.between(Rung.ALL_BEATS, Rung.NONE);

  /** Seeded rungs are told apart by their share of silent bars; between two the fuller is meant. */
  private static final double SHARES_APART = 0.125;

  public Thinning {
    groups = groups == null ? null : List.copyOf(groups);
  }

  /** The rung after this one; none stays none. */
  public static Rung thinner(Rung rung) {
    int onStem = STEM.indexOf(rung);
    if (onStem >= 0) {
      return STEM.get(Math.min(onStem + 1, STEM.size() - 1));
    }
    for (Rung other : Rung.values()) {
      if (other.easier().filter(rung::equals).isPresent()) {
        return other;
      }
    }
    return Rung.NONE;
  }

  /** The rung that prepares this one; all beats stays all beats. */
  public static Rung fuller(Rung rung) {
    return rung.easier().orElse(rung);
  }

  /** The rung that a stage stands on; where it is none of the ladder's, the stem's nearest. */
  public Rung at(Stage stage) {
    return of(stage).orElseGet(() -> nearest(stage));
  }

  /** The rung whose clicks a stage has, empty where it has others. */
  public Optional<Rung> of(Stage stage) {
    List<Long> clicked = stage.clickedSteps(meter, stepsPerBeat);
    for (Rung rung : Rung.values()) {
      if (!seeded(rung)
          && rung.stage(meter, stepsPerBeat, groups, stage.bars(), 0)
              .clickedSteps(meter, stepsPerBeat)
              .equals(clicked)) {
        return Optional.of(rung);
      }
    }
    return silence(clicked, stage.bars());
  }

  private static boolean seeded(Rung rung) {
    return rung == Rung.QUARTER_SILENT || rung == Rung.HALF_SILENT || rung == Rung.MOST_SILENT;
  }

  private Optional<Rung> silence(List<Long> clicked, int bars) {
    int perBar = meter.stepsPerBar(stepsPerBeat);
    int sounding = 0;
    for (int bar = 0; bar < bars; bar++) {
      long from = (long) bar * perBar;
      List<Long> here = clicked.stream().filter(s -> s >= from && s < from + perBar).toList();
      if (here.isEmpty()) {
        continue;
      }
      boolean onBeats = here.stream().allMatch(step -> step % stepsPerBeat == 0);
      if (here.size() != meter.beatsPerBar() || !onBeats) {
        return Optional.empty();
      }
      sounding++;
    }
    double silent = 1 - (double) sounding / bars;
    return Optional.of(
        silent <= 0.25 + SHARES_APART
            ? Rung.QUARTER_SILENT
            : silent <= 0.5 + SHARES_APART ? Rung.HALF_SILENT : Rung.MOST_SILENT);
  }

  private Rung nearest(Stage stage) {
    double clicks = clicksPerBar(stage);
    return STEM.stream()
        .min(
            Comparator.comparingDouble(
                rung ->
                    Math.abs(clicks - clicksPerBar(rung.stage(meter, stepsPerBeat, groups, 4, 0)))))
        .orElse(Rung.ALL_BEATS);
  }

  private double clicksPerBar(Stage stage) {
    return (double) stage.clickedSteps(meter, stepsPerBeat).size() / stage.bars();
  }

  /** A plan with every stage a rung thinner, as long as before; seeded silence is drawn anew. */
  public List<Stage> fewerClicks(List<Stage> plan, long seed) {
    return shifted(plan, true, seed);
  }

  /** A plan with every stage a rung fuller, as long as before. */
  public List<Stage> moreClicks(List<Stage> plan, long seed) {
    return shifted(plan, false, seed);
  }

  private List<Stage> shifted(List<Stage> plan, boolean thinner, long seed) {
    List<Stage> shifted = new ArrayList<>();
    for (int i = 0; i < plan.size(); i++) {
      Rung rung = at(plan.get(i));
      Rung next = thinner ? thinner(rung) : fuller(rung);
      shifted.add(stage(next, plan.get(i).bars(), seed + i));
    }
    return joined(shifted);
  }

  /** Neighbours that click alike are one stage. */
  private static List<Stage> joined(List<Stage> stages) {
    List<Stage> joined = new ArrayList<>();
    for (Stage stage : stages) {
      Stage last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
      if (last != null && alike(last, stage) && last.bars() % last.everyBars() == 0) {
        joined.set(
            joined.size() - 1,
            new Stage(last.bars() + stage.bars(), last.everyBars(), last.beats(), last.steps()));
      } else {
        joined.add(stage);
      }
    }
    return List.copyOf(joined);
  }

  private static boolean alike(Stage one, Stage other) {
    return new Stage(1, one.everyBars(), one.beats(), one.steps())
        .equals(new Stage(1, other.everyBars(), other.beats(), other.steps()));
  }

  /** True where a plan clicks the same from a bar on as these stages would. */
  boolean alikeFrom(ClickPlan plan, int fromBar, List<Stage> rest) {
    return clicks(restOf(plan, fromBar)).equals(clicks(rest));
  }

  private List<Long> clicks(List<Stage> stages) {
    List<Long> clicks = new ArrayList<>();
    long from = 0;
    for (Stage stage : stages) {
      long first = from;
      stage.clickedSteps(meter, stepsPerBeat).forEach(step -> clicks.add(first + step));
      from += (long) stage.bars() * meter.stepsPerBar(stepsPerBeat);
    }
    return clicks;
  }

  Stage stage(Rung rung, int bars, long seed) {
    return rung.stage(meter, stepsPerBeat, groups, bars, seed);
  }

  /**
   * Two bars of all beats in a running take, and then what was planned: a stage that is cut begins
   * anew after them.
   *
   * @param fromBar the bar where they begin
   * @return the rest of the plan from there; empty where the take is over by then
   */
  public List<Stage> rescue(ClickPlan plan, int fromBar) {
    int left = plan.bars() - fromBar;
    if (left <= 0) {
      return List.of();
    }
    int clicked = Math.min(RESCUE_BARS, left);
    List<Stage> rest = new ArrayList<>();
    rest.add(stage(Rung.ALL_BEATS, clicked, 0));
    rest.addAll(restOf(plan, fromBar + clicked));
    return List.copyOf(rest);
  }

  /** A plan from a bar on; a stage that is cut begins anew there. */
  public static List<Stage> restOf(ClickPlan plan, int fromBar) {
    List<Stage> rest = new ArrayList<>();
    for (int i = 0; i < plan.stages().size(); i++) {
      Stage stage = plan.stages().get(i);
      int cut = Math.max(0, fromBar - plan.fromBar(i));
      if (cut < stage.bars()) {
        rest.add(new Stage(stage.bars() - cut, stage.everyBars(), stage.beats(), stage.steps()));
      }
    }
    return rest;
  }
}
