package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Review;

/**
 * A review's figures, a row a player, as comma-separated values (RFC 4180). Numbers have no locale;
 * an empty field is not known; {@code ...Low} and {@code ...High} are 95 % intervals.
 */
public final class FigureTable {
  private static final List<String> HEADS =
      List.of(
          "player",
          "role",
          "standIn",
          "written",
          "placed",
          "dropped",
          "added",
          "displaced",
          "hold",
          "holdLow",
          "holdHigh",
          "leanMillis",
          "leanMillisLow",
          "leanMillisHigh",
          "spreadMillis",
          "spreadMillisLow",
          "spreadMillisHigh",
          "onbeatWritten",
          "onbeatPlaced",
          "offbeatWritten",
          "offbeatPlaced",
          "offbeatMinusOnbeatMillis",
          "firstDisplacedBar");

  private FigureTable() {}

  /** A head and a row for each player, in the review's order; bars count from 0. */
  public static String of(Review review) {
    StringBuilder csv = new StringBuilder();
    AttackTable.line(csv, HEADS);
    for (PlayerReview player : review.players()) {
      AttackTable.line(csv, row(player));
    }
    return csv.toString();
  }

  private static List<@Nullable String> row(PlayerReview player) {
    List<@Nullable String> cells = new ArrayList<>();
    cells.add(AttackTable.text(player.player()));
    cells.add(player.role() == null ? null : AttackTable.text(player.role()));
    cells.add(Boolean.toString(player.standIn()));
    cells.add(Integer.toString(player.written()));
    cells.add(Integer.toString(player.placed()));
    cells.add(Integer.toString(player.dropped()));
    cells.add(Integer.toString(player.added()));
    cells.add(Integer.toString(player.displaced()));
    figure(cells, player.hold());
    figure(cells, player.leanMillis());
    figure(cells, player.spreadMillis());
    cells.add(Integer.toString(player.onbeat().written()));
    cells.add(Integer.toString(player.onbeat().placed()));
    cells.add(Integer.toString(player.offbeat().written()));
    cells.add(Integer.toString(player.offbeat().placed()));
    cells.add(number(player.offbeatMinusOnbeatMillis().value()));
    cells.add(
        player.displacements().isEmpty()
            ? null
            : Integer.toString(player.displacements().get(0).fromBar()));
    return cells;
  }

  private static void figure(List<@Nullable String> cells, Figure figure) {
    Interval interval = figure.interval();
    cells.add(number(figure.value()));
    cells.add(interval == null ? null : number(interval.low()));
    cells.add(interval == null ? null : number(interval.high()));
  }

  private static @Nullable String number(@Nullable Double value) {
    return value == null ? null : String.format(Locale.ROOT, "%.3f", value);
  }
}
