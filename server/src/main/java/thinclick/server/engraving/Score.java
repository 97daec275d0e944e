package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

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
  private @Nullable Drafts last;

  /** What was drawn at a width: how far from its music the rest stands is tried in several ways. */
  private record Drafts(List<SystemPlan> plans, double width, List<List<StaffDraft>> systems) {}

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
    return finished(drafts(plans, width), 0, Map.of());
  }

  /**
   * The same for a page that is turned: the click's line stands as far above the staff in all
   * systems, where the highest music lets it, so that the eye finds it where it was.
   */
  public List<List<StaffSystem>> turnedSystems(List<SystemPlan> plans, double width) {
    List<List<StaffDraft>> drafts = drafts(plans, width);
    return finished(drafts, clickOver(drafts), Map.of());
  }

  /**
   * The same with the beats' ruler as far below all staves of one kind, where the lowest music lets
   * it.
   *
   * @param close whether it stands closer to the lowest music than usual, where the page is small
   */
  public List<List<StaffSystem>> evenSystems(List<SystemPlan> plans, double width, boolean close) {
    List<List<StaffDraft>> drafts = drafts(plans, width);
    Map<Integer, Double> rulers = rulers(drafts);
    double nearer = close ? StaffDraft.LANE_AIR - StaffDraft.LEAST_RULER_AIR : 0;
    rulers.replaceAll((lines, under) -> under - nearer);
    return finished(drafts, clickOver(drafts), rulers);
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
    List<List<StaffDraft>> drafts = drafts(plans, width);
    return finished(drafts, clickOver(drafts), rulers);
  }

  /** The systems with their music alone; those of the last width are kept. */
  private List<List<StaffDraft>> drafts(List<SystemPlan> plans, double width) {
    Drafts before = last;
    if (before == null || before.width() != width || !before.plans().equals(plans)) {
      before = new Drafts(List.copyOf(plans), width, drawn(plans, width));
      last = before;
    }
    return before.systems();
  }

  private List<List<StaffDraft>> drawn(List<SystemPlan> plans, double width) {
    Spacing spacing = new ScoreMeasures(staves, plans).filling(width);
    return plans.stream()
        .map(plan -> staves.stream().map(staff -> new StaffDraft(staff, plan, spacing)).toList())
        .toList();
  }

  /**
   * @param over how far above the staff's middle line the click's stands at the least
   * @param rulers how far below their middle line the ruler stands at the least, by the number of a
   *     staff's lines
   */
  private List<List<StaffSystem>> finished(
      List<List<StaffDraft>> drafts, double over, Map<Integer, Double> rulers) {
    List<List<StaffSystem>> lines = new ArrayList<>();
    for (List<StaffDraft> draft : drafts) {
      List<StaffSystem> line = new ArrayList<>();
      for (StaffDraft staff : draft) {
        boolean click = line.size() % perPage == 0;
        double under = rulers.getOrDefault(staff.part().clef().lines(), 0.0);
        line.add(staff.finished(click, over, under));
      }
      lines.add(line);
    }
    return lines;
  }

  private static Map<Integer, Double> rulers(List<List<StaffDraft>> lines) {
    Map<Integer, Double> rulers = new HashMap<>();
    for (List<StaffDraft> line : lines) {
      for (StaffDraft staff : line) {
        rulers.merge(staff.part().clef().lines(), staff.rulerUnder(), Math::max);
      }
    }
    return rulers;
  }

  /** How far the click's line stands above its staff where the highest music is. */
  private double clickOver(List<List<StaffDraft>> lines) {
    double over = 0;
    for (List<StaffDraft> line : lines) {
      for (int first = 0; first < line.size(); first += perPage) {
        over = Math.max(over, line.get(first).clickOver());
      }
    }
    return over;
  }
}
