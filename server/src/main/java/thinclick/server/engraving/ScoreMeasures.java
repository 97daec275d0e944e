package thinclick.server.engraving;

import java.util.List;

/**
 * What the staves of a score share across the page, so that a step has one place in all of them.
 */
final class ScoreMeasures {
  private final List<Engraver> staves;
  private final List<SystemPlan> plans;
  private final BarPlaces places;
  private final int mostSteps;
  private final double firstX;

  /**
   * @param staves from above, of one meter and grid
   * @param plans the systems that all of them are cut into
   */
  ScoreMeasures(List<Engraver> staves, List<SystemPlan> plans) {
    this.staves = staves;
    this.plans = plans;
    StaffPart first = staves.get(0).part();
    places =
        new BarPlaces(
            first.stepsPerBar(),
            first.bars(),
            staves.stream().flatMap(staff -> staff.columns().stream()).toList());
    mostSteps = plans.stream().mapToInt(plan -> plan.bars() * first.stepsPerBar()).max().orElse(1);
    firstX = staves.stream().mapToDouble(staff -> staff.firstX(plans)).max().orElse(0);
  }

  /** What fills a width. */
  Spacing filling(double width) {
    double step = stepFilling(width);
    double[] distances = places.distances(step);
    return new Spacing(firstX, step, places.usual(), distances, end(distances));
  }

  /** The narrowest step at which nothing touches on any staff. */
  double leastStep() {
    return Math.max(
        places.stepWidth(), staves.stream().mapToDouble(Engraver::leastForChords).max().orElse(0));
  }

  /** The step that fills a width, at most {@link Measure#MAX_STEP} where less is not needed. */
  private double stepFilling(double width) {
    double least = leastStep();
    double step = least;
    for (int i = 0; i < 2; i++) { // a wider step moves the last line a little
      double fill = step + (width - widthAt(step)) / mostSteps;
      step = Math.max(least, Math.min(Math.max(least, Measure.MAX_STEP), fill));
    }
    return step;
  }

  double widthAt(double step) {
    return firstX + mostSteps * step - end(places.distances(step));
  }

  /** How far before the end of its last step the lines end that end a system; one place for all. */
  private double end(double[] distances) {
    double nearest = places.usual();
    for (SystemPlan plan : plans) {
      nearest = Math.min(nearest, distances[plan.firstBar() + plan.bars()]);
    }
    return nearest - endRoom();
  }

  private double endRoom() {
    return plans.stream().anyMatch(plan -> plan.repeatTo() || plan.last())
        ? BarLines.END_ROOM
        : Measure.THIN_BAR / 2;
  }
}
