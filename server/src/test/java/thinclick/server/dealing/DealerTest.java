package thinclick.server.dealing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Demo;
import thinclick.server.material.Stock;
import thinclick.server.words.Speaker;

class DealerTest {
  private static final List<String> FOUR = Demo.RHYTHM_SECTION;

  private static Dealing deal(String title, List<String> players, long seed) {
    Drill drill = Stock.find(title);
    return Dealer.deal(drill, players, seed, drill.tempo().start(), drill.stages());
  }

  private static List<Integer> entries(Dealing dealing) {
    return dealing.parts().stream().map(Part::entryStep).toList();
  }

  /** Common practice, no source: a canon at two eighths of the Charleston fills the bar. */
  @Test
  void theFourChairCanonSoundsEveryEighthExactlyOnce() {
    Dealing dealing = deal("Four-chair canon", FOUR, 1);
    int[] sounding = new int[8];
    for (Part part : dealing.parts()) {
      part.attackSteps().stream()
          .filter(step -> step >= 16 && step < 24)
          .forEach(step -> sounding[step - 16]++);
    }

    assertThat(sounding).containsOnly(1);
    assertThat(entries(dealing)).containsExactly(0, 2, 4, 6);
  }

  @Test
  void attacksCountFromBarOneWithTheEntryAppliedAndFillTheWholeTake() {
    Drill drill = Stock.find("Four-chair canon");
    Part last = deal("Four-chair canon", FOUR, 1).parts().get(3);
    int total = drill.stages().stream().mapToInt(Stage::bars).sum() * 8;

    assertThat(last.attackSteps()).startsWith(6, 9, 14, 17).endsWith(total - 7, total - 2);
    assertThat(last.attackSteps()).allMatch(step -> step < total);
  }

  @Test
  void everyPlayerOfOneCellGetsAnEntryOfTheirOwn() {
    for (long seed = 0; seed < 50; seed++) {
      for (String title :
          List.of("Long threes", "Charleston", "Ands alone", "Bembe", "Push only")) {
        for (int players = 1; players <= 24; players++) {
          Dealing dealing = deal(title, Demo.TUESDAY_CLASS.subList(0, players), seed);
          Set<Integer> entries = new HashSet<>(entries(dealing));
          assertThat(entries).as("%s, %d players, seed %d", title, players, seed).hasSize(players);
          assertThat(dealing.sentences()).hasSize(players);
        }
      }
    }
  }

  @Test
  void playersBeyondTheChairsDoubleThemWithOtherEntries() {
    List<Part> parts = deal("Jigsaw", Demo.TUESDAY_CLASS.subList(0, 7), 5).parts();

    assertThat(parts.subList(0, 3)).allMatch(part -> part.entryStep() == 0);
    assertThat(parts.get(3).entryStep()).isNotEqualTo(0);
    assertThat(parts.get(6).entryStep()).isNotIn(0, parts.get(3).entryStep());
    assertThat(parts.get(3).attackSteps().stream().map(s -> s - parts.get(3).entryStep()).toList())
        .startsWith(0, 3, 6, 8, 11, 14);
  }

  @Test
  void thePlayersOfACanonMeetAsSeldomAsTheirFigureAllows() {
    int[] sounding = new int[8];
    for (Part part : deal("Charleston", FOUR, 3).parts()) {
      part.attackSteps().stream()
          .filter(step -> step >= 32 && step < 40)
          .forEach(step -> sounding[step - 32]++);
    }

    assertThat(sounding).containsOnly(1);
  }

  @Test
  void theSameSeedDealsTheSameAndAnotherSeedDealsOtherwise() {
    assertThat(deal("Long threes", FOUR, 11)).isEqualTo(deal("Long threes", FOUR, 11));
    Set<List<Integer>> deals = new HashSet<>();
    for (long seed = 0; seed < 20; seed++) {
      deals.add(entries(deal("Long threes", Demo.TUESDAY_CLASS.subList(0, 6), seed)));
    }
    assertThat(deals).hasSizeGreaterThan(5);
  }

  @Test
  void aSentenceSaysWhoComesInWhereAndWhenTheGroupingComesRound() {
    assertThat(deal("Long threes", List.of("Ilse"), 0).sentences())
        .containsExactly(
            "Ilse comes in on the one of bar 1, on threes that meet the one again in bar 4.");
    assertThat(deal("Four-chair canon", FOUR, 0).sentences().get(3))
        .isEqualTo("Tariq comes in on beat 4 of bar 1.");
    assertThat(deal("Squeezed son one late", List.of("Ilse"), 0).sentences())
        .containsExactly("Ilse comes in on the e of 1 in bar 1.");
    assertThat(deal("Long threes", List.of("Ilse"), 0).sentences(Speaker.of(Locale.GERMAN)))
        .containsExactly(
            "Ilse setzt auf der Eins in Takt 1 ein, in Dreiern, die in Takt 4 wieder die Eins"
                + " treffen.");
    assertThat(deal("Long threes", List.of("Ilse"), 0).toEach(Speaker.english()))
        .as("to herself")
        .containsExactly(
            "Come in on the one of bar 1, on threes that meet the one again in bar 4.");
    Dealing two = deal("Long threes", List.of("Ilse", "Noor"), 0);
    int later = two.parts().get(1).entryStep();
    assertThat(two.sentences().get(1))
        .contains("Noor comes in on ")
        .contains(later % 2 == 0 ? " beat" : "eighth")
        .as("whoever comes in off the one has not met it before")
        .contains("that meet the one in bar ")
        .endsWith("after Ilse.");
  }

  /** The rule of the design: a fifth of the smallest gap, 20 to 50 ms. Eighths at 240: 25 ms. */
  @ParameterizedTest
  @ValueSource(doubles = {60, 120, 240, 320})
  void theToleranceIsAFifthOfTheSmallestGapBetweenTwentyAndFifty(double tempo) {
    Drill drill = Stock.find("Even eighths");
    double gapMillis = 60_000 / tempo / 2;

    assertThat(Dealer.deal(drill, FOUR, 1, tempo, drill.stages()).toleranceMillis())
        .isEqualTo(Math.min(50, Math.max(20, gapMillis / 5)));
  }

  @Test
  void rolesGiveTheirWeightInThePulse() {
    assertThat(deal(Demo.TITLE, FOUR, 1).parts())
        .extracting(Part::pulseWeight)
        .containsExactly(2.0, 2.0, 1.0, 0.5);
  }

  @Test
  void wrongPlayersAreRefusedWithTheirNumber() {
    Drill drill = Stock.find("Jigsaw");
    assertThatThrownBy(() -> Dealer.deal(drill, List.of(), 1, 100, drill.stages()))
        .hasMessage("players: expected a list of 1 to 24, found one of 0");
    assertThatThrownBy(() -> Dealer.deal(drill, List.of("Mina", "Mina"), 1, 100, drill.stages()))
        .hasMessageContaining("players[1]: expected a name not used before, found \"Mina\" again");
    List<String> many = IntStream.range(0, 25).mapToObj(i -> "p" + i).toList();
    assertThatThrownBy(() -> Dealer.deal(drill, many, 1, 100, drill.stages()))
        .hasMessageContaining("found one of 25");
  }

  @Test
  void everyDrillOfTheStockIsDealtToOneToTwentyFour() {
    for (Drill drill : Stock.drills()) {
      for (int players : new int[] {1, 2, 4, 12, 24}) {
        Dealing dealing =
            Dealer.deal(
                drill,
                Demo.TUESDAY_CLASS.subList(0, players),
                7,
                drill.tempo().start(),
                drill.stages());
        assertThat(dealing.parts())
            .as("%s, %d players", drill.title(), players)
            .hasSize(players)
            .allMatch(part -> !part.attackSteps().isEmpty());
      }
    }
  }
}
