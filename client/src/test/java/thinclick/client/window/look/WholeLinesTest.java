package thinclick.client.window.look;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import javafx.geometry.Bounds;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.image.PixelReader;
import javafx.scene.layout.VBox;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/** By the pixels of a real window, wherever its sheet is moved to. */
class WholeLinesTest {
  private static final int PLACES = 10;

  private final List<Label> lines = new ArrayList<>();
  private PagePane pane = new PagePane();

  @BeforeAll
  static void start() throws Exception {
    FxToolkit.registerPrimaryStage();
  }

  @Test
  void noLineIsCutAtAnEdgeAndNoWholeOneIsCovered() throws Exception {
    FxToolkit.setupStage(
        stage -> {
          Scene scene = new Scene(page(), 420, 317);
          scene
              .getStylesheets()
              .setAll(Stylesheet.shapes(), Stylesheet.of(Palette.LIGHT, Look.USUAL_TEXT));
          stage.setScene(scene);
          stage.show();
        });
    int cut = 0;
    for (int place = 0; place <= PLACES; place++) {
      double at = (double) place / PLACES;
      on(
          () -> {
            pane.setVvalue(at);
            return at;
          });
      await()
          .atMost(Duration.ofSeconds(10))
          .untilAsserted(() -> assertThat(on(this::faults)).as("at %.2f", at).isEmpty());
      cut += on(this::cutByAnEdge);
    }
    assertThat(cut).as("lines that an edge would have cut").isGreaterThan(PLACES / 2);
  }

  private static <T> T on(Callable<T> asked) throws Exception {
    return WaitForAsyncUtils.asyncFx(asked).get(10, TimeUnit.SECONDS);
  }

  private PagePane page() {
    VBox sheet = new VBox();
    sheet.getStyleClass().add("sheet");
    for (int i = 0; i < 40; i++) {
      Label line = new Label("Eight bars, played high and gently");
      if (i % 5 == 0) {
        line.getStyleClass().add("title");
      }
      lines.add(line);
    }
    sheet.getChildren().addAll(lines);
    VBox page = new VBox(sheet);
    page.getStyleClass().add("page");
    pane = new PagePane(page);
    WholeLines.keep(pane, page, sheet);
    return pane;
  }

  private double top() {
    return pane.localToScene(0, pane.getInsets().getTop()).getY();
  }

  private double foot() {
    return top() + pane.getViewportBounds().getHeight();
  }

  private static Bounds place(Label line) {
    return line.localToScene(line.getLayoutBounds());
  }

  private int cutByAnEdge() {
    return (int)
        lines.stream()
            .map(WholeLinesTest::place)
            .filter(one -> cuts(one, top()) || cuts(one, foot()))
            .count();
  }

  private static boolean cuts(Bounds line, double y) {
    return line.getMinY() < y - 2 && line.getMaxY() > y + 2;
  }

  private List<String> faults() {
    PixelReader pixels = pane.getScene().snapshot(null).getPixelReader();
    List<String> faults = new ArrayList<>();
    for (Label line : lines) {
      Bounds bounds = place(line);
      boolean cut = cuts(bounds, top()) || cuts(bounds, foot());
      boolean whole = bounds.getMinY() > top() && bounds.getMaxY() < foot();
      if (cut && inked(pixels, bounds)) {
        faults.add("cut at " + bounds.getMinY());
      } else if (whole && !inked(pixels, bounds)) {
        faults.add("covered at " + bounds.getMinY());
      }
    }
    return faults;
  }

  /** True where anything as dark as half of the way to the ink is seen in the part in view. */
  private boolean inked(PixelReader pixels, Bounds line) {
    for (int y = (int) Math.max(line.getMinY(), top() + 1);
        y < Math.min(line.getMaxY(), foot() - 1);
        y++) {
      for (int x = (int) line.getMinX(); x < line.getMaxX(); x++) {
        if (pixels.getColor(x, y).getBrightness() < 0.5) {
          return true;
        }
      }
    }
    return false;
  }
}
