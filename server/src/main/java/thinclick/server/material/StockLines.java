package thinclick.server.material;

import static thinclick.server.material.Rung.EVERY_FOURTH_BAR;
import static thinclick.server.material.Rung.EVERY_SECOND_BAR;
import static thinclick.server.material.Rung.FIRST_ONLY;
import static thinclick.server.material.StockDrill.Row.row;

import java.util.List;
import java.util.stream.Collectors;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Line;

/** Lines over progressions; common practice, no source. Levels and tempos are our own. */
final class StockLines {
  private static final StockDrill.Grid EIGHTHS = StockDrill.Grid.of("4/4", 2);

  private StockLines() {}

  static List<StockDrill> all() {
    return List.of(
        EIGHTHS
            .rows(
                "Minor two-five line",
                4,
                DealKind.UNISON,
                row("1,3..15,19").line(Line.ofProgression("G minor", "minor ii-V-i")))
            .tempo(70, 180)
            .level(5)
            .to(FIRST_ONLY),
        EIGHTHS
            .rows(
                "Two-five line",
                4,
                DealKind.UNISON,
                row("1,2,5,6,9,10,13,15,19").line(Line.ofProgression("Eb", "ii-V-I")))
            .tempo(70, 180)
            .level(5)
            .to(FIRST_ONLY),
        EIGHTHS
            .rows(
                "Threes over a blues",
                12,
                DealKind.UNISON,
                row("0,3..93").grouped(3).line(Line.ofProgression("Bb", "12-bar blues")))
            .tempo(70, 200)
            .level(7)
            .to(EVERY_SECOND_BAR),
        EIGHTHS
            .rows(
                "Sevens over a blues",
                12,
                DealKind.UNISON,
                row("0,7..84,91,93").grouped(7).line(Line.ofProgression("F", "12-bar blues")))
            .tempo(70, 180)
            .level(9)
            .to(EVERY_FOURTH_BAR),
        EIGHTHS
            .rows(
                "Fives over a form",
                32,
                DealKind.UNISON,
                row(fives()).bars(8).grouped(5).line(Line.ofProgression("Bb", "32-bar AABA")))
            .tempo(70, 180)
            .level(8)
            .to(EVERY_SECOND_BAR));
  }

  private static String fives() {
    return GroupedCell.of(5, List.of(0), 64, 2, GroupedCell.Aim.UPBEAT).attackSteps().stream()
        .map(String::valueOf)
        .collect(Collectors.joining(","));
  }
}
