package thinclick.client.window.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.testfx.api.FxToolkit;
import thinclick.client.window.look.Palette;
import thinclick.server.picture.Drawing;
import thinclick.server.picture.Tint;

class DrawingNodeTest {
  /** At any size of the letters a picture reaches as far to the right as the rules above it. */
  @ParameterizedTest
  @ValueSource(doubles = {300, 861, 1216, 1764})
  void aPictureIsAsWideAsItsPage(double page) throws Exception {
    FxToolkit.registerPrimaryStage();
    Drawing drawing =
        new Drawing(
            828, 200, "", "", List.of(new Drawing.Line(0, 10, 828, 10, 1, false, Tint.RULE)));
    double[] found = new double[2];
    FxToolkit.setupFixture(
        () -> {
          DrawingNode node = new DrawingNode(drawing, Palette.LIGHT);
          node.resize(page, node.prefHeight(page));
          node.layout();
          found[0] = node.getChildren().get(0).getBoundsInParent().getMaxX();
          found[1] = node.getHeight();
        });

    assertThat(found[0]).isCloseTo(page, within(1.0));
    assertThat(found[1]).isCloseTo(200 * page / 828, within(0.5));
  }
}
