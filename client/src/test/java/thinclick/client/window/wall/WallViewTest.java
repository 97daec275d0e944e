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
        pages.add(WallPage.saying(words.say("wall.bar"), "128", words.say("wall.thins", bars)));
        pages.add(WallPage.saying(words.say("wall.bar"), "128", words.say("wall.changes", bars)));
      }
      pages.add(WallPage.saying(words.say("wall.soon"), "10", ""));
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
