package thinclick.server.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.NextRung.Move;
import tools.jackson.databind.JsonNode;

/** What comes next is decided once, whoever says it. */
class NextTryTest {
  private static final Outcome WELL = new Outcome(60, 95.0, 95.0, false, null, 0, 0);

  private static NextTry after(@Nullable Advice first, Outcome... outcomes) {
    return NextTry.after(List.of(outcomes), first, Advice.PLAY_LONGER);
  }

  @ParameterizedTest
  @CsvSource({
    "95, 0, 0, ONCE_MORE, ONCE_MORE",
    "80, 0, 0, STAY, SAME_AGAIN",
    "70, 0, 0, DOWN, RUNG_BACK",
    "95, 0, .5, DOWN_TWO, TWO_RUNGS_BACK",
  })
  void whatBecomesOfTheClickIsWhatIsSaid(
      double hold, double displaced, double lost, Move move, Advice advice) {
    Outcome last = new Outcome(60, hold, hold, false, null, displaced, lost);

    assertThat(after(null, last)).isEqualTo(new NextTry(advice, move));
  }

  @Test
  void twoTakesHeldGoUp() {
    assertThat(after(null, WELL, WELL)).isEqualTo(new NextTry(Advice.NEXT_RUNG, Move.UP));
  }

  @Test
  void whatIsToBeMendedComesFirstAndLeavesTheClick() {
    assertThat(after(Advice.COUNT_ALOUD, WELL, WELL))
        .isEqualTo(new NextTry(Advice.COUNT_ALOUD, null));
  }

  @Test
  void aTakeWithoutAVerdictSaysWhatWouldGiveOne() {
    assertThat(after(null, new Outcome(8, 100.0, null, false, null, 0, 0)))
        .isEqualTo(new NextTry(Advice.PLAY_LONGER, Move.NO_VERDICT));
  }

  /** Who plays too little for a verdict is not carried by stand-ins into one. */
  @Test
  void theVerdictAndWhatComesNextAskForAsMuch() {
    Take take = HardTakes.away();
    List<Part> standIns =
        take.parts().stream().map(part -> part.edited().standIn(true).part()).toList();
    Part first = take.parts().get(0);
    List<Integer> few = first.attackSteps().subList(0, 8);
    List<Part> oneOfThem = new ArrayList<>(standIns);
    oneOfThem.set(0, first.edited().attackSteps(few).part());

    Spoken alone =
        Spoken.of(Scorer.analyse(take.withParts(standIns)), List.of(), Speaker.english());
    assertThat(alone.says().get(0).text()).startsWith("Held together: 100 % on all beats");
    assertThat(alone.move()).isEqualTo(Move.ONCE_MORE);

    Spoken little =
        Spoken.of(Scorer.analyse(take.withParts(oneOfThem)), List.of(), Speaker.english());
    assertThat(little.says().get(0).text())
        .isEqualTo("There are too few attacks to judge: 8 are written, and 12 are needed.");
    assertThat(little.move()).isEqualTo(Move.NO_VERDICT);
    assertThat(little.advice()).isEqualTo(Advice.PLAY_LONGER);
  }

  /** No machine can count aloud: what a stand-in got wrong asks nothing of the band. */
  @Test
  void aStandInsSlipIsNotMendedFirst() {
    Take take = HardTakes.turnedAround();
    List<Part> ilseIsOne =
        take.parts().stream()
            .map(part -> part.edited().standIn(part.player().equals("Ilse")).part())
            .toList();

    assertThat(Spoken.of(Scorer.analyse(take), Speaker.english()).advice())
        .isEqualTo(Advice.COUNT_ALOUD);
    Spoken spoken = Spoken.of(Scorer.analyse(take.withParts(ilseIsOne)), Speaker.english());
    assertThat(spoken.says()).anyMatch(says -> says.text().contains("Ilse was turned around"));
    assertThat(spoken.advice()).isEqualTo(Advice.ONCE_MORE);
  }

  @Test
  void reviewItsJsonAndItsSlipsSayOneThing() {
    for (Map.Entry<String, Supplier<Take>> hard : HardTakes.ALL.entrySet()) {
      Analysis analysis = Scorer.analyse(hard.getValue().get());
      NextTry next = ReviewWords.of(analysis, List.of(WELL)).next();
      Spoken spoken = Spoken.of(analysis, List.of(WELL), Speaker.english());
      JsonNode json = spoken.toJson();

      assertThat(Spoken.moveOf(json)).as(hard.getKey()).isEqualTo(next.move());
      assertThat(spoken.next())
          .isEqualTo(Speaker.english().say(next.advice().said(analysis.take())));
      assertThat(spoken.slips())
          .as(hard.getKey())
          .allSatisfy(
              slip -> assertThat(slip.says().get(slip.says().size() - 1)).contains(spoken.next()));
    }
  }
}
