package thinclick.server.material;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;

/** Ladders of rungs: the way from a full click down to a thin one. */
public final class ClickLadder {
  private ClickLadder() {}

  /**
   * The rungs from one to another, each prepared by the one before. Where the first does not lead
   * to the last, the way starts at the first and joins the last one's own way where it is thinner.
   */
  public static List<Rung> between(Rung from, Rung to) {
    List<Rung> way = new ArrayList<>();
    for (Rung at = to; at != from; at = at.easier().get()) {
      if (at.compareTo(from) > 0 || at == to) {
        way.add(0, at);
      }
      if (at.easier().isEmpty()) {
        break;
      }
    }
    if (way.isEmpty() || way.get(0) != from) {
      way.add(0, from);
    }
    return List.copyOf(way);
  }

  /**
   * The same in a meter, without the rungs that sound there like the one after them, as in 6/8 the
   * first beat of each group and the first alone.
   */
  public static List<Rung> between(
      Rung from, Rung to, Meter meter, @Nullable List<Integer> groups) {
    List<Rung> way = new ArrayList<>(between(from, to));
    for (int i = way.size() - 2; i > 0; i--) {
      if (clicks(way.get(i), meter, groups).equals(clicks(way.get(i + 1), meter, groups))) {
        way.remove(i);
      }
    }
    return List.copyOf(way);
  }

  private static Stage clicks(Rung rung, Meter meter, @Nullable List<Integer> groups) {
    return rung.stage(meter, meter.compound() ? 3 : 2, groups, 8, 0);
  }

  /** Stages for rungs, each of as many bars. */
  public static List<Stage> stages(
      List<Rung> rungs,
      Meter meter,
      int stepsPerBeat,
      @Nullable List<Integer> groups,
      int barsEach,
      long seed) {
    List<Stage> stages = new ArrayList<>();
    for (int i = 0; i < rungs.size(); i++) {
      stages.add(rungs.get(i).stage(meter, stepsPerBeat, groups, barsEach, seed + i));
    }
    return List.copyOf(stages);
  }

  /** The bars of a stage: whole periods, at least eight bars. */
  public static int barsOfStage(int periodBars) {
    return (8 + periodBars - 1) / periodBars * periodBars;
  }
}
