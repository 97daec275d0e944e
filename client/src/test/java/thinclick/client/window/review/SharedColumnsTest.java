package thinclick.client.window.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import org.junit.jupiter.api.Test;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/** Tables of one page in a real window. */
class SharedColumnsTest {
  private final SharedColumns columns = new SharedColumns();

  @Test
  void namesAndFiguresStandInLineThroughThePage() throws Exception {
    FxToolkit.registerPrimaryStage();
    GridPane players =
        table(
            List.of("Player", "Placed", "Lean", "Comes in"),
            List.of(
                List.of("Frederike (stand-in)", "120 of 120", "5\u00a0ms late", "in time"),
                List.of("Bo", "9 of 12", "20\u00a0ms early", "late")),
            1,
            2);
    GridPane roles =
        table(
            List.of("Role", "Of the written ones", "Players"),
            List.of(List.of("ride", "9 of 12", "Bo")),
            1);
    VBox page = new VBox(players);
    FxToolkit.setupStage(
        stage -> {
          stage.setScene(new Scene(page, 900, 300));
          stage.show();
        });
    WaitForAsyncUtils.asyncFx(() -> page.getChildren().add(roles)).get(10, TimeUnit.SECONDS);
    WaitForAsyncUtils.waitForFxEvents();

    assertThat(right(players, "9 of 12")).isCloseTo(right(roles, "9 of 12"), within(.5));
    assertThat(right(players, "Placed")).isCloseTo(right(roles, "9 of 12"), within(.5));
    assertThat(at(roles, "Bo").getMinX()).isGreaterThan(right(roles, "9 of 12"));
    assertThat(at(roles, "9 of 12").getMinX())
        .isGreaterThan(at(players, "Frederike (stand-in)").getMaxX());
  }

  private GridPane table(List<String> heads, List<List<String>> lines, Integer... figures) {
    return columns.table(heads, lines, Set.of(figures)::contains);
  }

  private static double right(GridPane table, String says) {
    return at(table, says).getMaxX();
  }

  private static Bounds at(GridPane table, String says) {
    for (Node cell : table.getChildren()) {
      if (cell instanceof Label label && label.getText().equals(says)) {
        return label.localToScene(label.getLayoutBounds());
      }
    }
    throw new AssertionError("no cell says " + says);
  }
}
