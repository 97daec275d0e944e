package thinclick.server.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.DealtFigure;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.SeasonFile.Member;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Stage;
import thinclick.server.export.DrawingFiles;
import thinclick.server.history.HistoryPicture;
import thinclick.server.picture.Drawing;
import thinclick.server.picture.Easel;
import thinclick.server.words.Followers;
import thinclick.server.words.Speaker;

class SeasonTest {
  private static final Speaker ENGLISH = Speaker.english();

  private static Season season;
  private static Take fitted;

  /**
   * The same drill in three weeks: Mina gets steadier and plays alone at the end, Ilse cannot hold
   * it, Jonas misses the last week, Tariq plays in that one only and sits on Mina's chair.
   */
  @BeforeAll
  static void threeWeeks() {
    fitted = take(2, lastWeek(), Map.of("mina", 5, "Ilse", 2));
    season =
        new Season(
            new ClassList("Tuesday class", null, List.of(new Member("Ilse", 5, "piano"))),
            List.of(
                played("t3", 2, fitted),
                played("t1", 0, take(0, band(30, 12, 70), Map.of())),
                played("t2", 1, take(1, band(22, 12, 70), Map.of())),
                played("t4", 3, alone())));
  }

  private static Take take(int week, Map<String, Double> spreads, Map<String, Integer> levels) {
    return Weeks.take("Ands alone", 5 + week, spreads, levels);
  }

  private static Take alone() {
    return new Followers(11, Stage.ofBeats(16, 1, 1, 2, 3, 4), Stage.ofBeats(16, 1, 1, 3))
        .player("Mina", 1, 0, 0)
        .take();
  }

  private static ClassTake played(String id, int week, Take take) {
    return Weeks.played(id, Weeks.week(week), take);
  }

  private static Map<String, Double> band(double mina, double jonas, double ilse) {
    Map<String, Double> spreads = new LinkedHashMap<>();
    spreads.put("Mina", mina);
    spreads.put("Jonas", jonas);
    spreads.put("Ilse", ilse);
    return spreads;
  }

  private static Map<String, Double> lastWeek() {
    Map<String, Double> spreads = new LinkedHashMap<>();
    spreads.put("Tariq", 10.0);
    spreads.put("mina", 10.0);
    spreads.put("Ilse", 15.0);
    return spreads;
  }

  private static Pupil pupil(String name) {
    return season.pupil(name).orElseThrow();
  }

  private static String said(Pupil pupil) {
    return String.join(" ", new SeasonWords(season, ZoneOffset.UTC, ENGLISH).of(pupil));
  }

  @Test
  void weeksBeginOnMondayAndKnowWhoTookPart() {
    List<Week> weeks = season.weeks(ZoneOffset.UTC);

    assertThat(weeks).extracting(Week::monday).startsWith(LocalDate.of(2026, 8, 31)).hasSize(4);
    assertThat(weeks.get(0).present()).containsExactly("mina", "jonas", "ilse");
    assertThat(weeks.get(2).present()).containsExactly("tariq", "mina", "ilse");
    assertThat(new SeasonWords(season, ZoneOffset.UTC, ENGLISH).lastWeek())
        .containsExactly(
            "1 of 4 took part in the week of 2026-09-21.", "Missing: Tariq, Jonas and Ilse.");
  }

  /** Whoever was erased is no member and is not missed; another of that name is, once written. */
  @Test
  void whoWasErasedIsNobodysMember() {
    Map<String, Double> names = new LinkedHashMap<>();
    List.of("Mina", "Somebody", "Somebody 2").forEach(name -> names.put(name, 10.0));
    List<ClassTake> takes = List.of(played("t1", 0, take(0, names, Map.of())));

    Season erased = new Season(new ClassList("Tuesday class", null, List.of()), takes);
    assertThat(erased.pupils()).extracting(Pupil::name).containsExactly("Mina");
    assertThat(new SeasonWords(erased, ZoneOffset.UTC, ENGLISH).lastWeek())
        .containsExactly("1 of 1 took part in the week of 2026-08-31.");

    ClassList written =
        new ClassList("Tuesday class", null, List.of(new Member("Somebody", null, null)));
    assertThat(new Season(written, takes).pupils())
        .extracting(Pupil::name)
        .containsExactly("Mina", "Somebody");
  }

  /** Written down goes before where somebody sat last; a name is the same in any case. */
  @Test
  void everybodyIsKnownByNameAndChair() {
    assertThat(season.pupils())
        .extracting(Pupil::name, Pupil::chair, pupil -> pupil.takes().size())
        .containsExactly(
            tuple("Mina", 1, 4), tuple("Tariq", 1, 1), tuple("Jonas", 2, 2), tuple("Ilse", 5, 3));
    assertThat(pupil("ilse").instrument()).isEqualTo("piano");
  }

  @Test
  void ofTwoOnOneChairWhoWasHereLastSitsThere() {
    assertThat(season.seats(List.of("Tariq", "MINA", "Ilse", "Zoe")))
        .containsExactly(Map.entry("MINA", 1), Map.entry("Ilse", 5));
    assertThat(season.seats(List.of("Tariq", "Jonas")))
        .containsExactly(Map.entry("Tariq", 1), Map.entry("Jonas", 2));
  }

  /** Of Ilse's takes only those with the figure of the newest count, which was the easier one. */
  @Test
  void levelIsThatOfTheNewestTakesWithTheSameFigure() {
    Part ilse = fitted.parts().get(2);
    assertThat(ilse.figure()).isEqualTo(DealtFigure.EASIER);

    assertThat(pupil("Jonas").standing()).contains(new Standing(5, 4, 100, 2));
    Standing standing = pupil("Ilse").standing().orElseThrow();
    assertThat(standing.takes()).isEqualTo(1);
    assertThat(standing.played()).isEqualTo(ilse.level());
    assertThat(standing.level()).isEqualTo(ilse.level() + 1);
    assertThat(pupil("Tariq").standing().orElseThrow().takes()).isEqualTo(1);
  }

  @Test
  void whatIsSaidOfOneNamesItsTakesAndDays() {
    assertThat(said(pupil("Jonas")))
        .isEqualTo(
            "Jonas took part in 2 of 4 weeks, last on 2026-09-08."
                + " Level 5: Jonas held 100\u00a0% of parts at level 4 over the last two takes with a verdict."
                + " Fewest clicks held: the one of every bar, 2026-09-01."
                + " Ands alone at 88, the same click plan: two takes."
                + " Over seven days nothing changed that can be told from chance."
                + " Nothing can be said about a thinner click yet: that needs a take played alone"
                + " with the click, in which at least three quarters of the notes are placed.");
    assertThat(said(pupil("Mina"))).doesNotContain("the same click plan");
  }

  /** On the page of a whole class, why nothing is foretold stands once, with all whom it is of. */
  @Test
  void whyNothingIsForetoldIsSaidOnceOfAll() {
    String page = SeasonPage.of(season, ZoneOffset.UTC, ENGLISH).replace('\n', ' ');

    assertThat(page)
        .containsOnlyOnce("that needs a take played alone")
        .contains("about a thinner click for Tariq, Jonas and Ilse yet: that needs");
  }

  @Test
  void aThinnerClickIsForetoldWithItsIntervalFromATakeAlone() {
    assertThat(said(pupil("Mina")))
        .contains("By Followers at 120, 2026-09-22:")
        .containsPattern(
            "With a thinner click \\(.*\\), expect Mina’s spread near \\d+ ms \\(\\d+\u2013\\d+\\)");
  }

  @Test
  void theNextDealIsFittedAndEachChairIsToldWhy() {
    assertThat(Fitting.levels(season, List.of("Jonas", "ILSE", "Zoe")))
        .containsExactly(
            Map.entry("Jonas", 5), Map.entry("ILSE", pupil("Ilse").standing().get().level()));
    assertThat(Fitting.sentences(season, fitted.parts(), ENGLISH))
        .hasSize(3)
        .last()
        .asString()
        .startsWith("Ilse stands at ")
        .contains(
            " over the last take with a verdict): the easier rhythm, level "
                + fitted.parts().get(2).level());
    assertThat(Fitting.sentences(season, List.of(Part.of("Zoe", 0, List.of(1))), ENGLISH))
        .containsExactly("Zoe has no take with a verdict yet: as written.");
  }

  @Test
  void pageIsUnderEightyColumnsInBothLanguages() {
    for (Speaker speaker : List.of(ENGLISH, Speaker.of(Locale.GERMAN))) {
      assertThat(SeasonPage.of(season, ZoneOffset.UTC, speaker).lines())
          .allMatch(line -> line.codePointCount(0, line.length()) < 80)
          .anyMatch(line -> line.contains("Tuesday class: "));
    }
    assertThat(SeasonPage.of(new Season(season.list(), List.of()), ZoneOffset.UTC, ENGLISH))
        .startsWith("Tuesday class: one member, no take yet.")
        .contains("Ilse has not played yet.");
  }

  @Test
  void ofStagesThatClickAsFewTheLastIsTheMarkOfAPlayerAsOfTheBand() {
    Take take =
        new Followers(11, Stage.ofBeats(8, 1, 1, 3), Stage.ofBeats(8, 1, 2, 4))
            .player("Mina", 1, 0, 0)
            .take();
    Season own =
        new Season(new ClassList("Tuesday class", null, List.of()), List.of(played("t1", 0, take)));
    assertThat(
            SeasonPage.of(own, ZoneOffset.UTC, ENGLISH)
                .split("Fewest clicks held: two and\\s+four"))
        .as("said of her and of the band")
        .hasSize(3);
  }

  @Test
  void pictureAndJsonHoldTheWeeks() {
    String svg =
        new String(
            DrawingFiles.svg(SeasonPicture.of(season, ZoneOffset.UTC, ENGLISH)),
            StandardCharsets.UTF_8);
    assertThat(svg).contains("Took part", "08-31", "09-21", "Tariq").doesNotContain("NaN");
    assertThat(SeasonJson.of(season, ZoneOffset.UTC).at("/members/0/forecasts")).isNotEmpty();
    assertThat(SeasonJson.of(season, ZoneOffset.UTC).at("/weeks/0/present")).hasSize(3);
  }

  @Test
  void pictureOfAWindowWritesDaysAsTheWindowDoes() {
    Drawing drawn =
        SeasonPicture.plain(season, ZoneOffset.UTC, ENGLISH.withDaysAsIn(Locale.ENGLISH), 828);
    List<String> texts =
        drawn.items().stream()
            .filter(Drawing.Words.class::isInstance)
            .map(item -> ((Drawing.Words) item).text())
            .toList();
    assertThat(texts)
        .contains("Aug\u00a031", "Sep\u00a021")
        .noneMatch(text -> text.contains("2026-"));
    Speaker german = Speaker.of(Locale.GERMAN).withDaysAsIn(Locale.GERMANY);
    assertThat(german.days().format(LocalDate.of(2026, 9, 1))).isEqualTo("01.09.2026");
    assertThat(german.daysOfTheYear().format(LocalDate.of(2026, 9, 1))).isEqualTo("01.09.");
    assertThat(ENGLISH.withDaysAsIn(Locale.UK).daysOfTheYear().format(LocalDate.of(2026, 9, 1)))
        .matches("1\u00a0Sept?");
  }

  @Test
  void attendanceIsRuledFromMarginToMargin() {
    Drawing drawn = SeasonPicture.of(season, ZoneOffset.UTC, ENGLISH);
    double right = HistoryPicture.WIDTH - HistoryPicture.MARGIN;
    assertThat(drawn.items())
        .filteredOn(item -> item instanceof Drawing.Line line && line.x1() == HistoryPicture.MARGIN)
        .hasSize(season.pupils().size() + 1)
        .allMatch(item -> ((Drawing.Line) item).x2() == right);
  }

  /** On a page it is drawn anew for each width, in letters of one size, and nothing leaves it. */
  @Test
  void pictureOfAPageIsDrawnForItsWidth() {
    List<Drawing> drawn =
        List.of(
            SeasonPicture.plain(season, ZoneOffset.UTC, ENGLISH, 420),
            SeasonPicture.plain(season, ZoneOffset.UTC, ENGLISH, 1040));
    assertThat(drawn).extracting(Drawing::width).containsExactly(420.0, 1040.0);
    for (Drawing one : drawn) {
      assertThat(one.items())
          .filteredOn(Drawing.Words.class::isInstance)
          .map(Drawing.Words.class::cast)
          .allMatch(words -> words.size() == Easel.BODY || words.size() == Easel.SMALL)
          .allMatch(words -> words.left() >= 0)
          .allMatch(
              words ->
                  words.left() + words.face().width(words.text(), words.size()) <= one.width());
    }
  }

  /** A class that is longer than a page has its weeks below it as well. */
  @Test
  void weeksStandBelowALongClassToo() {
    List<Member> many =
        IntStream.range(0, 13).mapToObj(i -> new Member("P" + i, i + 1, null)).toList();
    ClassList list = new ClassList("Tuesday class", null, many);
    assertThat(weeksNamed(new Season(list, season.takes()))).hasSize(2);
    assertThat(weeksNamed(season)).hasSize(1);
  }

  private static List<Drawing.Item> weeksNamed(Season season) {
    return SeasonPicture.of(season, ZoneOffset.UTC, ENGLISH).items().stream()
        .filter(item -> item instanceof Drawing.Words words && words.text().equals("08-31"))
        .toList();
  }

  @Test
  void whatIsErasedLeavesOutWhatThereWasNoneOf() {
    Erased erased = new Erased(List.of("t1"), List.of(), 0, 1, 0);
    assertThat(new ErasedPlace("rooms.db", erased, null).say(ENGLISH))
        .isEqualTo("rooms.db: name replaced in 1 take (t1), 1 entry in lists of classes deleted");
  }
}
