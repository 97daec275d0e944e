package thinclick.client.window.wall;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
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
      pages.add(WallPage.saying(words.say("wall.soon"), words.say("wall.seconds", 10), ""));
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
   * Whatever was held, in whichever stage, the page is filled and nothing reaches beyond its own.
   */
  @Test
  void whatIsSaidOfAStageStandsBeneathItAndThePageIsFilled() throws Exception {
    List<Stretch> stages =
        List.of(
            new Stretch(8, 1, 4, "100 %"),
            new Stretch(8, 0.97, 2, "97 %"),
            new Stretch(8, 0.9, 1, "90 %"));
    for (int[] size : SIZES) {
      for (String below : List.of("", "Once more, then fewer")) {
        for (int held = 0; held < stages.size(); held++) {
          WallPage page =
              new WallPage("96 % together", "", below, stages, held, "the first beat alone");
          RibbonPlaces places = RibbonPlaces.on(page, size[0], size[1], WallView.MARGIN);
          double em = WallView.LEAST * size[1];
          List<String> lines = on(() -> places.heldLines(page, text -> wide(text, em)));
          String what = page + " at " + size[0];
          assertThat(String.join(" ", lines)).isEqualTo("the first beat alone");
          for (String line : lines) {
            assertThat(on(() -> wide(line, em)))
                .as("%s: %s", what, line)
                .isLessThanOrEqualTo(places.held(page).width());
          }
          for (int i = 0; i < stages.size(); i++) {
            String label = stages.get(i).label();
            assertThat(on(() -> wide(label, em))).isLessThan(places.stages().get(i).width());
          }
          double lowest = places.words() + (lines.size() - 1) * places.line();
          assertThat(places.labels()).isLessThan(places.bracket());
          assertThat(lowest).as(what).isLessThan(size[1] * (below.isEmpty() ? 0.95 : 0.86));
          assertThat(below.isEmpty() ? lowest : 0.93 * size[1])
              .as("%s: no empty quarter", what)
              .isGreaterThan(0.8 * size[1]);
        }
      }
    }
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
