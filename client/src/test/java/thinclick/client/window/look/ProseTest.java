package thinclick.client.window.look;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.layout.Pane;
import javafx.scene.shape.MoveTo;
import javafx.scene.text.Text;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.testfx.api.FxToolkit;

class ProseTest {
  private static final String SAID =
      "A rehearsal for rhythm: everybody is dealt a part with an entry of its own, the click thins"
          + " out stage by stage, and the review says how well the band held together.";

  @BeforeAll
  static void start() throws Exception {
    FxToolkit.registerPrimaryStage();
  }

  /** At every width: as many lines as there must be, filled, and the last is no lone short word. */
  @Test
  void theLastLineIsNoLoneShortWord() throws Exception {
    FxToolkit.setupFixture(
        () -> {
          Label plain = new Label(SAID);
          plain.setWrapText(true);
          Label prose = Prose.of(SAID);
          Pane pane = new Pane(plain, prose);
          new Scene(pane, 1200, 600);
          pane.applyCss();
          int lone = 0;
          for (int width = 260; width < 1000; width += 7) {
            set(plain, width);
            set(prose, width);
            Text was = text(plain);
            Text is = text(prose);
            assertThat(is.getLayoutBounds().getHeight())
                .as("as high as it was at %d px", width)
                .isEqualTo(was.getLayoutBounds().getHeight());
            assertThat(is.getText()).isEqualTo(SAID);
            assertThat(endsInALoneWord(is, width)).as("the last line at %d px", width).isFalse();
            if (endsInALoneWord(was, width)) {
              lone++;
            } else {
              assertThat(lastLine(is))
                  .as("nothing is broken earlier at %d px", width)
                  .isEqualTo(lastLine(was));
            }
          }
          assertThat(lone).as("widths at which a plain label ends in a lone word").isPositive();
        });
  }

  @Test
  void noWordIsBrokenInside() throws Exception {
    FxToolkit.setupFixture(
        () -> {
          Label prose = Prose.of("Thinnest click");
          Label word = new Label("Thinnest");
          Pane pane = new Pane(prose, word);
          new Scene(pane, 1200, 600);
          pane.applyCss();
          int least = (int) Math.ceil(word.prefWidth(-1)) + 1;
          for (int width = least; width < 2 * least; width++) {
            set(prose, width);
            assertThat(text(prose).caretShape(7, true)[0])
                .as("the last letter of the word at %d px", width)
                .isInstanceOfSatisfying(
                    MoveTo.class,
                    last ->
                        assertThat(last.getY())
                            .isEqualTo(((MoveTo) text(prose).caretShape(0, true)[0]).getY()));
          }
        });
  }

  @Test
  void otherWordsAreSetAnew() throws Exception {
    FxToolkit.setupFixture(
        () -> {
          Label prose = Prose.of(SAID);
          Pane pane = new Pane(prose);
          new Scene(pane, 1200, 600);
          pane.applyCss();
          set(prose, 400);
          prose.setText("Short.");
          set(prose, 400);
          assertThat(text(prose).getText()).isEqualTo("Short.");
          prose.setText(SAID + " " + SAID);
          set(prose, 400);
          assertThat(text(prose).getLayoutBounds().getWidth()).isBetween(240.0, 400.0);
          assertThat(endsInALoneWord(text(prose), 400)).isFalse();
        });
  }

  private static void set(Label label, double width) {
    label.resize(width, label.prefHeight(width));
    label.layout();
  }

  private static Text text(Label label) {
    return label.getChildrenUnmodifiable().stream()
        .filter(Text.class::isInstance)
        .map(Text.class::cast)
        .findFirst()
        .orElseThrow();
  }

  private static boolean endsInALoneWord(Text text, int width) {
    int before = text.getText().lastIndexOf(' ');
    return at(text, before + 1).getY() > at(text, before).getY() && lastLine(text) < width / 4.0;
  }

  private static double lastLine(Text text) {
    return at(text, text.getText().length()).getX();
  }

  private static MoveTo at(Text text, int letter) {
    return Arrays.stream(text.caretShape(letter, true))
        .filter(MoveTo.class::isInstance)
        .map(MoveTo.class::cast)
        .findFirst()
        .orElseThrow();
  }
}
