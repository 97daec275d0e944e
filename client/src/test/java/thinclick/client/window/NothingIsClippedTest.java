package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Enumeration;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.concurrent.Callable;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListCell;
import javafx.scene.input.KeyCode;
import javafx.scene.text.Text;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.sound.Loudness;
import thinclick.client.window.look.Faces;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.Session;
import thinclick.client.window.settings.Settings;
import thinclick.client.window.settings.SettingsFile;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.time.MonotonicClock;

/** No words are cut short, at twice the usual size and in a language that needs more room. */
class NothingIsClippedTest {
  private static final Duration PATIENCE = Duration.ofSeconds(40);
  private static final String BUNDLE = "thinclick.client.window.words.window";

  @TempDir Path folder;

  private final FxRobot robot = new FxRobot();
  private final List<String> clipped = new ArrayList<>();
  private Session session;
  private Desk desk;
  private Stage stage;

  @AfterEach
  void close() throws Exception {
    FxToolkit.setupFixture(desk::close);
    FxToolkit.cleanupStages();
  }

  @ParameterizedTest
  @CsvSource({"15, 1.4", "30, 1.0", "30, 1.4"})
  void wordsAreWholeOnEveryPage(double textSize, double stretch) throws Exception {
    open(textSize, stretch);
    look("door");
    robot.interact(() -> stage.getScene().lookup("#name").requestFocus());
    robot.write("Ana").type(KeyCode.ENTER);
    title("view.lectern");
    robot.type(KeyCode.ENTER);
    until(() -> session.state().title() != null);
    robot.press(KeyCode.CONTROL).type(KeyCode.D).release(KeyCode.CONTROL);
    until(() -> session.state().phase() == Phase.DEALT);
    look("lectern");
    robot.press(KeyCode.CONTROL).type(KeyCode.DIGIT2).release(KeyCode.CONTROL);
    title("view.stand");
    look("stand");
    assertThat(clipped).as("cut short at %.0f px, stretched by %.1f", textSize, stretch).isEmpty();
  }

  private Words words;

  private void open(double textSize, double stretch) throws Exception {
    stage = FxToolkit.registerPrimaryStage();
    session = new Session(WindowThread.INSTANCE, MonotonicClock.SYSTEM, folder);
    words = Words.of(new Stretched(stretch), Locale.ENGLISH);
    SettingsFile file = new SettingsFile(folder);
    file.write(
        new Settings(
            Settings.FORMAT,
            Settings.VERSION,
            Palette.LIGHT,
            textSize,
            Loudness.FIRST_DBFS,
            "",
            ""));
    FxToolkit.setupFixture(
        () -> {
          Faces.load();
          desk = new Desk(stage, session, words, file);
          stage.show();
          desk.start();
          desk.begin(new WindowOptions(WindowOptions.Way.DOOR, "", "", "", false, null));
        });
    WaitForAsyncUtils.waitForFxEvents();
  }

  private void title(String view) {
    String wanted = words.say("shell.title", words.say(view));
    until(() -> wanted.equals(stage.getTitle()));
  }

  private void look(String page) {
    WaitForAsyncUtils.waitForFxEvents();
    robot.interact(
        () -> {
          stage.getScene().getRoot().applyCss();
          stage.getScene().getRoot().layout();
          collect(page, stage.getScene().getRoot());
        });
  }

  private void collect(String page, Parent parent) {
    for (Node node : parent.getChildrenUnmodifiable()) {
      if (!node.isVisible()) {
        continue;
      }
      if (node instanceof Labeled labeled && !(node instanceof ListCell)) {
        for (Node inside : labeled.getChildrenUnmodifiable()) {
          if (inside instanceof Text text && !text.getText().equals(labeled.getText())) {
            clipped.add(page + ": \"" + text.getText() + "\" of \"" + labeled.getText() + "\"");
          }
        }
      }
      if (node instanceof Parent deeper) {
        collect(page, deeper);
      }
    }
  }

  private void until(Callable<Boolean> holds) {
    await().atMost(PATIENCE).until(() -> WaitForAsyncUtils.waitForAsyncFx(10_000, holds));
  }

  /** Every sentence longer by a share of itself, with its blanks left alone. */
  private static final class Stretched extends ResourceBundle {
    private final ResourceBundle english = ResourceBundle.getBundle(BUNDLE, Locale.ROOT);
    private final double stretch;

    Stretched(double stretch) {
      this.stretch = stretch;
    }

    @Override
    protected Object handleGetObject(String key) {
      String said = english.getString(key);
      int more = (int) Math.round(said.replaceAll("\\{[^}]*\\}", "").length() * (stretch - 1));
      return said + "o".repeat(Math.max(0, more)).replaceAll("(.{6})", "$1 ").stripTrailing();
    }

    @Override
    public Enumeration<String> getKeys() {
      return english.getKeys();
    }
  }
}
