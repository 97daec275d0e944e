package thinclick.client.window.look;

import static org.assertj.core.api.Assertions.assertThat;

import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.testfx.api.FxToolkit;

/** A page is moved from line to line. */
class PageLinesTest {
  private static final double SHOWN = 90;

  @BeforeAll
  static void start() throws Exception {
    FxToolkit.registerPrimaryStage();
  }

  @Test
  void noLineIsCutAtTheUpperEdge() throws Exception {
    FxToolkit.setupFixture(
        () -> {
          Label label = new Label("one\ntwo\nthree\nfour\nfive\nsix\nseven\neight\nnine\nten");
          VBox page = laidOut(label);
          Text text = (Text) label.lookup(".text");
          double high = text.getLayoutBounds().getHeight() / 10;
          double first = page.sceneToLocal(text.localToScene(text.getLayoutBounds())).getMinY();
          PageLines lines = PageLines.of(page);
          for (double wanted = 0; wanted < 5 * high; wanted++) {
            double to = lines.between(wanted, wanted - high, wanted + high, SHOWN);
            double into = (to - first + high) % high;
            assertThat(Math.min(into, high - into))
                .as("%.0f pixels into lines of %.1f, wanted at %.0f", to, high, wanted)
                .isLessThanOrEqualTo(2);
            assertThat(Math.abs(to - wanted)).isLessThanOrEqualTo(high);
          }
          return null;
        });
  }

  @Test
  void nothingThatIsPressedIsCutAndWhatIsHiddenDoesNotCount() throws Exception {
    FxToolkit.setupFixture(
        () -> {
          Button button = new Button("Begin");
          Label hidden = new Label("not there");
          hidden.setVisible(false);
          VBox page = laidOut(button, hidden);
          double high = button.getHeight();
          PageLines lines = PageLines.of(page);
          assertThat(lines.between(high - 3, 0, high + 5, SHOWN)).isGreaterThanOrEqualTo(high);
          assertThat(lines.between(high + 8, high, high + 12, SHOWN)).isEqualTo(high + 8);
          return null;
        });
  }

  /** Where a line is cut at every place there is, the page goes where it was to go. */
  @Test
  void whatCannotBeHadIsNotAskedFor() throws Exception {
    FxToolkit.setupFixture(
        () -> {
          Button high = new Button("Begin");
          high.setMinHeight(300);
          assertThat(PageLines.of(laidOut(high)).between(100, 90, 110, SHOWN)).isEqualTo(100);
          return null;
        });
  }

  private static VBox laidOut(Node... nodes) {
    VBox page = new VBox(nodes);
    new Scene(page, 300, 400);
    page.applyCss();
    page.layout();
    return page;
  }
}
