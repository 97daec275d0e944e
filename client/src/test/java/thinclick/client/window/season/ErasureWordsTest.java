package thinclick.client.window.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Take;
import thinclick.server.history.Entry;
import thinclick.server.scoring.Scorer;
import thinclick.server.season.ClassList;
import thinclick.server.season.ClassTake;
import thinclick.server.season.Erased;
import thinclick.server.season.ErasedPlace;
import thinclick.server.season.ErasedPlace.Done;
import thinclick.server.season.Season;
import thinclick.server.words.Speaker;

class ErasureWordsTest {
  private static final ClassTake FIRST = take("x-t0", "2026-09-01T18:00:00Z");
  private static final ClassTake SECOND = take("x-t1", "2026-09-01T18:10:00Z");
  private static final ClassTake THIRD = take("x-t2", "2026-09-08T18:00:00Z");
  private static final Season SEASON =
      new Season(new ClassList("Tuesday class", null, List.of()), List.of(FIRST, SECOND, THIRD));

  private static ClassTake take(String id, String when) {
    Take played =
        StockTakes.played(
            "Ands alone",
            List.of("Mina", "Jonas"),
            (part, grid) ->
                part.player().equals("Mina")
                    ? List.of(
                        Attack.tap("Mina", Math.round(grid.microsAt(part.attackSteps().get(0)))))
                    : List.of());
    Entry entry = new Entry(id, Instant.parse(when), Entry.Key.of(played), Scorer.review(played));
    return ClassTake.of(entry, played, title -> OptionalInt.empty());
  }

  private static ErasureWords in(Locale locale) {
    Speaker speaker = Speaker.of(locale).withDaysAsIn(locale);
    return new ErasureWords(Words.in(locale), SEASON, speaker.days(), ZoneOffset.UTC);
  }

  private static ErasedPlace database(Erased erased) {
    return new ErasedPlace("rooms.db", erased, null);
  }

  @Test
  void takesAreNamedByTheirEveningsTheNewestFirst() {
    Erased erased = new Erased(List.of("x-t0", "x-t1", "x-t2"), List.of(), 2, 1, 0);

    assertThat(in(Locale.GERMANY).goes(List.of(database(erased))))
        .containsExactly(
            "In drei Durchgängen wird der Name durch „Somebody“ (jemand) ersetzt:",
            "\u200308.09.2026: Ands alone (18:00)",
            "\u200301.09.2026: Ands alone (18:10), Ands alone (18:00)",
            "Zwei gespeicherte Auswertungen werden gelöscht.",
            "Ein Eintrag der Mitgliederliste wird gelöscht.");
  }

  @Test
  void countsAreWordsUpToTwelveAlsoWhereASentenceBegins() {
    Erased twelve = new Erased(List.of(), List.of(), 12, 1, 13);

    assertThat(in(Locale.ENGLISH).gone(List.of(database(twelve))))
        .containsExactly(
            "Twelve kept reviews were deleted.",
            "One entry in the list of members was deleted.",
            "13 rooms that were left open are closed now.");
  }

  @Test
  void whatIsLeftIsSaidOfTheClassAndOfAllClasses() {
    assertThat(in(Locale.ENGLISH).left("Quirin", SEASON))
        .isEqualTo("Quirin is erased from Tuesday class; two members and three takes remain.");
    assertThat(in(Locale.GERMANY).left("Quirin", SEASON))
        .isEqualTo(
            "Quirin ist aus Tuesday class gelöscht. Es bleiben: zwei Mitglieder, drei Durchgänge.");
    assertThat(in(Locale.ENGLISH).left("Tuesday class", 0))
        .isEqualTo("Tuesday class is erased; no class remains.");
    assertThat(in(Locale.GERMANY).left("Tuesday class", 2))
        .isEqualTo("Tuesday class ist gelöscht. Es bleiben zwei Klassen.");
  }

  @Test
  void noSentenceNamesTheDatabaseOrTheNumberOfATake() {
    Erased one = new Erased(List.of("x-t2"), List.of(), 1, 2, 1);
    Erased whole = new Erased(List.of(), List.of("x-t0", "x-t2"), 0, 0, 2);
    Erased nothing = new Erased(List.of(), List.of(), 0, 0, 0);
    List<ErasedPlace> places = List.of(database(one), database(whole), database(nothing));

    for (Locale locale : List.of(Locale.ENGLISH, Locale.GERMANY)) {
      for (List<String> said : List.of(in(locale).goes(places), in(locale).gone(places))) {
        assertThat(said).hasSize(10).allMatch(line -> line.matches("[^\u2003].*[.:]|\u2003.*[)]"));
        assertThat(String.join(" ", said)).doesNotContain("rooms.db", "x-t", "{", "#");
      }
    }
  }

  @Test
  void filesThatSomebodySavedAreNamed() {
    for (Done done : Done.values()) {
      ErasedPlace file = new ErasedPlace("autumn.season.json", null, done);
      for (Locale locale : List.of(Locale.ENGLISH, Locale.GERMANY)) {
        assertThat(in(locale).goes(List.of(file)))
            .singleElement()
            .asString()
            .contains("autumn.season.json")
            .endsWith(".");
        assertThat(in(locale).gone(List.of(file)))
            .singleElement()
            .asString()
            .contains("autumn.season.json")
            .endsWith(".");
      }
    }
  }
}
