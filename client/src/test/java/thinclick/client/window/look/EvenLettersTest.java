package thinclick.client.window.look;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import javafx.scene.Group;
import javafx.scene.Scene;
import javafx.scene.image.PixelReader;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;
import javafx.scene.text.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.testfx.api.FxToolkit;

class EvenLettersTest {
  private static final int LETTERS = 24;

  /** A row of the same letter: their darkest points are all one advance apart. */
  @ParameterizedTest
  @ValueSource(doubles = {11, 15, 16.8, 22, 30})
  void lettersOfARowStandEquallyFarApart(double size) throws Exception {
    FxToolkit.registerPrimaryStage();
    WritableImage[] made = new WritableImage[1];
    double[] width = new double[1];
    FxToolkit.setupFixture(
        () -> {
          Text row = new Text(4, 40, "l ".repeat(LETTERS).strip());
          row.setFont(Faces.TEXT.at(size));
          Text one = new Text("l l");
          one.setFont(Faces.TEXT.at(size));
          Text two = new Text("l");
          two.setFont(Faces.TEXT.at(size));
          width[0] = one.getLayoutBounds().getWidth() - two.getLayoutBounds().getWidth();
          Scene scene = new Scene(new Group(row), 800, 60, Color.WHITE);
          made[0] = scene.snapshot(null);
        });
    List<Double> centres = centres(made[0]);
    assertThat(centres).hasSize(LETTERS);
    for (int i = 1; i < LETTERS; i++) {
      assertThat(centres.get(i) - centres.get(i - 1))
          .as("from letter %d of %.1f px to the next, px", i, size)
          .isBetween(width[0] - 0.15, width[0] + 0.15);
    }
  }

  /** The middles of all that is dark, from the left, weighted by how dark it is. */
  private static List<Double> centres(WritableImage image) {
    PixelReader pixels = image.getPixelReader();
    List<Double> centres = new ArrayList<>();
    double dark = 0;
    double moment = 0;
    for (int x = 0; x < image.getWidth(); x++) {
      double here = 0;
      for (int y = 0; y < image.getHeight(); y++) {
        here += 1 - pixels.getColor(x, y).getBrightness();
      }
      if (here > 0.02) {
        dark += here;
        moment += here * (x + 0.5);
      } else if (dark > 0) {
        centres.add(moment / dark);
        dark = 0;
        moment = 0;
      }
    }
    return centres;
  }

  @ParameterizedTest
  @CsvSource({"Linux, 1", "FreeBSD, 1", "Windows 11, ", "Mac OS X, "})
  void onlyWhereTheSystemDoesNotSeeToIt(String system, String asked) {
    Properties properties = new Properties();
    properties.setProperty("os.name", system);
    EvenLetters.ask(properties);
    assertThat(properties.getProperty(EvenLetters.LIMIT)).isEqualTo(asked);
  }

  @Test
  void whatWasSetStays() {
    Properties properties = new Properties();
    properties.setProperty("os.name", "Linux");
    properties.setProperty(EvenLetters.LIMIT, "80");
    EvenLetters.ask(properties);
    assertThat(properties.getProperty(EvenLetters.LIMIT)).isEqualTo("80");
  }
}
