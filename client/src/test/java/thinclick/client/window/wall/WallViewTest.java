package thinclick.client.window.wall;

import static org.assertj.core.api.Assertions.assertThat;

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
   * In however many stages, whichever was held: each has its click in words under its middle and
   * clear of the next, or none has and a key says that of the held one; and the page is filled.
   */
  @Test
  void allStagesSayTheirClickUnderTheirMiddleOrNoneDoes() throws Exception {
    List<String> called = List.of("all beats", "one and three", "the one of every bar");
    List<String> brief = List.of("all beats", "one and three", "the one");
    int inWords = 0;
    for (int[] size : SIZES) {
      double em = WallView.LEAST * size[1];
      for (String below : List.of("", "Once more")) {
        for (int stages = 1; stages <= 6; stages++) {
          for (int held = -1; held < stages; held++) {
            List<Stretch> ribbon =
                Collections.nCopies(stages, new Stretch(8, 0.97, 2, "97\u00a0%"));
            List<List<String>> clicks = List.of(first(called, stages), first(brief, stages));
            String key = held < 0 ? "" : "on the one of every bar";
            WallPage page =
                new WallPage("96\u00a0% held", "", "", ribbon, held, clicks, "")
                    .within(List.of(below), key.isEmpty() ? List.of() : List.of(key));
            assertThat(page.words()).isLessThanOrEqualTo(WallPage.MOST_WORDS);
            RibbonPlaces places =
                on(
                    () ->
                        RibbonPlaces.on(
                            page, size[0], size[1], WallView.MARGIN, text -> wide(text, em)));
            Captions captions = places.captions();
            if (captions.clicks().isEmpty()) {
              assertThat(stages).as("as many as there are most often").isGreaterThan(3);
              assertThat(String.join(" ", captions.key())).as("%s", page).isEqualTo(key);
            } else {
              inWords++;
              assertThat(captions.key()).isEmpty();
              clear(page, places, size);
            }
            stacked(page, places, size);
            assertThat(captions.figures())
                .as("the stages' numbers stay: %s at %d", page, size[0])
                .hasSize(stages)
                .allMatch(figure -> figure.startsWith("97"));
          }
        }
      }
    }
    assertThat(inWords).isPositive();
  }

  private static List<String> first(List<String> three, int stages) {
    List<String> some = new ArrayList<>();
    for (int i = 0; i < stages; i++) {
      some.add(three.get(i % three.size()));
    }
    return some;
  }

  /** What stands under a stage ends before what stands under the next, and within the page. */
  private static void clear(WallPage page, RibbonPlaces places, int[] size) throws Exception {
    double em = WallView.LEAST * size[1] * places.captions().size();
    double margin = WallView.MARGIN * size[0];
    for (int line = 0; line < 2; line++) {
      double from = margin - 2;
      for (int i = 0; i < places.stages().size(); i++) {
        List<String> lines = places.captions().clicks().get(i);
        if (line < lines.size()) {
          String text = lines.get(line);
          double half = on(() -> wide(text, em)) / 2;
          double middle = places.stages().get(i).middle();
          assertThat(middle - half).as("%s of %s at %d", text, page, size[0]).isGreaterThan(from);
          from = middle + half + em / 4;
        }
      }
      assertThat(from - em / 4).as("%s at %d", page, size[0]).isLessThan(size[0] - margin + 2);
    }
  }

  /** From the ribbon down to the foot of the page nothing touches what stands above it. */
  private static void stacked(WallPage page, RibbonPlaces places, int[] size) {
    String what = page + " at " + size[0];
    double capitals = WallView.LEAST_CAPITAL * places.captions().size() * size[1];
    boolean held = page.held() >= 0;
    double over = held ? places.bracket() + RibbonPlaces.BRACKET * size[1] : places.floor();
    assertThat(places.bracket() > places.floor()).as("%s: a bracket", what).isEqualTo(held);
    assertThat(places.figures() - capitals).as(what).isGreaterThan(over + 0.02 * size[1]);
    int lines = places.captions().lines();
    assertThat(lines == 0 || places.words() - capitals > places.figures()).as(what).isTrue();
    double lowest = places.words() + Math.max(0, lines - 1) * places.line();
    assertThat(lowest).as(what).isLessThan(size[1] * (page.below().isEmpty() ? 0.95 : 0.8));
    double least = page.below().isEmpty() ? 0.6 : 0.49;
    assertThat(places.floor()).as("%s: no empty third", what).isGreaterThan(size[1] * least);
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
