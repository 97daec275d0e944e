package thinclick.client.window.wall;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import javafx.scene.layout.Region;
import javafx.scene.text.Text;
import javafx.scene.text.TextBoundsType;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.window.look.Faces;
import thinclick.client.window.wall.WallPage.Stretch;
import thinclick.client.window.words.Words;
import thinclick.server.material.Stock;

/**
 * The wall on a projector: everything that can hang there stands whole at a size that is read from
 * the back row, at three sizes and in both languages.
 */
class WallViewTest {
  private static final int[][] SIZES = {{1920, 1080}, {1366, 768}, {1024, 768}};

  @BeforeAll
  static void begin() throws Exception {
    FxToolkit.registerPrimaryStage();
    Faces.load();
  }

  @Test
  void nothingIsClippedAtAnySizeInEitherLanguage() throws Exception {
    // The longest words for what clicks stand in these.
    List<Locale> both = List.of(Locale.ENGLISH, Locale.GERMAN);
    List<WallPage> pages = new ArrayList<>(WallModelTest.verdicts(List.of("4/4", "7/4"), both));
    for (Locale locale : both) {
      Words words = Words.in(locale);
      for (String key : List.of("wall.nobody", "wall.lost", "wall.over", "wall.few")) {
        pages.add(WallPage.saying("", words.say(key), ""));
      }
      for (int bars : new int[] {1, 2, 48}) {
        pages.add(WallPage.saying("", words.say("wall.bar", 128), words.say("wall.thins", bars)));
        pages.add(WallPage.saying("", words.say("wall.bar", 128), words.say("wall.changes", bars)));
      }
      pages.add(WallPage.saying("", words.say("wall.seconds", 10), words.say("wall.soon")));
      pages.add(WallPage.saying(words.say("wall.word"), "wuwuwuwu", "192.168.100.200:65535"));
      Stock.drills()
          .forEach(drill -> pages.add(WallPage.saying("", drill.title(), words.say("wall.read"))));
    }
    List<String> clipped =
        on(
            () -> {
              WallView view = new WallView();
              List<String> cut = new ArrayList<>();
              for (int[] size : SIZES) {
                for (WallPage page : pages) {
                  ((Region) view.root()).resize(size[0], size[1]);
                  view.show(page);
                  ((Region) view.root()).layout();
                  if (!view.fits()) {
                    cut.add(size[0] + "x" + size[1] + ": " + page);
                  }
                }
              }
              return cut;
            });
    assertThat(clipped).isEmpty();
  }

  /**
   * Whatever was held, in whichever of how many stages, the page is filled, and what is said of it
   * stands under the middle of its bracket, aside only where the page ends; words that are wider
   * than their stage hang on a line from it.
   */
  @Test
  void whatIsSaidOfAStageHangsOnItAndThePageIsFilled() throws Exception {
    for (int[] size : SIZES) {
      double em = WallView.LEAST * size[1];
      for (String below : List.of("", "Once more, then fewer clicks")) {
        for (int stages = 1; stages <= 6; stages++) {
          for (int held = 0; held < stages; held++) {
            List<Stretch> ribbon =
                Collections.nCopies(stages, new Stretch(8, 0.97, 2, "97\u00a0%"));
            WallPage page =
                new WallPage("96\u00a0% held", "", "", ribbon, held, "")
                    .within(
                        below.isEmpty() ? List.of("") : List.of(below, "Once more"),
                        List.of("the first beat alone", "first only"));
            assertThat(page.words()).isLessThanOrEqualTo(WallPage.MOST_WORDS);
            RibbonPlaces places =
                on(
                    () ->
                        RibbonPlaces.on(
                            page, size[0], size[1], WallView.MARGIN, text -> wide(text, em)));
            double wide = 0;
            for (String line : places.says()) {
              wide = Math.max(wide, on(() -> wide(line, em * places.saysSize())));
            }
            hangs(page, places, wide, size);
            assertThat(places.figures())
                .as("the stages' numbers stay: %s at %d", page, size[0])
                .hasSize(stages)
                .allMatch(figure -> figure.startsWith("97"));
          }
        }
      }
    }
  }

  private static void hangs(WallPage page, RibbonPlaces places, double wide, int[] size) {
    String what = page + " at " + size[0];
    RibbonPlaces.Span span = places.held(page);
    assertThat(String.join(" ", places.says())).as(what).isEqualTo(page.heldSays());
    assertThat(places.stem() > 0).as("%s: a line to it", what).isEqualTo(wide > span.width() + 1);
    assertThat(places.middle() - wide / 2).as(what).isBetween(0.0, span.middle());
    assertThat(places.middle() + wide / 2).as(what).isBetween(span.middle(), size[0] * 1.0);
    assertThat(places.labels()).as(what).isBetween(places.floor(), places.bracket());
    double capitals = WallView.LEAST_CAPITAL * places.saysSize() * size[1];
    assertThat(places.words() - capitals)
        .as("%s: clear of the bracket", what)
        .isGreaterThan(places.bracket() + places.stem() + 0.015 * size[1]);
    double margin = WallView.MARGIN * size[0];
    double aside = Math.max(0, margin - (span.middle() - wide / 2));
    aside += Math.min(0, size[0] - margin - (span.middle() + wide / 2));
    assertThat(places.middle())
        .as("%s: under the middle of the bracket, as far as the page goes", what)
        .isCloseTo(span.middle() + aside, within(0.5));
    double lowest = places.words() + (places.says().size() - 1) * places.line();
    assertThat(lowest).as(what).isLessThan(size[1] * (page.below().isEmpty() ? 0.95 : 0.8));
    assertThat(places.floor())
        .as("%s: no empty third", what)
        .isGreaterThan(size[1] * (page.below().isEmpty() ? 0.6 : 0.54));
  }

  private static double wide(String text, double size) {
    Text measured = new Text(text);
    measured.setFont(Faces.SEMIBOLD.at(size));
    return measured.getLayoutBounds().getWidth();
  }

  /** The face's own capital, measured on its outline. */
  @Test
  void theSmallestCapitalIsAsHighAsItMustBe() throws Exception {
    double height =
        on(
            () -> {
              Text capital = new Text("H");
              capital.setFont(Faces.SEMIBOLD.at(WallView.LEAST * 1080));
              capital.setBoundsType(TextBoundsType.VISUAL);
              return capital.getLayoutBounds().getHeight();
            });
    assertThat(height).isGreaterThanOrEqualTo(WallView.LEAST_CAPITAL * 1080);
  }

  private static <T> T on(java.util.concurrent.Callable<T> does) throws Exception {
    return WaitForAsyncUtils.asyncFx(does).get(30, TimeUnit.SECONDS);
  }
}
