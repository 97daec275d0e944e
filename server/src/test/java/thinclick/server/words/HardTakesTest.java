package thinclick.server.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Scorer;

/**
 * Ten takes made to be hard, read aloud. Each test is the checklist of one take: what must be said,
 * and what must not, since it would be untrue, blame somebody who is not at fault, or lead the next
 * try astray.
 */
class HardTakesTest {
  private static final Speaker ENGLISH = Speaker.english();
  private static final Map<String, Analysis> ANALYSES = new ConcurrentHashMap<>();

  /** Characters that are read out in under half a minute, some 60 words; from memory. */
  private static final int READ_ALOUD = 360;

  /** What no review may ever say. */
  private static final List<String> NEVER =
      List.of(
          "talent",
          "gifted",
          "worst",
          "best",
          "rank",
          "grade",
          "score",
          "well done",
          "perfect",
          "great",
          "bad",
          "fault",
          "latency",
          "NaN",
          "null",
          "{",
          "Infinity");

  @Test
  void turnedAroundAndHomeAgain() {
    Checked take = check("turned around and home again");

    take.says("Ilse was turned around (an eighth late) from bar 10 and was home again in bar 14.");
    take.says("100 % on all beats").says("100 % without a click");
    take.next("count aloud, with a click on all beats, for half as many bars");
    take.saysNothingOf("Mina", "Jonas", "Tariq").saysNo("dropped", "added", "dragged", "rushed");
    take.slipSays(
        "Ilse",
        "You were turned around (an eighth late) from bar 10 and were home again in bar 14.");
    take.slipSays("Mina", "You placed 96 of 96")
        .slipSays("Mina", "There is nothing to work on alone");
  }

  @Test
  void allDragTogether() {
    Checked take = check("all drag together");

    take.says("All dragged together, by 1 % through eight silent bars at 120; ");
    take.saysMatching("1[456]0 ms behind");
    take.saysMatching("(99|100) % (on all beats, then )?without a click");
    take.next("sing the sixteenths, with a click in every second bar");
    // Coming back to the click is not a second fault, and nobody left the others.
    take.saysNo("rushed", "turned around", "late from bar", "dropped", "added", "ahead");
    take.saysNothingOf("Mina", "Jonas", "Ilse", "Tariq");
  }

  @Test
  void twoSwapParts() {
    Checked take = check("two swap parts");

    take.saysMatching(
        "(Jonas and Tariq|Tariq and Jonas) swapped parts throughout; judged that way, (99|100) % sat");
    take.next("agree who has which part, then play the same again");
    // What happened comes first: the hold means little until it is mended.
    take.saysMatching("^(Jonas|Tariq) and .*As dealt: 5\\d %").saysNo("Together");
    take.saysNo("turned around", "dropped", "added", "a beat", "lost the ending", "came in");
    take.slipSaysNo("Jonas", "placed");
    take.saysNothingOf("Mina", "Ilse");
    take.slipSays("Jonas", "swapped parts").slipSays("Tariq", "swapped parts");
  }

  @Test
  void onePlaysTheOthersPart() {
    Checked take = check("one plays the other's part");

    take.says("Tariq played Mina\u2019s part throughout.");
    take.next("agree who has which part, then play the same again");
    take.saysNo("turned around", "dropped", "added", "swapped", "No stage was held");
    take.slipSays("Mina", "You placed 96 of 96").slipSaysNo("Mina", "Tariq");
  }

  @Test
  void laidBackOnPurpose() {
    Checked take = check("laid back on purpose");

    take.saysMatching(
        "Ilse was asked for \\+25 ms and kept \\+2[3-7] ms, with a spread of \\d+ ms; that is under control\\.");
    take.says("100 % on all beats");
    take.next("play it once more like this, then with fewer clicks");
    take.saysNo("late", "behind", "early", "dropped", "dragged", "takes up");
  }

  @Test
  void rushesInSilence() {
    Checked take = check("rushes in silence");

    take.says("All rushed together, by 2 % through eight silent bars at 120; ");
    take.saysMatching("3[0-4]0 ms ahead");
    take.next("play islands (four bars on, four off) at 108 beats a minute");
    take.saysNo("dragged", "turned around", "behind", "early from bar");
    take.saysNothingOf("Mina", "Jonas", "Ilse", "Tariq");
  }

  @Test
  void droppedEnding() {
    Checked take = check("dropped ending");

    take.says("Jonas lost the ending and played nothing after bar 21.");
    take.next("loop the last bar, then add bars backwards");
    take.saysNo("Jonas dropped", "turned around", "uneven", "added");
    take.saysNothingOf("Mina", "Ilse", "Tariq");
  }

  @Test
  void lateFirstEntry() {
    Checked take = check("late first entry");

    take.says("Tariq came in at bar 3 instead of bar 1.");
    take.next("play Push only, for the entry");
    take.saysNo("Tariq dropped", "two bars", "bars out", "turned around", "added");
    take.saysNothingOf("Mina", "Jonas", "Ilse");
  }

  @Test
  void noisyPad() {
    Checked take = check("noisy pad");

    take.saysMatching("Of Mina\u2019s attacks, \\d+ sounded twice; the doubles are set aside\\.");
    take.saysMatching("Mina sent \\d+ attacks that nobody wrote, (all|\\d+ of them) faint");
    take.says("100 % on all beats");
    take.next("play it once more like this, then with fewer clicks");
    take.saysNo("Mina added", "Gapped ands", "uneven", "dropped");
    take.slipSays("Mina", "turn the pad\u2019s sensitivity down");
  }

  @Test
  void awayForFourBars() {
    Checked take = check("away for four bars");

    take.says("Ilse was away from bar 9 to bar 12; nothing there is counted.");
    take.says("100 % on all beats, then on one and three, then without a click.");
    take.next("play it once more like this, then with fewer clicks");
    take.saysNo("dropped", "came in", "lost the ending", "turned around");
    take.slipSays("Ilse", "You placed 80 of 80");
  }

  static Stream<String> names() {
    return HardTakes.ALL.keySet().stream();
  }

  @ParameterizedTest
  @MethodSource("names")
  void everyReviewIsShortStaysInItsColumnsAndKeepsToItsTone(String name) {
    Checked take = check(name);

    assertThat(take.spoken.prose(ENGLISH)).as(name).hasSizeBetween(2, 6);
    assertThat(take.spoken.prose(ENGLISH))
        .as(name)
        .allMatch(said -> Character.isUpperCase(said.charAt(0)) && said.endsWith("."));
    assertThat(String.join(" ", take.spoken.prose(ENGLISH))).as(name).hasSizeLessThan(READ_ALOUD);
    StringBuilder all = new StringBuilder(ReviewPage.of(take.spoken, ENGLISH));
    for (Spoken.Slip slip : take.spoken.slips()) {
      all.append(ReviewPage.slip(take.spoken, slip.player(), ENGLISH));
    }
    assertThat(all.toString().lines()).as(name).allMatch(line -> line.length() < 80);
    for (String never : NEVER) {
      assertThat(all.toString().toLowerCase(Locale.ROOT))
          .as(name)
          .doesNotContainPattern("\\b" + Pattern.quote(never.toLowerCase(Locale.ROOT)) + "\\b");
    }
  }

  /** A second language may be longer; nothing may then be cut off or missing. */
  @ParameterizedTest
  @MethodSource("names")
  void aStretchedLanguageFitsThePage(String name) {
    Analysis analysis = analysis(name);
    Speaker stretched = Bundles.stretched();
    String page = ReviewPage.of(Spoken.of(analysis, stretched), stretched);

    assertThat(page.lines()).as(name).allMatch(line -> line.length() < 80);
    assertThat(page).contains("~");
  }

  /** Whole in another language: not a word of English is left but the titles of drills. */
  @ParameterizedTest
  @MethodSource("names")
  void everyReviewIsWholeInGerman(String name) {
    Speaker german = Speaker.of(Locale.GERMAN);
    Spoken spoken = Spoken.of(analysis(name), german);
    StringBuilder all = new StringBuilder(ReviewPage.of(spoken, german));
    for (Spoken.Slip slip : spoken.slips()) {
      all.append(ReviewPage.slip(spoken, slip.player(), german));
    }

    assertThat(all.toString().lines()).as(name).allMatch(line -> line.length() < 80);
    String words = all.substring(all.indexOf("\n")).replace('\n', ' ').replace("Push only", "");
    assertThat(words)
        .as(name)
        .contains("Als Nächstes: ")
        .doesNotContainPattern("\\b(the|and|on|of|is|with|bars?|beats?|next|late|early)\\b")
        .doesNotContain("{", "null");
  }

  @Test
  void aTurnedAroundTakeIsSaidInGerman() {
    Speaker german = Speaker.of(Locale.GERMAN);
    Spoken spoken = Spoken.of(analysis("turned around and home again"), german);

    assertThat(String.join(" ", spoken.prose(german)))
        .startsWith(
            "Gehalten: 100 % mit Klick auf alle Schläge, 87 % mit Klick auf eins und drei, 100 %"
                + " ohne Klick. Ilse lag ab Takt 10 eine Achtel zu spät (umgedreht) und war in Takt"
                + " 14 wieder drin.")
        .endsWith(
            "Als Nächstes: laut zählen, mit Klick auf alle Schläge, halb so viele Takte lang.");
  }

  private static Checked check(String name) {
    return new Checked(Spoken.of(analysis(name), ENGLISH));
  }

  private static Analysis analysis(String name) {
    return ANALYSES.computeIfAbsent(name, one -> Scorer.analyse(HardTakes.ALL.get(one).get()));
  }

  /** A review as it is heard. */
  private record Checked(Spoken spoken) {
    private String prose() {
      return String.join(" ", spoken.prose(ENGLISH));
    }

    Checked says(String words) {
      assertThat(prose()).contains(words);
      return this;
    }

    Checked saysMatching(String words) {
      assertThat(prose()).containsPattern(words);
      return this;
    }

    Checked saysNo(String... words) {
      assertThat(prose()).doesNotContain(words);
      return this;
    }

    /** Not even praise, where somebody else is what matters. */
    Checked saysNothingOf(String... players) {
      assertThat(
              spoken.says().stream()
                  .filter(one -> one.player() != null && !one.text().contains("steadiest")))
          .extracting(Spoken.Sentence::player)
          .doesNotContain(players);
      return this;
    }

    void next(String words) {
      assertThat(spoken.next()).isEqualTo(words);
    }

    Checked slipSays(String player, String words) {
      assertThat(String.join(" ", spoken.slip(player).says())).contains(words);
      return this;
    }

    Checked slipSaysNo(String player, String words) {
      assertThat(String.join(" ", spoken.slip(player).says())).doesNotContain(words);
      return this;
    }
  }
}
