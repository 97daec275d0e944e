package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Take;
import thinclick.server.scoring.Analysis;

/**
 * Every attack of a take with what became of it, as comma-separated values (RFC 4180): for
 * spreadsheets and statistics. Numbers have no locale; an empty field is not known.
 */
public final class AttackTable {
  private static final List<String> HEADS =
      List.of(
          "player",
          "micros",
          "fromBarOneMillis",
          "kind",
          "writtenStep",
          "writtenBar",
          "displacementSteps",
          "asynchronyMillis",
          "pulseMillis",
          "velocity",
          "pitch",
          "lengthMillis");

  private AttackTable() {}

  /** A head and a row for each attack, player by player in the order of time; lines end in CRLF. */
  public static String of(Analysis analysis) {
    StringBuilder csv = new StringBuilder();
    line(csv, HEADS, ",");
    for (Analysis.PlayerAnalysis player : analysis.players()) {
      for (Analysis.Played played : player.played()) {
        line(csv, row(analysis.take(), player.player(), played), ",");
      }
    }
    return csv.toString();
  }

  private static List<@Nullable String> row(Take take, String player, Analysis.Played played) {
    Attack attack = take.attacks().get(played.attack());
    Integer step = played.writtenStep();
    List<@Nullable String> cells = new ArrayList<>();
    cells.add(text(player));
    cells.add(Long.toString(attack.micros()));
    cells.add(millis((attack.micros() - take.startMicros()) / 1_000.0));
    cells.add(
        switch (played.kind()) {
          case MATCHED -> "matched";
          case ADDED -> "added";
          case COUNT_IN -> "countIn";
          case FREE -> "free";
          case SET_ASIDE -> "setAside";
          case AWAY -> "away";
        });
    cells.add(step == null ? null : step.toString());
    cells.add(step == null ? null : Long.toString(take.grid().barOf(step)));
    cells.add(step == null ? null : Integer.toString(played.displacement()));
    cells.add(millis(played.asynchronyMillis()));
    cells.add(millis(played.pulseMillis()));
    cells.add(attack.velocity() == null ? null : attack.velocity().toString());
    cells.add(attack.pitch() == null ? null : attack.pitch().toString());
    cells.add(millis(attack.lengthMillis()));
    return cells;
  }

  private static @Nullable String millis(@Nullable Double value) {
    return value == null ? null : String.format(Locale.ROOT, "%.3f", value);
  }

  /** A name is always quoted, and one that a spreadsheet would reckon with is made plain text. */
  static String text(String value) {
    boolean formula = !value.isEmpty() && "=+-@\t\r".indexOf(value.charAt(0)) >= 0;
    return "\"" + (formula ? "'" : "") + value.replace("\"", "\"\"") + "\"";
  }

  static void line(StringBuilder csv, List<? extends @Nullable String> cells, String separator) {
    for (int i = 0; i < cells.size(); i++) {
      String cell = cells.get(i);
      csv.append(i == 0 ? "" : separator).append(cell == null ? "" : cell);
    }
    csv.append("\r\n");
  }
}
