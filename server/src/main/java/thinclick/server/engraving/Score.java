package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Parts that stand below each other, spelled once and laid out as often as a page asks: a step has
 * one place in all of them, and so has a bar line. The click and the stages' words stand above the
 * first alone, or above the first of each page, as high on all of them.
 */
public final class Score {
  /** From a staff's last line to a ruler that is clear of it, spaces. */
  private static final double CLEAR = 2;

  private final List<Engraver> staves;
  private final int perPage;

  /**
   * @param parts from above, of one meter, grid, length and click
   */
  public Score(List<StaffPart> parts) {
    this(parts, parts.size());
  }

  /**
   * Parts of several pages that are turned while they are read.
   *
   * @param parts page by page, from above, of one meter, grid, length and click
   * @param perPage how many stand on each
   */
  public Score(List<StaffPart> parts, int perPage) {
    staves = parts.stream().map(Engraver::new).toList();
    this.perPage = perPage;
  }

  /**
   * The least width at which nothing touches.
   *
   * @param plans the systems that all parts are cut into
   */
  public double narrowest(List<SystemPlan> plans) {
    ScoreMeasures measures = new ScoreMeasures(staves, plans);
    return measures.widthAt(measures.leastStep());
  }

  /**
   * Lays out the systems.
   *
   * @param plans the systems, in order
   * @param width the width to fill, spaces; more is taken where it is too little, and less where a
   *     step would be wider than {@value Measure#MAX_STEP} spaces
   * @return for each system a staff for each part
   */
  public List<List<StaffSystem>> systems(List<SystemPlan> plans, double width) {
    return systems(plans, width, 0, Map.of());
  }

  /**
   * The same for a page that is turned: the click's line stands as far above the staff in all
   * systems, where the highest music lets it, so that the eye finds it where it was.
   */
  public List<List<StaffSystem>> turnedSystems(List<SystemPlan> plans, double width) {
    return systems(plans, width, clickOver(systems(plans, width)), Map.of());
  }

  /**
   * The same with the beats' ruler as far below all staves of one kind, where the lowest music lets
   * it.
   *
   * @param close whether it stands closer to the lowest music than usual, where the page is small
   */
  public List<List<StaffSystem>> evenSystems(List<SystemPlan> plans, double width, boolean close) {
    List<List<StaffSystem>> near = systems(plans, width);
    Map<Integer, Double> rulers = rulers(near);
    double nearer = close ? Engraver.LANE_AIR - Engraver.LEAST_RULER_AIR : 0;
    rulers.replaceAll((lines, under) -> under - nearer);
    return systems(plans, width, clickOver(near), rulers);
  }

  /**
   * The same with the beats' ruler two spaces and more below every staff, where it is not taken for
   * one of its lines.
   */
  public List<List<StaffSystem>> clearSystems(List<SystemPlan> plans, double width) {
    Map<Integer, Double> rulers = new HashMap<>();
    for (Engraver staff : staves) {
      int lines = staff.part().clef().lines();
      rulers.put(lines, (lines - 1) / 2.0 + CLEAR);
    }
    return systems(plans, width, clickOver(systems(plans, width)), rulers);
  }

  /**
   * @param over how far above the staff's middle line the click's stands at the least
   * @param rulers how far below their middle line the ruler stands at the least, by the number of a
   *     staff's lines
   */
  private List<List<StaffSystem>> systems(
      List<SystemPlan> plans, double width, double over, Map<Integer, Double> rulers) {
    ScoreMeasures measures = new ScoreMeasures(staves, plans);
    double step = measures.stepFilling(width);
    List<List<StaffSystem>> lines = new ArrayList<>();
    for (SystemPlan plan : plans) {
      List<StaffSystem> line = new ArrayList<>();
      for (Engraver staff : staves) {
        boolean click = line.size() % perPage == 0;
        double under = rulers.getOrDefault(staff.part().clef().lines(), 0.0);
        line.add(staff.system(plan, measures, step, click, over, under));
      }
      lines.add(line);
    }
    return lines;
  }

  private Map<Integer, Double> rulers(List<List<StaffSystem>> lines) {
    Map<Integer, Double> rulers = new HashMap<>();
    for (List<StaffSystem> line : lines) {
      for (int at = 0; at < line.size(); at++) {
        StaffSystem system = line.get(at);
        int kind = staves.get(at).part().clef().lines();
        rulers.merge(kind, system.rulerY() - system.staffY(), Math::max);
      }
    }
    return rulers;
  }

  /** How far the click's line stands above its staff where the highest music is. */
  private double clickOver(List<List<StaffSystem>> lines) {
    double over = 0;
    for (List<StaffSystem> line : lines) {
      for (int first = 0; first < line.size(); first += perPage) {
        over = Math.max(over, line.get(first).staffY() - line.get(first).clickY());
      }
    }
    return over;
  }
}
