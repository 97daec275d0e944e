package thinclick.server.material;

import java.util.List;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.ClickPlan;

/**
 * How hard a drill is, from 1 to 10, from published measures of its rhythm, its tempo and its click
 * plan. The measures are taken over one period, chair by chair, and their means are weighed:
 *
 * <p>level = 0.3 note-to-beat distance + 0.1 Longuet-Higgins and Lee a bar + 0.75 bars away + 0.4
 * steps a second + 0.6 fine subdivision + 0.4 other chairs + 1.25 halvings of the click, rounded,
 * from 1 to 10. The weights are our own, fitted to the levels of the stock.
 */
public final class Difficulty {
  private Difficulty() {}

  /** The level, 1 to 10. */
  public static int level(Drill drill) {
    return rounded(unrounded(drill));
  }

  /**
   * The level of one chair's part, 1 to 10: its own rhythm among the drill's other chairs, under
   * the drill's click plan.
   *
   * @param chair its place among the drill's chairs, from 0
   * @param tempo at which it is played, beats a minute
   */
  public static int level(Drill drill, int chair, double tempo) {
    return rounded(unrounded(measure(drill, List.of(drill.chairs().get(chair)), tempo)));
  }

  private static int rounded(double level) {
    return (int) Math.max(1, Math.min(10, Math.round(level)));
  }

  static double unrounded(Drill drill) {
    return unrounded(measure(drill));
  }

  private static double unrounded(Measures of) {
    return 0.3 * of.noteToBeat
        + 0.1 * of.longuetHigginsLee
        + 0.75 * of.barsAway
        + 0.4 * of.stepsPerSecond
        + 0.6 * of.subdivision
        + 0.4 * of.others
        + 1.25 * of.thinness;
  }

  /**
   * What the level is made of.
   *
   * @param noteToBeat weighted note-to-beat distance, mean over the notes, the beat as counted
   * @param longuetHigginsLee Longuet-Higgins and Lee's syncopation a bar
   * @param barsAway bars until the figure begins on a bar line again, less one
   * @param stepsPerSecond at the tempo to start with
   * @param subdivision 1 where the beat has more than two steps, or three in meters of 4
   * @param others other chairs with a rhythm of their own, at most 3
   * @param thinness of the thinnest stage: how often the clicks of a full bar are halved, at most 5
   */
  record Measures(
      double noteToBeat,
      double longuetHigginsLee,
      double barsAway,
      double stepsPerSecond,
      double subdivision,
      double others,
      double thinness) {}

  static Measures measure(Drill drill) {
    return measure(drill, drill.chairs(), drill.tempo().start());
  }

  private static Measures measure(Drill drill, List<Drill.Chair> of, double tempo) {
    double noteToBeat = 0;
    double lhl = 0;
    double barsAway = 0;
    int perBar = drill.stepsPerBar();
    int[] bar = MetricWeights.ofBar(drill.meter(), drill.stepsPerBeat(), drill.groups());
    for (Drill.Chair chair : of) {
      int cycle = Groupings.realignsAfter(chair.cell().steps(), perBar);
      Drill.Cell cell = Cells.displace(Cells.repeated(chair.cell(), cycle), chair.entryStep());
      List<Integer> attacks = cell.attackSteps();
      int[] weights = new int[cycle];
      for (int step = 0; step < cycle; step++) {
        weights[step] = bar[step % perBar];
      }
      noteToBeat += Syncopation.noteToBeatDistance(attacks, cycle, drill.stepsPerBeat());
      lhl += (double) Syncopation.longuetHigginsLee(attacks, weights) * perBar / cycle;
      barsAway +=
          Groupings.comesRound(chair.cell(), 0, drill.stepsPerBeat(), perBar, cycle / perBar + 1)
              .map(round -> round - 1)
              .orElse(0);
    }
    int chairs = of.size();
    ClickPlan plan = new ClickPlan(drill.stages());
    double fewest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < drill.stages().size(); i++) {
      fewest = Math.min(fewest, plan.clicksPerBar(i, drill.meter(), drill.stepsPerBeat()));
    }
    double halved = Math.log(drill.meter().beatsPerBar() / fewest) / Math.log(2);
    boolean fine = drill.stepsPerBeat() > (drill.meter().compound() ? 3 : 2);
    return new Measures(
        noteToBeat / chairs,
        lhl / chairs,
        barsAway / chairs,
        tempo * drill.stepsPerBeat() / 60,
        fine ? 1 : 0,
        Math.min(drill.chairs().size() - 1, 3),
        Math.max(0, Math.min(halved, 5)));
  }
}
