package thinclick.server.material;

import static thinclick.server.material.Rung.EVERY_SECOND_BAR;
import static thinclick.server.material.Rung.FIRST_ONLY;
import static thinclick.server.material.Rung.GROUP_FIRSTS;
import static thinclick.server.material.StockDrill.Row.row;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import thinclick.protocol.file.DealKind;

/** The ensembles, a row a chair; common practice, no source. Levels and tempos are our own. */
final class StockEnsembles {
  private static final StockDrill.Grid EIGHTHS = StockDrill.Grid.of("4/4", 2);
  private static final StockDrill.Grid SIXTEENTHS = StockDrill.Grid.of("4/4", 4);
  private static final String SON = "0,3,6,10,12";

  private StockEnsembles() {}

  static List<StockDrill> all() {
    return List.of(
        EIGHTHS
            .rows("Odds and evens", 1, DealKind.AS_WRITTEN, row("0,2,4,6"), row("1,3,5,7"))
            .tempo(60, 160)
            .level(3)
            .to(GROUP_FIRSTS),
        EIGHTHS
            .rows("Jigsaw", 1, DealKind.AS_WRITTEN, row("0,3,6"), row("1,4,7"), row("2,5"))
            .tempo(60, 150)
            .level(5)
            .to(FIRST_ONLY),
        EIGHTHS
            .rows(
                "Four-chair canon",
                1,
                DealKind.AS_WRITTEN,
                row("0,3"),
                row("0,3").entering(2),
                row("0,3").entering(4),
                row("0,3").entering(6))
            .tempo(70, 160)
            .level(5)
            .to(FIRST_ONLY),
        SIXTEENTHS
            .rows(
                "Hocket in sixteenths",
                1,
                DealKind.AS_WRITTEN,
                row("0,3,6,9,12,15"),
                row("1,4,7,10,13"),
                row("2,5,8,11,14"))
            .tempo(50, 90)
            .level(7)
            .to(FIRST_ONLY),
        EIGHTHS
            .rows("Clave canon", 2, DealKind.AS_WRITTEN, row(SON), row(SON).entering(8))
            .tempo(80, 180)
            .level(7)
            .to(FIRST_ONLY),
        EIGHTHS
            .rows(
                "Layers over three bars",
                3,
                DealKind.AS_WRITTEN,
                row("0,4..20").grouped(4),
                row("0,3..21").grouped(3))
            .tempo(70, 160)
            .level(7)
            .to(EVERY_SECOND_BAR),
        EIGHTHS
            .rows("Displacement ladder", 32, DealKind.UNISON, row(ladder()))
            .tempo(80, 180)
            .level(6)
            .to(FIRST_ONLY),
        EIGHTHS
            .rows(
                "Call",
                2,
                DealKind.AS_WRITTEN,
                row("0,3,6").chair("call", "comping", "clapping"),
                row("9,11,13").chair("answer", "answer", "clapping"))
            .tempo(70, 160)
            .level(3)
            .to(GROUP_FIRSTS),
        EIGHTHS
            .rows(
                "Trading fours",
                8,
                DealKind.TRADING,
                row("0,2,3,4,6,7").bars(1).chair("ride", "ride", "ride").free(4, 8),
                row("0,2,4,6").bars(1).chair("bass", "bass", "bass").free(4, 8),
                row("0,3").bars(1).chair("comping", "comping", "piano").free(4, 8),
                row("3,7,10,15").bars(2).chair("answers", "answer", "tenor saxophone").free(4, 8))
            .tempo(80, 180)
            .level(5)
            .to(FIRST_ONLY));
  }

  /** The Charleston, a step later after every four bars; what would fall past the end is left. */
  private static String ladder() {
    return IntStream.range(0, 32)
        .flatMap(bar -> IntStream.of(0, 3).map(step -> 8 * bar + step + bar / 4))
        .filter(step -> step < 256)
        .mapToObj(Integer::toString)
        .collect(Collectors.joining(","));
  }
}
