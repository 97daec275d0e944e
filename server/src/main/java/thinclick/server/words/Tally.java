package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Analysis.Kind;
import thinclick.server.scoring.PlayerReview;

/**
 * What became of all that is written for a player, so that the sum is told: what was placed, too
 * early, too late, at a displaced place, not judged and dropped is what was written. What nobody
 * wrote stands beside it.
 *
 * @param placed within the tolerance
 * @param early matched at home, but too early to be placed
 * @param late matched at home, but too late to be placed
 * @param displaced played whole steps off the part
 * @param unjudged played where no pulse is known
 * @param dropped not played
 * @param added played, and not written
 */
public record Tally(
    int placed, int early, int late, int displaced, int unjudged, int dropped, int added) {

  /** Counts one player's attacks; what is written while away or after a stop is not counted. */
  public static Tally of(Analysis.PlayerAnalysis player) {
    int placed = 0;
    int early = 0;
    int late = 0;
    int displaced = 0;
    int unjudged = 0;
    int dropped = 0;
    for (Analysis.Written one : player.written()) {
      switch (one.fate()) {
        case PLACED -> placed++;
        case EARLY -> early++;
        case LATE -> late++;
        case DISPLACED -> displaced++;
        case MATCHED -> unjudged++;
        case DROPPED -> dropped++;
        case AWAY, AFTER_THE_STOP -> {
          // not counted
        }
      }
    }
    long added = player.played().stream().filter(one -> one.kind() == Kind.ADDED).count();
    return new Tally(placed, early, late, displaced, unjudged, dropped, (int) added);
  }

  /** All that is written and counts. */
  public int written() {
    return placed + early + late + displaced + unjudged + dropped;
  }

  /**
   * Of a review, which does not tell early from late: what was played at home and is not placed.
   */
  public static int outside(PlayerReview player) {
    return player.written() - player.placed() - player.displaced() - player.dropped();
  }

  /** "32 written: 29 placed, 2 too late, 1 dropped; 3 added." Only what there is any of. */
  public Said said() {
    List<Said> parts = new ArrayList<>();
    add(parts, "tally.placed", placed);
    add(parts, "tally.early", early);
    add(parts, "tally.late", late);
    add(parts, "tally.displaced", displaced);
    add(parts, "tally.unjudged", unjudged);
    add(parts, "tally.dropped", dropped);
    Said.@Nullable Row row = parts.isEmpty() ? null : new Said.Row(parts, false);
    Said sum = row == null ? Said.of("tally.nothing") : Said.of("tally.written", written(), row);
    return added == 0 ? sum : Said.of("tally.andAdded", sum, added);
  }

  private static void add(List<Said> parts, String key, int count) {
    if (count > 0) {
      parts.add(Said.of(key, count));
    }
  }
}
