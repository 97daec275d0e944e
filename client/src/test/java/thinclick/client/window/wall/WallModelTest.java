package thinclick.client.window.wall;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Rooms;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.session.TakeMoment.Part;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Rung;

/** What hangs on the wall: at most twelve words, and no names. */
class WallModelTest {
  private static final List<String> METERS =
      List.of("2/4", "3/4", "4/4", "5/4", "6/4", "7/4", "6/8", "9/8", "12/8");
  private final WallModel model = new WallModel(Words.in(Locale.ENGLISH));

  /** Takes that were held, by meter and rung; a review is made once, whatever it is read in. */
  private static List<RoomState> held(List<String> meters) {
    List<RoomState> rooms = new ArrayList<>();
    for (String written : meters) {
      Meter meter = Meter.parse(written);
      int stepsPerBeat = meter.compound() ? 3 : 2;
      for (Rung rung : Rung.values()) {
        List<Stage> stages =
            List.of(
                Rung.ALL_BEATS.stage(meter, stepsPerBeat, null, 2, 1),
                rung.stage(meter, stepsPerBeat, null, 8, 1));
        rooms.add(Rooms.reviewed(take(meter, stepsPerBeat, stages, 4)));
      }
    }
    return rooms;
  }

  /** All that can hang there after a take that was held, in each language. */
  static List<WallPage> verdicts(List<String> meters, List<Locale> locales) {
    List<WallPage> pages = new ArrayList<>();
    for (RoomState room : held(meters)) {
      for (Locale locale : locales) {
        WallPage page = new WallModel(Words.in(locale)).page(room, TakeMoment.NONE);
        check(page, room.dealt().meter() + ", " + room.dealt().stages());
        assertThat(page.ribbon()).hasSize(2);
        pages.add(page);
      }
    }
    return pages;
  }

  private static Take take(Meter meter, int stepsPerBeat, List<Stage> stages, double late) {
    Take bare = Rooms.take(meter, stepsPerBeat, stages);
    List<Attack> attacks = new ArrayList<>();
    bare.parts()
        .forEach(
            part ->
                part.attackSteps()
                    .forEach(
                        step ->
                            attacks.add(
                                Rooms.attack(
                                    part.player(),
                                    Math.round(bare.grid().microsAt(step) + late * 1e3)))));
    return bare.withAttacks(attacks);
  }

  @Test
  void everyVerdictOnEveryRungInEveryMeterHasAtMostTwelveWordsAndNoName() {
    assertThat(verdicts(METERS, List.of(Locale.ENGLISH, Locale.GERMAN)))
        .hasSize(2 * METERS.size() * Rung.values().length);
  }

  @Test
  void aBandThatHeldReadsItsRungAndWhatComesNext() {
    List<Stage> stages =
        List.of(new Stage(4, 1, List.of(1, 2, 3, 4), null), new Stage(4, 1, List.of(1, 3), null));
    WallPage page =
        model.page(Rooms.reviewed(take(Meter.FOUR_FOUR, 2, stages, 4)), TakeMoment.NONE);
    assertThat(page.above()).isEqualTo("100\u00a0% held");
    assertThat(page.held()).isEqualTo(1);
    assertThat(page.clicks().get(0)).containsExactly("all beats", "one and three");
    assertThat(page.ribbon())
        .extracting(WallPage.Stretch::label)
        .containsExactly("100\u00a0%", "100\u00a0%");
    assertThat(page.below()).isEqualTo("Once more, then fewer clicks");
  }

  /** Numbers beside each other say how it thinned; words give way to them. */
  @Test
  void threeStagesKeepTheirNumbersOnEveryRungInEitherLanguage() {
    for (Rung rung : Rung.values()) {
      List<Stage> stages =
          List.of(
              Rung.ALL_BEATS.stage(Meter.FOUR_FOUR, 2, null, 2, 1),
              Rung.GROUP_LASTS.stage(Meter.FOUR_FOUR, 2, null, 2, 1),
              rung.stage(Meter.FOUR_FOUR, 2, null, 8, 1));
      RoomState room = Rooms.reviewed(take(Meter.FOUR_FOUR, 2, stages, 4));
      for (Locale locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
        WallPage page = new WallModel(Words.in(locale)).page(room, TakeMoment.NONE);
        check(page, rung + " in " + locale);
        assertThat(page.ribbon())
            .as("%s in %s", rung, locale)
            .extracting(WallPage.Stretch::label)
            .hasSize(3)
            .allMatch(label -> label.endsWith("\u00a0%"));
        assertThat(page.below()).isNotBlank();
        assertThat(page.clicks()).allMatch(texts -> texts.size() == 3);
        assertThat(page.key()).as("for a wall too narrow for all").isNotBlank();
      }
    }
  }

  /** The way that most lessons thin: all stages say what clicked, in either language. */
  @ParameterizedTest
  @CsvSource({
    "en, all beats|one and three|the one of every bar, all beats|one and three|the one",
    "de, alle Schläge|eins und drei|die Eins allein, alle Schläge|eins und drei|die Eins"
  })
  void threeStagesSayWhatClickedInEachInFewAndInFewerWords(
      String language, String called, String brief) {
    List<Stage> stages =
        List.of(
            new Stage(4, 1, List.of(1, 2, 3, 4), null),
            new Stage(4, 1, List.of(1, 3), null),
            new Stage(4, 1, List.of(1), null));
    RoomState room = Rooms.reviewed(take(Meter.FOUR_FOUR, 2, stages, 4));
    Words words = Words.in(Locale.forLanguageTag(language));
    WallPage page = new WallModel(words).page(room, TakeMoment.NONE);
    assertThat(page.clicks()).contains(List.of(brief.split("\\|"))).hasSizeBetween(1, 2);
    assertThat(List.of(List.of(called.split("\\|")), List.of(brief.split("\\|"))))
        .containsAll(page.clicks());
    check(page, language);
  }

  @Test
  void whereAllStagesWouldBeTooManyWordsTheHeldOneAloneIsSaidAndNoNumberGivesWay() {
    WallPage.Stretch one = new WallPage.Stretch(4, 0.9, 2, "90\u00a0%");
    for (int many : new int[] {5, 6, 14}) {
      WallPage page =
          new WallPage(
                  "90\u00a0% held",
                  "",
                  "",
                  Collections.nCopies(many, one),
                  0,
                  List.of(Collections.nCopies(many, "all beats")),
                  "")
              .within(List.of("Once more, then fewer clicks", ""), List.of("on all beats"));
      check(page, many + " stages");
      assertThat(page.clicks()).hasSize(many > 5 ? 0 : 1);
      assertThat(page.key()).as("instead, or where the wall is narrow").isEqualTo("on all beats");
      assertThat(page.ribbon()).allMatch(stretch -> !stretch.label().isEmpty());
    }
  }

  @Test
  void whereThereIsRoomTheBracketSaysThatItWasHeldOnThat() {
    List<Stage> stages = List.of(new Stage(8, 1, List.of(1, 3), null));
    WallPage page =
        model.page(Rooms.reviewed(take(Meter.FOUR_FOUR, 2, stages, 4)), TakeMoment.NONE);
    assertThat(page.clicks().get(0)).containsExactly("on one and three");
    check(page, "one stage");
  }

  @Test
  void whileATakeRunsOnlyCountAndBarsAreShown() {
    List<Stage> stages =
        List.of(
            new Stage(4, 1, List.of(1, 2, 3, 4), null),
            new Stage(4, 1, List.of(1, 3), null),
            new Stage(4, 1, List.of(1, 2, 3, 4), null));
    RoomState room = Rooms.playing(take(Meter.FOUR_FOUR, 2, stages, 4));
    check(page(room, new TakeMoment(Part.BEFORE, 3, 0, -1, -1, 0)), "before");
    WallPage counted = page(room, new TakeMoment(Part.COUNT_IN, 0, 3, -1, -1, 0));
    assertThat(counted.below()).isEqualTo("Count-in");
    assertThat(counted.large())
        .as("as it is called: no bar has a number like this")
        .isEqualTo("three");
    assertThat(page(room, new TakeMoment(Part.BEFORE, 3, 0, -1, -1, 0)).large())
        .isEqualTo("3\u00a0s");
    WallPage thins = page(room, new TakeMoment(Part.PLAYING, 0, 0, 1, 0, 3));
    assertThat(thins.large()).isEqualTo("Bar 2");
    assertThat(thins.below()).isEqualTo("The click thins in 3\u00a0bars");
    assertThat(thins.ribbon()).isEmpty();
    WallPage fuller = page(room, new TakeMoment(Part.PLAYING, 0, 0, 7, 1, 1));
    assertThat(fuller.below()).isEqualTo("The click changes in one bar");
    assertThat(page(room, new TakeMoment(Part.PLAYING, 0, 0, 11, 2, 0)).below())
        .isEqualTo("The click stays to the end");
    check(page(room, new TakeMoment(Part.OVER, 0, 0, 12, -1, 0)), "over");
  }

  @Test
  void beforeTheFirstTakeItSaysHowToComeIn() {
    WallPage page = page(Rooms.gathering(), TakeMoment.NONE);
    assertThat(page.large()).isEqualTo("zanotulu");
    check(page, "gathering");
    check(page(RoomState.OUTSIDE, TakeMoment.NONE), "outside");
  }

  @Test
  void tooFewAttacksAreNoVerdict() {
    Take none =
        Rooms.take(Meter.FOUR_FOUR, 2, List.of(new Stage(4, 1, List.of(), null)))
            .withAttacks(List.of());
    check(page(Rooms.reviewed(none), TakeMoment.NONE), "nothing played");
  }

  private WallPage page(RoomState room, TakeMoment moment) {
    WallPage page = model.page(room, moment);
    check(page, moment.toString());
    return page;
  }

  private static void check(WallPage page, String what) {
    String all = page.spoken();
    assertThat(page.words()).as("%s: %s", what, page).isLessThanOrEqualTo(WallPage.MOST_WORDS);
    assertThat(all).as(what).isNotBlank().doesNotContain(Rooms.NAMES);
  }
}
