package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.music.Stage;
import thinclick.server.material.WrittenPart;

/**
 * A written part made ready to be laid out: as it stands, or played through its click plan with
 * what comes again unchanged folded into repeats.
 *
 * @param part the bars of the take
 * @param plans the systems that are written of it
 */
public record Reading(StaffPart part, List<SystemPlan> plans) {
  /** The most bars in a system. */
  public static final int MOST_BARS = 4;

  private static final int MOST_TAKE_BARS = 4096;

  public Reading {
    plans = List.copyOf(plans);
  }

  /**
   * The written bars once, with the click of the plan's beginning above them; between repeat signs
   * where the take is longer than they are.
   */
  public static Reading once(WrittenPart written, int barsPerSystem, Cut cut) {
    StaffPart part = TakePart.of(written, written.bars(), cut);
    boolean round = takeBars(written) > part.bars();
    List<SystemPlan> plans = new ArrayList<>();
    int to;
    for (int bar = 0; bar < part.bars(); bar = to) {
      int lead = written.repeatFromBar();
      int beyond = bar < lead ? lead : nextLine(written, bar - lead, barsPerSystem) + lead;
      to = Math.min(part.bars(), Math.min(beyond, bar + barsPerSystem));
      boolean last = to == part.bars();
      int times = round && last ? SystemPlan.ROUND : 1;
      boolean from = round && bar == written.repeatFromBar();
      plans.add(new SystemPlan(bar, to - bar, from, times, "", last));
    }
    return new Reading(part, plans);
  }

  /** All stages of the click plan, each beginning with a system of its own. */
  public static Reading wholeTake(WrittenPart written, int barsPerSystem, Cut cut) {
    StaffPart part = takePart(written, cut);
    return new Reading(part, Fold.fold(lines(written, part, barsPerSystem)));
  }

  /** The same without repeats: every bar of the take in a place of its own. */
  public static Reading writtenOut(WrittenPart written, int barsPerSystem, Cut cut) {
    StaffPart part = takePart(written, cut);
    List<SystemPlan> plans =
        lines(written, part, barsPerSystem).stream()
            .map(
                line ->
                    new SystemPlan(
                        line.firstBar(),
                        line.bars(),
                        false,
                        1,
                        line.direction(),
                        line.firstBar() + line.bars() == part.bars()))
            .toList();
    return new Reading(part, plans);
  }

  private static StaffPart takePart(WrittenPart written, Cut cut) {
    return TakePart.of(written, Math.min(takeBars(written), MOST_TAKE_BARS), cut);
  }

  private static int takeBars(WrittenPart written) {
    return written.stages().stream().mapToInt(Stage::bars).sum();
  }

  private static List<Fold.Line> lines(WrittenPart written, StaffPart part, int barsPerSystem) {
    List<Fold.Line> lines = new ArrayList<>();
    int bar = 0;
    int stageEnd = 0;
    for (Stage stage : written.stages()) {
      stageEnd = Math.min(stageEnd + stage.bars(), part.bars());
      String direction = part.words(stage);
      while (bar < stageEnd) {
        int to = Math.min(stageEnd, nextLine(written, bar, barsPerSystem));
        lines.add(new Fold.Line(bar, to - bar, direction, part.content(bar, to)));
        direction = "";
        bar = to;
      }
    }
    return lines;
  }

  /** How many bars suit a system: a period, or what divides it, at most {@value #MOST_BARS}. */
  public static int barsPerSystem(WrittenPart written) {
    int period = period(written);
    for (int bars = MOST_BARS; bars > 1; bars--) {
      if (period % bars == 0 || bars % period == 0) {
        return bars;
      }
    }
    return MOST_BARS;
  }

  private static int period(WrittenPart written) {
    return Math.max(1, written.bars() - written.repeatFromBar());
  }

  /**
   * The bar at which the next system begins: at most a period on, and never across the end of one.
   * Periods are counted from the first bar, also where a chair comes in later: so no entry stands
   * in a short system of its own, and all chairs turn to a new line at the same bars.
   */
  private static int nextLine(WrittenPart written, int bar, int barsPerSystem) {
    int next = bar + barsPerSystem;
    int period = period(written);
    int periodEnd = (bar / period + 1) * period;
    return period < barsPerSystem ? next : Math.min(next, periodEnd);
  }
}
