package thinclick.server.dealing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Answer;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.DealtFigure;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.FreeSpan;
import thinclick.protocol.file.Line;
import thinclick.protocol.file.Part;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Demo;
import thinclick.server.material.Stock;

class WaysOfDealingTest {
  private static final List<Stage> TAKE = List.of(Stage.ofBeats(32, 1, 1, 2, 3, 4));

  private static Drill drill(String title, DealKind kind) {
    return drill(title, kind, TAKE);
  }

  private static Drill drill(String title, DealKind kind, List<Stage> stages) {
    Drill drill = Stock.find(title);
    return new Drill(
        drill.format(),
        drill.version(),
        drill.title(),
        drill.level(),
        drill.meter(),
        drill.stepsPerBeat(),
        drill.swing(),
        drill.tempo(),
        null,
        drill.periodBars(),
        new Drill.Deal(kind, 1),
        drill.chairs(),
        stages,
        null);
  }

  private static Dealing deal(String title, DealKind kind, int players, long seed) {
    return Dealer.deal(drill(title, kind), Demo.TUESDAY_CLASS.subList(0, players), seed, 100, TAKE);
  }

  @Test
  void unisonPlaysTheSameFromTheSameEntry() {
    assertThat(deal("Charleston", DealKind.UNISON, 5, 1).parts())
        .extracting(Part::attackSteps)
        .containsOnly(deal("Charleston", DealKind.UNISON, 1, 1).parts().get(0).attackSteps());
  }

  @Test
  void theHocketDealsEveryAttackToExactlyOnePlayer() {
    List<Integer> whole = deal("Short threes", DealKind.UNISON, 1, 1).parts().get(0).attackSteps();
    for (long seed = 0; seed < 20; seed++) {
      for (int players = 1; players <= 24; players++) {
        Dealing dealing = deal("Short threes", DealKind.HOCKET, players, seed);
        List<Integer> all =
            dealing.parts().stream().flatMap(part -> part.attackSteps().stream()).sorted().toList();
        assertThat(all).as("%d players, seed %d", players, seed).isEqualTo(whole);
        assertThat(dealing.parts()).allMatch(part -> !part.attackSteps().isEmpty());
      }
    }
    assertThat(deal("Even eighths", DealKind.HOCKET, 2, 4).sentences().get(0))
        .endsWith("with 4 of the hocket\u2019s 8 notes.");
  }

  @Test
  void layersGiveEachChairAGroupingOfItsOwn() {
    Dealing dealing = deal("Long threes", DealKind.LAYERS, 4, 1);

    assertThat(dealing.dealt().chairs())
        .extracting(chair -> chair.cell().grouping())
        .containsExactly(3, 4, 5, 7);
    assertThat(dealing.sentences().get(2)).contains("on fives that meet the one again in bar 6");
  }

  @Test
  void oneHalfCallsAndTheOtherAnswersAPeriodLater() {
    List<Part> parts = deal("Charleston", DealKind.CALL_AND_ANSWER, 3, 1).parts();

    assertThat(parts.get(0).attackSteps()).startsWith(0, 3, 16, 19);
    assertThat(parts.get(1).attackSteps()).startsWith(8, 11, 24, 27);
    assertThat(parts.get(2).attackSteps()).isEqualTo(parts.get(0).attackSteps());
  }

  @Test
  void answersAreMarkedWithTheCallTheyRepeat() {
    List<Part> parts = deal("Charleston", DealKind.CALL_AND_ANSWER, 4, 1).parts();

    assertThat(parts.get(0).answers()).isEmpty();
    assertThat(parts.get(1).answers())
        .startsWith(new Answer(0, 8, 16, 8), new Answer(0, 24, 32, 8))
        .hasSize(16);
    assertThat(parts.get(3).answers()).allMatch(answer -> answer.of() == 2);
    List<Part> other = deal("Call", DealKind.CALL_AND_ANSWER, 2, 1).parts();
    assertThat(other.get(1).answers()).as("an answer of its own repeats nobody").isEmpty();
  }

  @Test
  void inTradingEachTurnAnswersTheOneBefore() {
    List<Part> parts = deal("Short threes", DealKind.TRADING, 3, 1).parts();

    assertThat(parts.get(1).answers()).startsWith(new Answer(0, 16, 32, 16));
    assertThat(parts.get(2).answers()).startsWith(new Answer(1, 32, 48, 16));
    assertThat(parts.get(0).answers()).startsWith(new Answer(2, 48, 64, 16));
    for (int players = 1; players <= 24; players++) {
      for (Part part : deal("Short threes", DealKind.TRADING, players, 1).parts()) {
        for (Answer answer : part.answers()) {
          assertThat(part.attackSteps())
              .as("%d players, %s", players, part.player())
              .anyMatch(step -> step >= answer.fromStep() && step < answer.toStep());
        }
      }
    }
  }

  @Test
  void tradingGivesOnePeriodToOneAfterTheOther() {
    List<Part> parts = deal("Short threes", DealKind.TRADING, 3, 1).parts();

    for (int i = 0; i < 3; i++) {
      int turn = i;
      assertThat(parts.get(i).attackSteps()).allMatch(step -> step / 16 % 3 == turn);
    }
    assertThat(deal("Short threes", DealKind.TRADING, 3, 1).sentences().get(1))
        .contains("for 2 bars in every 6");
    assertThat(deal("Short threes", DealKind.TRADING, 24, 1).parts())
        .allMatch(part -> !part.attackSteps().isEmpty());
  }

  @Test
  void rolesGiveTheTimelineToOneAndLockBassAndRide() {
    Dealing dealing = deal("Son 3-2", DealKind.ROLES, 6, 3);
    List<Part> parts = dealing.parts();

    assertThat(parts)
        .extracting(Part::role)
        .containsExactly("timeline", "bass", "ride", "comping", "answer", "shaker");
    assertThat(parts).extracting(Part::pulseWeight).containsExactly(2.0, 2.0, 2.0, 1.0, 0.5, 1.0);
    assertThat(parts.get(0).attackSteps()).startsWith(0, 3, 6, 10, 12, 16);
    assertThat(parts.get(2).attackSteps()).containsAll(parts.get(1).attackSteps());
    assertThat(dealing.sentences().get(3)).contains(", as comping");
  }

  @Test
  void compingAnswersAndTimelineSeldomCoincide() {
    for (long seed = 0; seed < 50; seed++) {
      List<Part> parts = deal("Son 3-2", DealKind.ROLES, 6, seed).parts();
      Set<Integer> timeline = new HashSet<>(parts.get(0).attackSteps());
      Set<Integer> comping = new HashSet<>(parts.get(3).attackSteps());
      Set<Integer> answer = new HashSet<>(parts.get(4).attackSteps());
      assertThat(shared(comping, timeline)).as("seed %d", seed).isLessThanOrEqualTo(0.1);
      assertThat(shared(answer, timeline)).as("seed %d", seed).isLessThanOrEqualTo(0.1);
      assertThat(shared(answer, comping)).as("seed %d", seed).isLessThanOrEqualTo(0.1);
      assertThat(answer).as("seed %d", seed).allMatch(step -> step % 16 >= 8);
    }
  }

  private static double shared(Set<Integer> one, Set<Integer> other) {
    return (double) one.stream().filter(other::contains).count() / one.size();
  }

  @Test
  void rolesDealTwentyFourDifferentParts() {
    List<Part> parts = deal("Long threes", DealKind.ROLES, 24, 9).parts();
    Set<List<Integer>> different = new HashSet<>(parts.stream().map(Part::attackSteps).toList());

    assertThat(different).hasSizeGreaterThan(18);
  }

  @Test
  void everyWayIsRepeatableBySeedAndHasWholeParts() {
    for (DealKind kind : DealKind.values()) {
      for (String title : List.of("Long threes", "Bembe", "Jigsaw", "Waltz fives", Demo.TITLE)) {
        for (int players : new int[] {1, 3, 7, 24}) {
          List<String> names = Demo.TUESDAY_CLASS.subList(0, players);
          List<Stage> take = List.of(Stage.ofBeats(48, 1, 1));
          Drill asked = drill(title, kind, take);
          Dealing one = Dealer.deal(asked, names, 5, 100, take);
          String where = kind + " " + title + " " + players;
          assertThat(Dealer.deal(asked, names, 5, 100, take)).as(where).isEqualTo(one);
          assertThat(one.parts()).as(where).hasSize(players);
          assertThat(one.parts()).as(where).allMatch(part -> !part.attackSteps().isEmpty());
          assertThat(one.sentences()).as(where).allMatch(says -> says.endsWith("."));
        }
      }
    }
  }

  /**
   * What was dealt can be kept as a drill and is dealt the same again, whatever the seed; who
   * answers whom belongs to the deal and not to the material.
   */
  @Test
  void theDealtDrillDealsItselfTheSame() {
    for (DealKind kind : DealKind.values()) {
      Dealing one = deal("Short threes", kind, 6, 5);
      Drill kept = FileCodec.readDrill(FileCodec.write(one.dealt()));
      Dealing again = Dealer.deal(kept, Demo.TUESDAY_CLASS.subList(0, 6), 99, 100, TAKE);
      assertThat(again.parts())
          .as(kind.name())
          .isEqualTo(
              one.parts().stream().map(part -> part.edited().answers(List.of()).part()).toList());
    }
  }

  @Test
  void playersGetAnEasierOrHarderFigureOfTheSameCycle() {
    Drill drill = drill("Short threes", DealKind.UNISON);
    Dealing dealing =
        Dealer.deal(
            drill,
            List.of("Mina", "Jonas", "Ilse"),
            1,
            100,
            TAKE,
            Map.of("Mina", Ability.EASIER, "Ilse", Ability.HARDER));

    assertThat(dealing.parts().get(0).attackSteps()).startsWith(0, 6, 12, 16);
    assertThat(dealing.parts().get(1).attackSteps()).startsWith(0, 3, 6, 9, 12, 15, 16);
    assertThat(dealing.parts().get(2).attackSteps()).startsWith(0, 2, 3, 5, 6, 8, 9);
    assertThat(dealing.sentences().get(0)).endsWith(", with the easier rhythm.");
    assertThat(Ability.afterHold(74.9)).isEqualTo(Ability.EASIER);
    assertThat(Ability.afterHold(75)).isEqualTo(Ability.AS_WRITTEN);
    assertThat(Ability.afterHold(90)).isEqualTo(Ability.HARDER);
  }

  /** Short threes alone, at 100 over these stages, are a part of level 4. */
  @Test
  void figuresAreFittedToTheLevelThatEachPlayerStandsAt() {
    List<String> players = List.of("Mina", "Jonas", "Ilse", "Tariq");
    Map<String, Integer> levels = Map.of("Mina", 3, "Jonas", 4, "Ilse", 6);
    Drill drill = drill("Short threes", DealKind.UNISON);
    Dealing dealing = Dealer.dealFitted(drill, players, 1, 100, TAKE, levels);

    assertThat(Dealer.deal(drill, players, 1, 100, TAKE).parts())
        .extracting(Part::level)
        .containsOnly(4);
    assertThat(dealing.parts())
        .extracting(Part::figure)
        .containsExactly(DealtFigure.EASIER, null, DealtFigure.HARDER, null);
    assertThat(dealing.parts()).extracting(Part::level).containsExactly(3, 4, 5, 4);
    assertThat(dealing.parts().get(0).attackSteps()).startsWith(0, 6, 12, 16);
    assertThat(Dealer.dealFitted(drill, players, 1, 100, TAKE, levels)).isEqualTo(dealing);
    assertThat(
            Dealer.dealFitted(drill("Short threes", DealKind.HOCKET), players, 1, 100, TAKE, levels)
                .parts())
        .as("a hocket's notes are shared out, not varied")
        .extracting(Part::figure)
        .containsOnlyNulls();
  }

  @Test
  void aTakeMovesTheLevelByOneAtMost() {
    assertThat(Ability.levelAfter(4, 90)).isEqualTo(5);
    assertThat(Ability.levelAfter(4, 89)).isEqualTo(4);
    assertThat(Ability.levelAfter(4, 74)).isEqualTo(3);
    assertThat(Ability.levelAfter(10, 100)).isEqualTo(10);
    assertThat(Ability.levelAfter(1, 0)).isEqualTo(1);
  }

  @Test
  void aLineGivesEveryAttackOfTheTakeItsNote() {
    Drill drill = drill("Long threes", DealKind.AS_WRITTEN);
    Drill.Chair chair = drill.chairs().get(0);
    Drill withLine =
        new Drill(
            drill.format(),
            1,
            "With a line",
            6,
            drill.meter(),
            2,
            drill.swing(),
            drill.tempo(),
            null,
            4,
            new Drill.Deal(DealKind.AS_WRITTEN, 1),
            List.of(
                new Drill.Chair(
                    "1",
                    null,
                    chair.cell(),
                    3,
                    Line.ofProgression("Bb", "ii-V-I"),
                    null,
                    "tenor saxophone")),
            TAKE,
            null);
    Part part = Dealer.deal(withLine, List.of("Ilse"), 1, 100, TAKE).parts().get(0);

    assertThat(part.pitches())
        .hasSameSizeAs(part.attackSteps())
        .allMatch(note -> note >= 44 && note <= 75);
    assertThat(part.instrument()).isEqualTo("tenor saxophone");
  }

  @Test
  void inTradingWithFreeBarsEveryoneKeepsTheFigureAndTheFreeBarsGoRound() {
    Drill drill = Stock.find("Trading fours");
    List<Stage> stages = List.of(Stage.ofBeats(8, 1, 1, 2, 3, 4), Stage.ofBeats(32, 1, 1));
    Dealing dealing = Dealer.deal(drill, List.of("Mina", "Jonas", "Ilse"), 1, 100, stages);

    assertThat(dealing.parts())
        .extracting(Part::free)
        .containsExactly(
            List.of(new FreeSpan(4, 8), new FreeSpan(28, 32)),
            List.of(new FreeSpan(12, 16), new FreeSpan(36, 40)),
            List.of(new FreeSpan(20, 24)));
    for (Part part : dealing.parts()) {
      for (int bar = 0; bar < 40; bar++) {
        int its = bar;
        assertThat(part.attackSteps().stream().anyMatch(step -> step / 8 == its))
            .as("%s, bar %d", part.player(), bar)
            .isEqualTo(!part.freeAt(bar));
      }
    }
    assertThat(dealing.sentences().get(1)).contains("free in bars 13 to 16 of every 24");
    assertThat(Dealer.deal(dealing.dealt(), List.of("a", "b", "c"), 9, 100, stages).parts())
        .extracting(Part::attackSteps, Part::free)
        .isEqualTo(
            dealing.parts().stream().map(part -> tuple(part.attackSteps(), part.free())).toList());
  }
}
