package thinclick.server.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Stage;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Scorer;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

class SpokenTest {
  private static final Analysis TURNED = Scorer.analyse(HardTakes.turnedAround());
  private final Spoken spoken = Spoken.of(TURNED, Speaker.english());

  @Test
  void theJsonIsTheReviewWithItsWords() {
    JsonNode json = spoken.toJson();

    assertThat(json.at("/words/0/says").stringValue()).startsWith("Held together: ");
    assertThat(json.at("/words/0").has("player")).isFalse();
    assertThat(json.at("/words/1/player").stringValue()).isEqualTo("Ilse");
    assertThat(json.get("next").stringValue())
        .isEqualTo("count aloud, with a click on all beats, for half as many bars");
    assertThat(json.get("language").stringValue()).isEqualTo("en");
    assertThat(json.at("/stages/2/click").stringValue()).isEqualTo("no click");
    assertThat(json.at("/players/2/player").stringValue()).isEqualTo("Ilse");
    assertThat(json.at("/players/2/findings").toString()).contains("displaced");
    assertThat(json.at("/players/0/next").isNull()).isTrue();
    assertThat(json.at("/ensemble/heldThrough").intValue()).isEqualTo(2);
  }

  @Test
  void readBackItIsTheSame() {
    assertThat(Spoken.fromJson(spoken.toJson())).isEqualTo(spoken);
  }

  @Test
  void wordsOfAnotherLanguageStayInIt() {
    Spoken german = Spoken.of(TURNED, Speaker.of(Locale.GERMAN));
    Spoken read = Spoken.fromJson(german.toJson());

    assertThat(read).isEqualTo(german);
    assertThat(read.prose(read.speaker())).last().asString().startsWith("Als Nächstes: laut");
  }

  /** No bundle, no half of one: numbers too are English then. */
  @Test
  void aLanguageThatIsNotThereIsEnglishThroughout() {
    Speaker none = Speaker.of(Locale.FRENCH);

    assertThat(none.language()).isEqualTo("en");
    assertThat(Spoken.of(TURNED, none)).isEqualTo(spoken);
  }

  @Test
  void theSameTakeIsAlwaysSaidTheSame() {
    assertThat(Spoken.of(Scorer.analyse(HardTakes.turnedAround()), Speaker.english()))
        .isEqualTo(spoken);
  }

  @Test
  void aReviewWithoutWordsIsReadWithoutThem() {
    ObjectNode bare = spoken.toJson();
    bare.remove("words");
    bare.remove("next");

    assertThat(Spoken.fromJson(bare).says()).isEmpty();
    assertThat(Spoken.fromJson(bare).review()).isEqualTo(spoken.review());
  }

  /** A slip is for one pair of eyes: no other name is on it, and no comparison. */
  /** A slip is read by whom it is about; only where two swapped are both named. */
  @ParameterizedTest
  @ValueSource(strings = {"en", "de"})
  void aSlipSpeaksToItsPlayer(String language) {
    for (Take take :
        List.of(
            HardTakes.turnedAround(),
            HardTakes.rushes(),
            HardTakes.droppedEnding(),
            HardTakes.lateEntry(),
            HardTakes.noisyPad(),
            HardTakes.away(),
            HardTakes.laidBack(),
            HardTakes.otherPart())) {
      Spoken spoken = Spoken.of(Scorer.analyse(take), Speaker.of(Locale.forLanguageTag(language)));
      for (Spoken.Slip slip : spoken.slips()) {
        assertThat(slip.says())
            .as(take.title() + ", " + slip.player())
            .noneMatch(said -> said.contains(slip.player()));
      }
    }
  }

  /** Under a heading that says so, nobody reads Next a second time. */
  @Test
  void whatComesNextIsForThePlayerAndForTheBand() {
    Spoken spoken = Spoken.of(Scorer.analyse(HardTakes.turnedAround()), Speaker.english());
    assertThat(spoken.nextSteps("Ilse", Speaker.english()))
        .containsExactly("Count aloud, with a click on all beats, for half as many bars.");
    assertThat(spoken.nextSteps("Mina", Speaker.english()))
        .containsExactly(
            "There is nothing to work on alone.",
            "With the band: count aloud, with a click on all beats, for half as many bars.");
    assertThat(spoken.nextSteps("", Speaker.english()))
        .containsExactly("Count aloud, with a click on all beats, for half as many bars.");
    Spoken late = Spoken.of(Scorer.analyse(HardTakes.noisyPad()), Speaker.english());
    assertThat(late.nextSteps("Mina", Speaker.english()))
        .containsExactly(
            "By yourself: turn the pad\u2019s sensitivity down, and try it before the take.",
            "With the band: play it once more like this, then with fewer clicks.");
  }

  /** Whose slips are made on purpose practises nothing, and is told what the band does. */
  @Test
  void aStandInIsAdvisedNothingOfItsOwn() {
    Take take = HardTakes.turnedAround();
    Analysis alone =
        Scorer.analyse(
            take.withParts(
                take.parts().stream().map(part -> part.edited().standIn(true).part()).toList()));
    Spoken standIns = Spoken.of(alone, Speaker.english());

    assertThat(spoken.slip("Ilse").next()).startsWith("count aloud");
    assertThat(standIns.slips()).extracting(Spoken.Slip::next).containsOnlyNulls();
    assertThat(ReviewPage.of(standIns, Speaker.english()))
        .contains("Stand-ins sat in all four chairs.")
        .doesNotContain("Ilse: ");
    for (Spoken.Slip slip : standIns.slips()) {
      assertThat(slip.says()).last().asString().isEqualTo("Next: " + standIns.next() + ".");
    }
  }

  /** A figure in threes that comes in a beat later has fewer notes in as many bars. */
  @Test
  void whyNotEverybodyHasAsManyNotesIsSaidOnceWhereTheEntriesAreWhy() {
    Spoken shifted = Spoken.of(Scorer.analyse(threes(0, 2)), Speaker.english());
    String said = "Players come in at different places, so their numbers of notes differ.";

    assertThat(shifted.counts()).isEqualTo(said);
    assertThat(Spoken.fromJson(shifted.toJson())).isEqualTo(shifted);
    assertThat(ReviewPage.of(shifted, Speaker.english())).containsOnlyOnce(said);
    assertThat(ReviewPage.slip(shifted, "Mina", Speaker.english())).doesNotContain("entries");
    assertThat(Spoken.of(Scorer.analyse(threes(0, 0)), Speaker.english()).counts()).isNull();
    assertThat(spoken.counts()).as("parts of their own").isNull();
  }

  private static Take threes(int first, int second) {
    Band band = new Band("Threes", 120, 1, Stage.ofBeats(4, 1, 1, 2, 3, 4));
    band.player(Part.of("Mina", first, threesFrom(first))).spread(6).plays();
    return band.player(Part.of("Ilse", second, threesFrom(second))).spread(6).plays().take();
  }

  private static List<Integer> threesFrom(int entry) {
    return IntStream.iterate(entry, step -> step < 32, step -> step + 3).boxed().toList();
  }

  /** Who reads "You were turned around" does not read the same of a third person below it. */
  @Test
  void whatASlipSaysIsNotSaidAgainBesideIt() {
    Spoken read = Spoken.fromJson(spoken.toJson());
    List<String> band = read.says().stream().map(Spoken.Sentence::text).toList();
    String ofIlse =
        band.stream()
            .filter(one -> one.startsWith("Ilse was turned around"))
            .findFirst()
            .orElseThrow();

    assertThat(read.slip("Ilse").says()).anyMatch(one -> one.startsWith("You were turned around"));
    assertThat(read.besides(read.slip("Ilse")))
        .isNotEmpty()
        .isSubsetOf(band)
        .doesNotContain(ofIlse);
    assertThat(read.besides(read.slip("Mina"))).isEqualTo(band);
  }

  @Test
  void aSlipNamesNobodyElse() {
    for (String name : List.of("Mina", "Jonas", "Tariq")) {
      String slip = ReviewPage.slip(spoken, name, Speaker.english());
      assertThat(slip).contains(name).doesNotContain("Ilse", "steadiest", "others");
    }
    // Figures of lean and spread are the scorer's own and may come out a little otherwise.
    assertThat(
            ReviewPage.slip(spoken, "Ilse", Speaker.english())
                .replaceAll("spread of \\d+", "spread of N")
                .replaceAll("(?m) +-?\\d+ +\\d+$", " N N"))
        .isEqualTo(
            """
            Ilse, Turned around: 24 bars of 4/4 at 120.

            You placed 80 of 96 notes, with a spread of N ms. You were turned around (an
            eighth late) from bar 10 and were home again in bar 14. A shift of a beat would
            not show: your part is the same a beat later. Next: count aloud, with a click
            on all beats, for half as many bars.

            Bars   Click          Written  Placed  Dropped  Added  Lean  Spread
            1-8    all beats           32      32        0      0 N N
            9-16   one and three       32      16        0      0 N N
            17-24  no click            32      32        0      0 N N

            Lean and spread are in ms, and a negative lean is early.
            """);
  }
}
