package thinclick.server.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.file.Take;
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

            You placed 80 of 96, with a spread of N ms. You were turned around (an eighth
            late) from bar 10, and home again in bar 14. Had you been off by a beat, it
            would not show: the part is the same there. Next: count aloud, with a click on
            all beats, for half as many bars.

            Bars   Click          Written  Placed  Dropped  Added  Lean  Spread
            1-8    all beats           32      32        0      0 N N
            9-16   one and three       32      16        0      0 N N
            17-24  no click            32      32        0      0 N N

            Lean and spread are in ms, and a negative lean is early.
            """);
  }
}
