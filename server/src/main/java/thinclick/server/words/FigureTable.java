package thinclick.server.words;

import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.PositionReview;
import thinclick.server.scoring.Review;

/**
 * A review's figures for somebody's spreadsheet, a row a player: with heads to be read, and with
 * the decimal sign and the separator that a spreadsheet expects where its user lives. An empty
 * field is not known; from and to are 95 % intervals.
 */
public final class FigureTable {
  /** Without it some spreadsheets take UTF-8 for the system's old encoding. */
  private static final String BYTE_ORDER_MARK = "\ufeff";

  private final Speaker speaker;
  private final char point;
  private final String separator;

  private FigureTable(Speaker speaker, Locale place) {
    this.speaker = speaker;
    this.point = DecimalFormatSymbols.getInstance(place).getDecimalSeparator();
    this.separator = point == ',' ? ";" : ",";
  }

  /**
   * A head and a row for each player, in the review's order; bars count from 1, lines end in CRLF.
   *
   * @param speaker says the heads
   * @param place whose decimal sign is used
   */
  public static String of(Review review, Speaker speaker, Locale place) {
    FigureTable table = new FigureTable(speaker, place);
    StringBuilder csv = new StringBuilder(BYTE_ORDER_MARK);
    AttackTable.line(csv, table.heads(), table.separator);
    for (PlayerReview player : review.players()) {
      AttackTable.line(csv, table.row(player), table.separator);
    }
    return csv.toString();
  }

  private List<String> heads() {
    List<String> heads = new ArrayList<>();
    for (String key :
        List.of(
            "table.player",
            "table.role",
            "table.standIn",
            "table.written",
            "table.placed",
            "table.outside",
            "table.displaced",
            "table.dropped",
            "table.added")) {
      heads.add(speaker.say(key));
    }
    for (String key : List.of("table.hold", "table.lean", "table.spread")) {
      heads.add(speaker.say(key));
      heads.add(speaker.say(Said.of("table.from", Said.of(key))));
      heads.add(speaker.say(Said.of("table.to", Said.of(key))));
    }
    for (String key :
        List.of(
            "table.onbeatWritten",
            "table.onbeatPlaced",
            "table.offbeatWritten",
            "table.offbeatPlaced",
            "table.offbeatMinusOnbeat",
            "table.offFromBar")) {
      heads.add(speaker.say(key));
    }
    return heads.stream().map(AttackTable::text).toList();
  }

  private List<@Nullable String> row(PlayerReview player) {
    List<@Nullable String> cells = new ArrayList<>();
    String role = player.role();
    cells.add(AttackTable.text(player.player()));
    cells.add(role == null ? null : AttackTable.text(RoleWords.of(role, speaker)));
    cells.add(player.standIn() ? speaker.say("table.yes") : null);
    cells.add(Integer.toString(player.written()));
    cells.add(Integer.toString(player.placed()));
    cells.add(Integer.toString(Tally.outside(player)));
    cells.add(Integer.toString(player.displaced()));
    cells.add(Integer.toString(player.dropped()));
    cells.add(Integer.toString(player.added()));
    figure(cells, player.hold());
    figure(cells, player.leanMillis());
    figure(cells, player.spreadMillis());
    position(cells, player.onbeat());
    position(cells, player.offbeat());
    cells.add(number(player.offbeatMinusOnbeatMillis().value()));
    cells.add(
        player.displacements().isEmpty()
            ? null
            : Integer.toString(player.displacements().get(0).fromBar() + 1));
    return cells;
  }

  private static void position(List<@Nullable String> cells, PositionReview position) {
    cells.add(Integer.toString(position.written()));
    cells.add(Integer.toString(position.placed()));
  }

  private void figure(List<@Nullable String> cells, Figure figure) {
    Interval interval = figure.interval();
    cells.add(number(figure.value()));
    cells.add(interval == null ? null : number(interval.low()));
    cells.add(interval == null ? null : number(interval.high()));
  }

  private @Nullable String number(@Nullable Double value) {
    return value == null ? null : String.format(Locale.ROOT, "%.1f", value).replace('.', point);
  }
}
