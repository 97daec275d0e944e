package thinclick.server.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;
import thinclick.server.lesson.LessonScript.Kind;
import thinclick.server.lesson.LessonScript.Line;
import thinclick.server.lesson.LessonScript.Moment;
import thinclick.server.material.Stock;

/** What somebody who has never seen the lesson is told. */
class LessonScriptTest {
  private static final Lesson FIRST_DAY = Stock.findLesson("First day");

  private static LessonScript script(int drill, int take) {
    Lesson.Item item = FIRST_DAY.drills().get(drill);
    boolean last = drill == FIRST_DAY.drills().size() - 1;
    return LessonScript.of(item, Stock.find(item.drill()), take, last, Locale.ENGLISH);
  }

  private static List<String> of(LessonScript script, Kind kind) {
    return script.lines().stream().filter(line -> line.kind() == kind).map(Line::text).toList();
  }

  @Test
  void theFirstTakeSaysWhatIsPlayedWhatClicksAndHowItIsCountedIn() {
    LessonScript script = script(2, 1); // Odds and evens, two rows

    assertThat(of(script, Kind.SAY))
        .containsExactly(
            "Half the room on the beat, half on the ands; then change.",
            "There are 2 rows. Whoever has the same row plays as one; the page says which is"
                + " yours.",
            "The click gives you 8 bars on all beats, then 8 bars on one and three. What does"
                + " not click goes on in you.");
    assertThat(of(script, Kind.COUNT)).containsExactly("One two three four, one two three four.");
    assertThat(of(script, Kind.DO)).last().isEqualTo("Play the same drill 3 times more.");
    assertThat(of(script(2, 2), Kind.DO)).last().isEqualTo("Play the same drill twice more.");
    assertThat(of(script(2, 3), Kind.DO)).last().isEqualTo("Play the same drill once more.");
  }

  @Test
  void laterTakesDoNotExplainAgainAndTheLastLeadsOn() {
    assertThat(of(script(2, 2), Kind.SAY)).noneMatch(line -> line.contains("rows"));
    assertThat(of(script(2, 4), Kind.DO)).containsExactly("Go on to the next drill.");
    assertThat(of(script(5, 4), Kind.DO)).first().asString().startsWith("That was the last drill");
  }

  /** The first line is the one whose turn it is; what is over does not come again. */
  @Test
  void fromEachMomentOnItSaysWhatIsStillToCome() {
    LessonScript second = script(2, 2);

    assertThat(second.from(Moment.BEFORE)).isEqualTo(second.lines());
    assertThat(second.from(Moment.COUNT_IN)).first().extracting(Line::kind).isEqualTo(Kind.COUNT);
    assertThat(second.from(Moment.DURING).stream().map(Line::kind))
        .containsExactly(Kind.DURING, Kind.DURING, Kind.AFTER, Kind.DO);
    assertThat(second.from(Moment.AFTER).stream().map(Line::kind))
        .containsExactly(Kind.AFTER, Kind.DO);
    assertThat(script(0, 1).from(Moment.BEFORE).get(0).text())
        .isEqualTo("Clap it once without the click.");
    assertThat(script(0, 2).from(Moment.BEFORE)).noneMatch(line -> line.text().contains("Clap"));
  }

  /** Clicked bars help only where something does not click. */
  @Test
  void whoIsLostIsGivenClickedBarsWhereNotAllBeatsClick() {
    assertThat(of(script(0, 1), Kind.DURING)) // all beats, from the first bar to the last
        .last()
        .isEqualTo("If half the class is lost, count aloud.");
    assertThat(of(script(2, 1), Kind.DURING))
        .last()
        .isEqualTo("If half the class is lost, give two clicked bars and count aloud.");
  }

  @Test
  void theCountGoesByTheMeter() {
    Lesson.Item waltz = new Lesson.Item("Waltz threes", 1, "");
    LessonScript script =
        LessonScript.of(waltz, Stock.find("Waltz threes"), 1, false, Locale.ENGLISH);

    assertThat(of(script, Kind.COUNT)).containsExactly("One two three, one two three.");
    assertThat(of(script, Kind.SAY)).first().asString().doesNotContain("Clap");
  }

  @Test
  void everyTakeOfEveryReadyLessonHasAWholeScript() {
    for (Lesson lesson : Stock.lessons()) {
      for (Lesson.Item item : lesson.drills()) {
        Drill drill = Stock.find(item.drill());
        for (int take = 1; take <= item.takes(); take++) {
          LessonScript script = LessonScript.of(item, drill, take, false, Locale.ENGLISH);
          assertThat(script.lines().stream().map(Line::kind))
              .as("%s, %s, take %d", lesson.title(), item.drill(), take)
              .contains(Kind.SAY, Kind.COUNT, Kind.DURING, Kind.AFTER, Kind.DO);
          assertThat(script.text(Locale.ENGLISH)).noneMatch(line -> line.contains("{"));
        }
      }
    }
  }

  /** How often a row is gone through the lesson's own words say, so nothing else may. */
  @Test
  void whatIsDoneBeforeATakeNamesNoNumberBesideThatOfTheLesson() {
    assertThat(of(script(0, 1), Kind.SAY)).first().asString().contains("once");
    assertThat(of(script(0, 1), Kind.DO))
        .first()
        .asString()
        .endsWith("while the room claps its rhythm.")
        .doesNotContain("once", "twice");
  }

  /** Own lessons say what they say; those of the stock speak the reader's language. */
  @Test
  void whatTheStockSaysIsThereInGermanToo() {
    for (Lesson lesson : Stock.lessons()) {
      for (Lesson.Item item : lesson.drills()) {
        Drill drill = Stock.find(item.drill());
        String english =
            of(LessonScript.of(item, drill, 1, false, Locale.ENGLISH), Kind.SAY).get(0);
        String german = of(LessonScript.of(item, drill, 1, false, Locale.GERMAN), Kind.SAY).get(0);
        assertThat(english).isEqualTo(item.say());
        assertThat(german).as(item.say()).isNotEqualTo(english);
      }
    }
    Lesson.Item own = new Lesson.Item("Even eighths", 1, "Mind the cable.");
    LessonScript script = LessonScript.of(own, Stock.find("Even eighths"), 1, false, Locale.GERMAN);
    assertThat(of(script, Kind.SAY)).first().isEqualTo("Mind the cable.");
  }

  @Test
  void theSecondLanguageSaysAllOfIt() {
    Lesson.Item item = FIRST_DAY.drills().get(2);
    LessonScript script = LessonScript.of(item, Stock.find(item.drill()), 1, false, Locale.GERMAN);

    assertThat(of(script, Kind.SAY)).anyMatch(line -> line.startsWith("Es gibt 2 Zeilen."));
    assertThat(script.text(Locale.GERMAN)).noneMatch(line -> line.contains("{"));
  }

  /** Every way of dealing and every moment has its own sentence in both languages. */
  @Test
  void noSentenceIsLeftInTheFirstLanguage() {
    ResourceBundle english =
        ResourceBundle.getBundle("thinclick.server.lesson.lesson", Locale.ROOT);
    ResourceBundle german =
        ResourceBundle.getBundle("thinclick.server.lesson.lesson", Locale.GERMAN);
    for (String key : english.keySet()) {
      if (!key.equals("count")) {
        assertThat(german.getString(key)).as(key).isNotEqualTo(english.getString(key));
      }
    }
  }
}
