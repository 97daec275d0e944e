package thinclick.client.window.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import thinclick.client.window.session.Rooms;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.FreeSpan;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.engraving.Paper;
import thinclick.server.picture.PlayerSheet;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.Comparison;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

/** What the leader reads beyond the page that all read. */
class LeaderLinesTest {
  private final Words words = Words.in(Locale.ENGLISH);
  private final RoleLines roles = new RoleLines(words);
  private final FollowLines follows = new FollowLines(words);
  private final TurnLines turns = new TurnLines(words);
  private final LeaderFiles files = new LeaderFiles(words);
  private final Take take = take(1);
  private final Spoken spoken = Spoken.of(Scorer.analyse(take), Speaker.english());

  /** Jonas is late by some steps from bar 5 to bar 8, home at 9. */
  private static Take take(int steps) {
    List<Stage> stages =
        List.of(new Stage(8, 1, List.of(1, 2, 3, 4), null), new Stage(8, 1, List.of(1, 3), null));
    Take bare = Rooms.take(Meter.FOUR_FOUR, 2, stages);
    List<Attack> attacks = new ArrayList<>();
    for (Part part : bare.parts()) {
      boolean jonas = part.player().equals("Jonas");
      for (int step : part.attackSteps()) {
        int bar = step / 8;
        int by = jonas && bar >= 4 && bar < 8 ? steps : 0;
        long wobble = Math.round(6_000 * Math.sin(step * 1.7 + (jonas ? 1 : 0)));
        attacks.add(
            Rooms.attack(part.player(), Math.round(bare.grid().microsAt(step + by)) + wobble));
      }
    }
    return bare.withAttacks(attacks);
  }

  @Test
  void anEpisodeIsAStretchWithItsWords() {
    List<Episode> episodes = Episode.of(spoken.review(), words);
    assertThat(episodes).hasSize(1);
    Episode one = episodes.get(0);
    assertThat(one.player()).isEqualTo("Jonas");
    assertThat(one.fromBar()).isEqualTo(4);
    assertThat(one.toBar()).isEqualTo(8);
    assertThat(one.steps()).isEqualTo(1);
    assertThat(one.says())
        .isEqualTo(
            "Jonas was turned around (an eighth late) from bar 5 and was home again in bar 9.");
  }

  @Test
  void ofABandAThinnerClickIsNotForetold() {
    assertThat(spoken.review().players())
        .allSatisfy(
            player ->
                assertThat(player.forecasts())
                    .allMatch(one -> one.spreadMillis().interval() == null));
    assertThat(follows.ahead(spoken.review())).isEmpty();
  }

  @Test
  void onAndOffTheBeatEntriesAndEndingsStandSideBySide() {
    List<List<String>> lines = roles.places(spoken).lines();
    assertThat(lines).hasSize(2);
    assertThat(lines.get(0).get(1)).isEqualTo("64 of 64");
    assertThat(lines.get(0).get(2)).isEqualTo("64 of 64");
    assertThat(lines.get(1).subList(2, 4)).containsOnly(RoleLines.NOTHING);
    assertThat(lines.get(0).subList(4, 6)).containsExactly("in time", "played");
  }

  @Test
  void whoWasNotHeardNeitherCameInInTimeNorPlayedTheEnding() {
    Take silent =
        take.withAttacks(
            take.attacks().stream().filter(one -> !one.player().equals("Jonas")).toList());
    Spoken heard = Spoken.of(Scorer.analyse(silent), Speaker.english());

    assertThat(roles.places(heard).lines().get(1).subList(4, 6))
        .containsExactly("not heard", "not heard");
    assertThat(String.join(" ", heard.slip("Jonas").says()))
        .contains("Nothing was heard from you")
        .doesNotContain("Nothing to work on", "would not show");
  }

  @Test
  void whereNobodyWasHeardNobodyCameInInTimeEither() {
    Spoken heard = Spoken.of(Scorer.analyse(take.withAttacks(List.of())), Speaker.english());

    assertThat(roles.places(heard).lines())
        .hasSize(2)
        .allSatisfy(
            line -> assertThat(line.subList(4, 6)).containsExactly("not heard", "not heard"));
  }

  @Test
  void whoCameInLateAndWhoLostTheEndingIsSaid() {
    double third = take.grid().microsAt(2 * 8) - 50_000;
    double last = take.grid().microsAt(12 * 8) - 50_000;
    Take edges =
        take.withAttacks(
            take.attacks().stream()
                .filter(one -> !one.player().equals("Mina") || one.micros() > third)
                .filter(one -> !one.player().equals("Jonas") || one.micros() < last)
                .toList());
    List<List<String>> lines =
        roles.places(Spoken.of(Scorer.analyse(edges), Speaker.english())).lines();

    assertThat(lines.get(0).subList(4, 6)).containsExactly("late", "played");
    assertThat(lines.get(1).subList(4, 6)).containsExactly("in time", "lost");
  }

  @Test
  void freeBarsAndAnswersStandInLinesOfTheirOwn() {
    List<Integer> kept =
        take.parts().get(1).attackSteps().stream()
            .filter(step -> step / 8 < 4 || step / 8 >= 8)
            .toList();
    Part jonas =
        take.parts().get(1).edited().attackSteps(kept).free(List.of(new FreeSpan(4, 8))).part();
    Take free = take.withParts(List.of(take.parts().get(0), jonas));
    List<List<String>> lines = turns.free(Scorer.review(free)).lines();

    assertThat(lines).hasSize(1);
    assertThat(lines.get(0).subList(0, 2)).containsExactly("Jonas", "5\u20138");
    assertThat(lines.get(0).get(3)).matches("home, (on the pulse|\\d ms (early|late))");
    assertThat(turns.answers(spoken.review()).lines()).isEmpty();
  }

  @Test
  void whoseIntervalHoldsNothingIsNotSaidToFollow() {
    List<String> says = follows.follows(spoken.review());

    assertThat(says)
        .filteredOn(one -> one.contains("takes up"))
        .allSatisfy(one -> assertThat(one).doesNotContain("(\u2212", "% of the gap to Mina (0"));
    assertThat(says).allSatisfy(one -> assertThat(one).doesNotContain("takes up -"));
  }

  @Test
  void aDifferenceThatMayBeNoneIsSaidOnNeitherSide() {
    FigureCells cells = new FigureCells(words);

    assertThat(cells.difference(new Figure(2.0, new Interval(-2.2, 5.2), null)))
        .isEqualTo("alike (2\u00a0ms\u00a0earlier to\u00a05\u00a0ms\u00a0later)");
    assertThat(cells.difference(new Figure(4.0, new Interval(0.2, 8.8), null)))
        .isEqualTo("alike (0\u00a0to\u00a09\u00a0ms\u00a0later)");
    assertThat(cells.difference(new Figure(-4.0, new Interval(-8.8, -0.2), null)))
        .isEqualTo("alike (0\u00a0to\u00a09\u00a0ms\u00a0earlier)");
    assertThat(cells.difference(new Figure(4.0, new Interval(0.6, 8.8), null)))
        .isEqualTo("4\u00a0ms later (1\u00a0to\u00a09\u00a0ms)");
    assertThat(cells.difference(new Figure(0.1, new Interval(-0.2, 0.3), null)))
        .isEqualTo("alike (0\u00a0to\u00a00\u00a0ms)");
  }

  @Test
  void ofAPairItIsSaidWhoWouldFollow() {
    assertThat(words.say("leader.follows.pair", "Mina", "20", "Jonas", ""))
        .isEqualTo("Mina after Jonas, 20\u00a0%");
  }

  @Test
  void whoFollowsWhomIsSaidOrWhyNot() {
    assertThat(follows.follows(spoken.review()))
        .isNotEmpty()
        .allSatisfy(sentence -> assertThat(sentence).endsWith("."));
  }

  @Test
  void everyPupilHasAPageOfTheirOwnAndNobodyElsesNameOnIt() throws IOException {
    try (PDDocument pages = Loader.loadPDF(files.pages(spoken))) {
      assertThat(pages.getNumberOfPages()).isEqualTo(2);
      for (int i = 0; i < 2; i++) {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(i + 1);
        stripper.setEndPage(i + 1);
        String text = stripper.getText(pages);
        assertThat(text).contains(Rooms.NAMES[i]).doesNotContain(Rooms.NAMES[1 - i]);
        assertThat(text).contains("Pain means stop");
      }
    }
  }

  @Test
  void theFiguresAreARowAPlayer() {
    String csv = new String(files.figures(spoken), StandardCharsets.UTF_8);
    String[] rows = csv.split("\r\n", -1);
    assertThat(rows).hasSize(4);
    assertThat(rows[0])
        .startsWith("\ufeff\"Player\",\"Role\",\"Stand-in\",\"Written\",\"Placed\",")
        .endsWith("\"Off the part from bar\"");
    assertThat(rows[1]).startsWith("\"Mina\",,,128,128,0,0,0,0,100.0,");
    assertThat(rows[2]).endsWith(",5");
    int columns = rows[0].split("\",\"", -1).length;
    assertThat(rows[1].split(",", -1)).hasSize(columns);
  }

  /** A spreadsheet in German takes a comma for the decimal sign, and would split there. */
  @Test
  void theFiguresAreWrittenAsTheSpreadsheetReadsThem() {
    LeaderFiles german = new LeaderFiles(Words.in(Locale.GERMANY));
    String[] rows = new String(german.figures(spoken), StandardCharsets.UTF_8).split("\r\n", -1);
    assertThat(rows[0]).startsWith("\ufeff\"Wer\";\"Rolle\";").contains("\"Gehalten (%) von\"");
    assertThat(rows[1]).startsWith("\"Mina\";;;128;128;0;0;0;0;100,0;");
  }

  @Test
  void thePagesAreOnThePaperOfThePlace() throws IOException {
    for (Paper paper : Paper.values()) {
      Locale place = paper == Paper.LETTER ? Locale.US : Locale.UK;
      try (PDDocument pages = Loader.loadPDF(new LeaderFiles(Words.in(place)).pages(spoken))) {
        double millimetres = pages.getPage(0).getMediaBox().getHeight() / 72 * 25.4;
        assertThat(millimetres).as(place.toString()).isCloseTo(paper.height(), within(0.1));
      }
    }
  }

  @Test
  void twoLikeTakesStandBesideEachOther() throws IOException {
    Comparison comparison = Comparison.of(Scorer.analyse(take), Scorer.analyse(take(0)));
    LikeTakes likes = new LikeTakes(words);
    PlayerSheet.Table table = likes.sheet(comparison).section("figures").table();
    assertThat(table.heads()).hasSize(4);
    assertThat(table.lines()).isNotEmpty().allSatisfy(line -> assertThat(line).hasSize(4));
    try (PDDocument kept = Loader.loadPDF(likes.pdf(comparison))) {
      String text = new PDFTextStripper().getText(kept);
      assertThat(text).contains("First", "Second", "Told apart", "hold: the band, %");
    }
  }
}
