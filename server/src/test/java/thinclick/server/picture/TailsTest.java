package thinclick.server.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class TailsTest {
  @Test
  void unitsEndBelowEachOtherWhateverWordsFollow() {
    List<String> cells = List.of("5\u00a0ms late", "20\u00a0ms early", "centred", "98\u00a0%");

    assertThat(Tails.slack(cells, String::length)).containsExactly(3.0, 2.0, 0.0, 8.0);
    assertThat(Tails.longest(cells, String::length)).isEqualTo(" centred".length());
  }

  @Test
  void wordsWithoutAFigureBeginWhereThoseBehindFiguresDo() {
    List<String> cells = List.of("5\u00a0ms late", "1\u00a0ms early", "on it");

    assertThat(Tails.slack(cells, String::length)).containsExactly(1.0, 0.0, 0.0);
    assertThat(Tails.slack(List.of("8\u00a0ms", "not known"), String::length)).containsOnly(0.0);
  }

  @Test
  void countsEndWhereTheColumnDoes() {
    assertThat(Tails.slack(List.of("29 of 32", "0", "\u2013"), String::length)).containsOnly(0.0);
  }

  @Test
  void figuresOnASheetStandUnitUnderUnit() {
    PlayerSheet.Table table =
        new PlayerSheet.Table(
            List.of("Player", "Lean"),
            List.of(List.of("Ana", "5\u00a0ms late"), List.of("Ben", "20\u00a0ms early")),
            Set.of(0));
    Easel easel = new Easel();
    SheetTable set = new SheetTable(table, 0);
    set.line(easel, 0, 0);
    set.line(easel, 20, 1);

    List<Double> unitsEnd =
        easel.items().stream()
            .map(Drawing.Words.class::cast)
            .filter(words -> words.text().contains("ms"))
            .map(
                words ->
                    words.left()
                        + words
                            .face()
                            .width(
                                words.text().substring(0, words.text().indexOf("ms") + 2),
                                words.size()))
            .toList();
    assertThat(unitsEnd).hasSize(2);
    assertThat(unitsEnd.get(0)).isCloseTo(unitsEnd.get(1), within(.5));
  }
}
