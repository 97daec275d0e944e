package thinclick.server.material;

import static thinclick.server.material.Rung.ALL_BEATS;
import static thinclick.server.material.Rung.EVERY_FOURTH_BAR;
import static thinclick.server.material.Rung.EVERY_SECOND_BAR;
import static thinclick.server.material.Rung.FIRST_ONLY;
import static thinclick.server.material.Rung.GROUP_FIRSTS;
import static thinclick.server.material.Rung.GROUP_LASTS;
import static thinclick.server.material.Rung.LAST_AND;
import static thinclick.server.material.Rung.LAST_ONLY;

import java.util.List;

/**
 * The cells. Timelines are of the trade and the research literature (the rhythms of Gomez, Melvin,
 * Rappaport and Toussaint 2005, BRIDGES, among them); the others are common practice, no source.
 * Levels and tempos are our own choice.
 */
final class StockCells {
  private static final StockDrill.Grid EIGHTHS = StockDrill.Grid.of("4/4", 2);
  private static final StockDrill.Grid WALTZ = StockDrill.Grid.of("3/4", 2);
  private static final StockDrill.Grid SIX_EIGHT = StockDrill.Grid.of("6/8", 3);
  private static final StockDrill.Grid TWELVE_EIGHT = StockDrill.Grid.of("12/8", 3);
  private static final StockDrill.Grid SIXTEENTHS = StockDrill.Grid.of("4/4", 4);
  private static final StockDrill.Grid TRIPLETS = StockDrill.Grid.of("4/4", 3);

  private StockCells() {}

  static List<StockDrill> all() {
    return List.of(
        EIGHTHS.cell("Even eighths", 1, "0-7").tempo(60, 160).level(1).to(ALL_BEATS),
        EIGHTHS.cell("Bare one", 1, "1-7").tempo(60, 140).level(1).to(ALL_BEATS),
        EIGHTHS
            .cell("Bare one and three", 1, "1,2,3,5,6,7")
            .tempo(60, 140)
            .level(2)
            .to(GROUP_FIRSTS),
        EIGHTHS.cell("Ands alone", 1, "1,3,5,7").tempo(60, 180).level(3).to(GROUP_LASTS),
        EIGHTHS.cell("Gapped ands", 1, "1,3,7").tempo(70, 160).level(4).to(FIRST_ONLY),
        EIGHTHS.cell("Early exit", 1, "1,3,5").tempo(70, 160).level(3).to(GROUP_FIRSTS),
        EIGHTHS.cell("Last-and stop", 1, "1,2,4,7").tempo(70, 180).level(4).to(GROUP_LASTS),
        EIGHTHS.cell("Charleston", 1, "0,3").tempo(80, 220).level(2).to(GROUP_FIRSTS),
        EIGHTHS.cell("Late Charleston", 1, "1,4").tempo(80, 200).level(3).to(GROUP_LASTS),
        EIGHTHS.cell("Two-and four-and", 1, "3,7").tempo(80, 240).level(4).to(GROUP_LASTS),
        EIGHTHS.cell("Push only", 1, "7").tempo(80, 240).level(5).to(FIRST_ONLY),
        EIGHTHS.cell("Tresillo", 1, "0,3,6", 3).tempo(70, 200).level(2).to(GROUP_FIRSTS),
        EIGHTHS.cell("Cinquillo", 1, "0,2,3,5,6").tempo(70, 180).level(3).to(GROUP_FIRSTS),
        EIGHTHS.cell("Habanera", 1, "0,3,4,6").tempo(60, 160).level(2).to(GROUP_FIRSTS),
        EIGHTHS.cell("Short threes", 2, "0,3..15", 3).tempo(70, 200).level(4).to(GROUP_FIRSTS),
        EIGHTHS
            .cell("Hollow threes", 2, "0,1,3,4,6,7,9,10,12,13,15", 3)
            .tempo(70, 180)
            .level(5)
            .to(GROUP_LASTS),
        EIGHTHS
            .cell("Split fives", 2, "0,3,5,8,10,13,15", 5)
            .tempo(70, 180)
            .level(6)
            .to(FIRST_ONLY),
        EIGHTHS.cell("And-to-and", 2, "1,2,3,5,7,9,11,13").tempo(70, 180).level(5).to(GROUP_LASTS),
        EIGHTHS.cell("Son 3-2", 2, "0,3,6,10,12").tempo(80, 220).level(4).to(FIRST_ONLY),
        EIGHTHS.cell("Son 2-3", 2, "2,4,8,11,14").tempo(80, 220).level(4).to(FIRST_ONLY),
        EIGHTHS.cell("Rumba 3-2", 2, "0,3,7,10,12").tempo(80, 220).level(5).to(FIRST_ONLY),
        EIGHTHS.cell("Rumba 2-3", 2, "2,4,8,11,15").tempo(80, 220).level(5).to(FIRST_ONLY),
        EIGHTHS.cell("Bossa", 2, "0,3,6,10,13").tempo(80, 180).level(4).to(FIRST_ONLY),
        EIGHTHS.cell("Shiko", 2, "0,4,6,10,12").tempo(80, 180).level(3).to(GROUP_FIRSTS),
        EIGHTHS.cell("Soukous", 2, "0,3,6,10,11").tempo(80, 200).level(5).to(FIRST_ONLY),
        EIGHTHS.cell("Gahu", 2, "0,3,6,10,14").tempo(80, 180).level(5).to(FIRST_ONLY),
        EIGHTHS.cell("Samba seven", 2, "0,3,5,7,10,12,14").tempo(80, 220).level(5).to(FIRST_ONLY),
        EIGHTHS.cell("Sparse comp", 2, "3,7,10,15").tempo(80, 220).level(5).to(LAST_ONLY),
        EIGHTHS
            .cell("Long threes", 4, "0,3..24,27,29,31", 3)
            .tempo(70, 200)
            .level(6)
            .to(EVERY_SECOND_BAR),
        EIGHTHS.cell("Long fives", 4, "0,5..25,30", 5).tempo(70, 180).level(7).to(EVERY_SECOND_BAR),
        EIGHTHS.cell("Long sixes", 4, "0,6..24,30", 6).tempo(70, 200).level(5).to(FIRST_ONLY),
        EIGHTHS
            .cell("Long sevens", 4, "0,7..28,31", 7)
            .tempo(70, 180)
            .level(8)
            .to(EVERY_FOURTH_BAR),
        EIGHTHS
            .cell("Split sevens", 4, "0,2,4,7,9,11,14,16,18,21,23,25,28,31", 7)
            .tempo(70, 160)
            .level(8)
            .to(EVERY_SECOND_BAR),
        WALTZ.cell("Waltz threes", 1, "0,3", 3).tempo(80, 200).level(3).to(FIRST_ONLY),
        WALTZ.cell("Waltz late sixes", 1, "1,2,4").tempo(80, 180).level(4).to(LAST_ONLY),
        WALTZ.cell("Waltz fours", 2, "0,4,8", 4).tempo(80, 200).level(4).to(FIRST_ONLY),
        WALTZ
            .cell("Waltz fives", 4, "0,5,10,15,20,22", 5)
            .tempo(80, 180)
            .level(7)
            .to(EVERY_SECOND_BAR),
        WALTZ
            .cell("Waltz sevens", 4, "0,7,14,21,23", 7)
            .tempo(80, 160)
            .level(8)
            .to(EVERY_SECOND_BAR),
        SIX_EIGHT.cell("Six-eight twos", 1, "0,2,4", 2).tempo(50, 110).level(3).to(FIRST_ONLY),
        SIX_EIGHT.cell("Six-eight late threes", 1, "1,4").tempo(50, 110).level(4).to(FIRST_ONLY),
        SIX_EIGHT.cell("Six-eight late sixes", 1, "2,3,5").tempo(50, 100).level(5).to(LAST_ONLY),
        SIX_EIGHT
            .cell("Six-eight fives", 4, "0,5,10,15,20,22", 5)
            .tempo(50, 90)
            .level(8)
            .to(EVERY_SECOND_BAR),
        SIX_EIGHT
            .cell("Six-eight sevens", 4, "0,7,14,21,23", 7)
            .tempo(50, 90)
            .level(8)
            .to(EVERY_SECOND_BAR),
        TWELVE_EIGHT.cell("Bembe", 1, "0,2,4,5,7,9,11").tempo(60, 130).level(6).to(FIRST_ONLY),
        TWELVE_EIGHT.cell("Fume-fume", 1, "0,2,4,7,9").tempo(60, 130).level(5).to(FIRST_ONLY),
        SIXTEENTHS
            .cell("Sixteenth threes", 1, "0,3,6,9,12,14", 3)
            .tempo(50, 110)
            .level(6)
            .to(FIRST_ONLY),
        SIXTEENTHS
            .cell("Squeezed son one late", 1, "1,4,7,11,13")
            .tempo(50, 100)
            .level(8)
            .to(LAST_AND),
        SIXTEENTHS
            .cell("Squeezed son three late", 1, "3,6,9,13,15")
            .tempo(50, 100)
            .level(8)
            .to(LAST_AND),
        TRIPLETS
            .cell("Quarter triplets", 1, "0,2,4,6,8,10", 2)
            .tempo(60, 140)
            .level(4)
            .to(FIRST_ONLY),
        TRIPLETS.cell("Three over the bar", 1, "0,4,8", 4).tempo(60, 160).level(6).to(FIRST_ONLY),
        TRIPLETS.cell("Middle triplet", 1, "1,4,7,10").tempo(60, 140).level(6).to(GROUP_FIRSTS),
        TRIPLETS.cell("Last triplet", 1, "2,5,8,11").tempo(60, 140).level(6).to(GROUP_FIRSTS));
  }
}
