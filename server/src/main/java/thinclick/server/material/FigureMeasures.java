package thinclick.server.material;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import thinclick.protocol.file.Drill;

/** How syncopated a chair's figure is, by each published measure, named with its source. */
public final class FigureMeasures {
  private FigureMeasures() {}

  /**
   * One measure of a figure.
   *
   * @param name what is measured
   * @param source who published it
   * @param value the figure's value, or why there is none
   */
  public record Measure(String name, String source, String value) {}

  /** The measures over the cycle after which the figure and the bar begin together again. */
  public static List<Measure> of(Drill drill, Drill.Chair chair) {
    int perBar = drill.stepsPerBar();
    int cycle = Groupings.realignsAfter(chair.cell().steps(), perBar);
    Drill.Cell cell = Cells.displace(Cells.repeated(chair.cell(), cycle), chair.entryStep());
    List<Integer> attacks = cell.attackSteps();
    int[] bar = MetricWeights.ofBar(drill.meter(), drill.stepsPerBeat(), drill.groups());
    int[] weights = new int[cycle];
    for (int step = 0; step < cycle; step++) {
      weights[step] = bar[step % perBar];
    }
    List<Measure> all = new ArrayList<>();
    boolean binary = Integer.bitCount(cycle) == 1;
    String none = "only for cycles of 2, 4, 8, 16 ... steps";
    all.add(
        new Measure(
            "off-beat starts",
            "Keith 1991, counted by Gomez and others 2005",
            binary ? Integer.toString(Syncopation.keithCount(attacks, cycle)) : none));
    all.add(
        new Measure(
            "hesitation 1, anticipation 2, syncopation 3",
            "Keith 1991",
            binary ? Integer.toString(Syncopation.keithWeighted(attacks, cycle)) : none));
    all.add(
        new Measure(
            "off-beatness",
            "Toussaint 2013",
            Integer.toString(Syncopation.offBeatness(attacks, cycle))));
    all.add(
        new Measure(
            "weighted note-to-beat distance",
            "Gomez, Melvin, Rappaport, Toussaint 2005",
            number(Syncopation.noteToBeatDistance(attacks, cycle, drill.stepsPerBeat()))));
    all.add(
        new Measure(
            "metric complexity",
            "Toussaint 2002",
            Integer.toString(Syncopation.metricComplexity(attacks, weights))));
    all.add(
        new Measure(
            "rests heavier than the note before, heaviest a note",
            "Longuet-Higgins and Lee 1984",
            Integer.toString(Syncopation.longuetHigginsLee(attacks, weights))));
    all.add(
        new Measure(
            "the same, every rest",
            "Longuet-Higgins and Lee 1984",
            Integer.toString(Syncopation.longuetHigginsLeeEveryRest(attacks, weights))));
    all.add(
        new Measure(
            "potential times difference to the neighbours",
            "Sioros and Guedes 2011",
            number(Syncopation.siorosGuedes(attacks, weights))));
    return List.copyOf(all);
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }
}
