package thinclick.server.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Stage;
import thinclick.server.engraving.Cut;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Page;
import thinclick.server.engraving.Pages;
import thinclick.server.engraving.Paper;
import thinclick.server.history.Course;
import thinclick.server.history.CourseSheet;
import thinclick.server.history.Entry;
import thinclick.server.history.HistoryPage;
import thinclick.server.history.HistoryPicture;
import thinclick.server.material.PartWriter;
import thinclick.server.material.Stock;
import thinclick.server.material.WrittenPart;
import thinclick.server.picture.Drawing;
import thinclick.server.picture.ReviewPicture;
import thinclick.server.picture.SlipPages;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Scorer;
import thinclick.server.season.ClassList;
import thinclick.server.season.ClassTake;
import thinclick.server.season.Season;
import thinclick.server.season.SeasonPage;
import thinclick.server.season.SeasonPicture;

/** Every table, page and picture writes its numbers and days as its language does. */
class NumbersTest {
  private static final Instant DAY = Instant.parse("2026-11-29T18:30:00Z");
  private static final Pattern POINT = Pattern.compile("\\d\\.\\d");
  private static final Pattern COMMA = Pattern.compile("\\d,\\d");
  private static final Pattern ISO_DAY = Pattern.compile("\\d{4}-\\d\\d-\\d\\d");

  private static final Analysis FIRST = Scorer.analyse(take(1));
  private static final Analysis SECOND = Scorer.analyse(take(2));

  /** A tempo with a half, and a drift in tenths. */
  private static Take take(long seed) {
    Band band =
        new Band("Halves", 112.5, seed, Stage.ofBeats(8, 1, 1, 2, 3, 4), Stage.ofBeats(8, 2, 1))
            .drifts(step -> step < 64 ? 0 : (step - 64) * 1.8);
    band.player("Mina", 0, 2, 4, 6).spread(7).plays();
    band.player("Jonas", 0, 3, 4, 7).spread(9).plays();
    return band.player("Ilse", 1, 3, 5, 7).spread(11).plays().take();
  }

  @Test
  void germanHasCommasAndItsOwnDays() {
    said(Speaker.of(Locale.GERMAN))
        .forEach(
            (what, text) ->
                assertThat(text.replaceAll("\\d\\d\\.\\d\\d\\.(\\d{4})?", "a day"))
                    .as(what)
                    .isNotBlank()
                    .doesNotContainPattern(POINT)
                    .doesNotContainPattern(ISO_DAY));
    assertThat(String.join("\n", said(Speaker.of(Locale.GERMAN)).values()))
        .contains("112,5", "0,7 %", "29.11.2026", "23.11.");
  }

  @Test
  void englishHasPoints() {
    said(Speaker.english())
        .forEach((what, text) -> assertThat(text).as(what).doesNotContainPattern(COMMA));
    assertThat(String.join("\n", said(Speaker.english()).values()))
        .contains("112.5", "0.7 %", "2026-11-29");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"120 | 120 | 120", "112.5 | 112.5 | 112,5", "0.25 | 0.25 | 0,25", "-0.001 | 0 | 0"})
  void whatIsKnownIsWrittenWithNoMoreDigitsThanItHas(double value, String en, String de) {
    assertThat(Quantity.exact(value).shown(Locale.ENGLISH)).isEqualTo(en);
    assertThat(Quantity.exact(value).shown(Locale.GERMAN)).isEqualTo(de);
  }

  /** What every page says, by what it is. */
  private static Map<String, String> said(Speaker speaker) {
    Spoken spoken = Spoken.of(FIRST, speaker);
    List<Entry> entries = List.of(entry("t1", FIRST), entry("t2", SECOND));
    List<CourseSheet> courses = CourseSheet.of(Course.of(entries), null);
    Season season = season();
    Map<String, String> said = new LinkedHashMap<>();
    said.put("review", ReviewPage.of(spoken, speaker));
    said.put("slip", ReviewPage.slip(spoken, "Mina", speaker));
    said.put("comparison", Comparison.of(FIRST, SECOND).page(speaker));
    said.put("history", HistoryPage.of(courses, ZoneOffset.UTC, speaker));
    said.put(
        "a pupil's history",
        HistoryPage.of(CourseSheet.of(Course.of(entries), "Mina"), ZoneOffset.UTC, speaker));
    said.put("season", SeasonPage.of(season, ZoneOffset.UTC, speaker));
    said.put("review's picture", words(ReviewPicture.of(FIRST, spoken, speaker)));
    said.put("history's picture", words(HistoryPicture.of(courses, ZoneOffset.UTC, speaker)));
    said.put("season's picture", words(SeasonPicture.of(season, ZoneOffset.UTC, speaker)));
    said.put("slips on paper", marks(SlipPages.of(spoken, speaker, Paper.parse("A4"))));
    WrittenPart part = part(speaker);
    said.put("part", String.join("\n", PartText.lines(part)));
    said.put("part on paper", marks(Pages.parts(List.of(part), Paper.parse("A4"), Cut.HALF_BARS)));
    return said;
  }

  private static WrittenPart part(Speaker speaker) {
    return PartWriter.write(
            Stock.find("Charleston"), Stock.find("Charleston").chairs().get(0), 112.5, "")
        .in(Locale.forLanguageTag(speaker.language()));
  }

  private static Entry entry(String id, Analysis analysis) {
    return new Entry(id, DAY, Entry.Key.of(analysis.take()), analysis.review());
  }

  private static Season season() {
    Function<String, OptionalInt> level = title -> OptionalInt.of(3);
    List<ClassTake> takes = new ArrayList<>();
    for (Analysis one : List.of(FIRST, SECOND)) {
      takes.add(ClassTake.of(entry("t" + takes.size(), one), one.take(), level::apply));
    }
    return new Season(new ClassList("Tuesday class", null, List.of()), takes);
  }

  private static String words(Drawing drawing) {
    List<String> words = new ArrayList<>();
    drawing.items().stream()
        .filter(Drawing.Words.class::isInstance)
        .forEach(item -> words.add(((Drawing.Words) item).text()));
    return String.join("\n", words) + "\n" + drawing.says();
  }

  private static String marks(List<Page> pages) {
    List<String> words = new ArrayList<>();
    for (Page page : pages) {
      words.add(page.title());
      page.marks().stream()
          .filter(Mark.Text.class::isInstance)
          .forEach(mark -> words.add(((Mark.Text) mark).text()));
    }
    return String.join("\n", words);
  }
}
