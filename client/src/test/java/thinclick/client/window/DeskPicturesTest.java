package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.image.PixelReader;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.standin.Manner;
import thinclick.client.window.look.Faces;
import thinclick.client.window.look.Look.Shade;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.settings.SettingsFile;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.time.MonotonicClock;

/**
 * Pictures of the leader's pages with a band, light and dark, at three sizes, into {@code
 * target/desk}: to be looked at.
 */
@Tag("long")
class DeskPicturesTest {
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final Path FOLDER = Path.of("target", "desk");

  private record Size(String name, int width, int height) {}

  private static final List<Size> SIZES =
      List.of(
          new Size("1920x1080", 1920, 1080),
          new Size("1366x768", 1366, 768),
          new Size("1024x768", 1024, 768));

  @TempDir Path folder;

  private final FxRobot robot = new FxRobot();
  private Session session;
  private Desk desk;
  private Stage stage;
  private boolean forOthers;

  @AfterEach
  void close() throws Exception {
    FxToolkit.setupFixture(desk::close);
    FxToolkit.cleanupStages();
  }

  @Test
  void theLeadersPages() throws Exception {
    Files.createDirectories(FOLDER);
    open();
    robot.interact(() -> stage.getScene().lookup("#name").requestFocus());
    robot.write("Frau Ott").type(KeyCode.ENTER);
    until(() -> session.state().inside());
    for (int i = 0; i < 5; i++) {
      int players = i + 2;
      Manner manner = Manner.values()[i];
      robot.interact(() -> desk.roster().fill(manner, null, 0));
      until(() -> session.state().people().size() == players);
    }
    picture("lectern-open");
    robot.interact(() -> ((TextField) stage.getScene().lookup("#looking")).setText("section"));
    robot.interact(() -> stage.getScene().lookup("#drills").requestFocus());
    robot.type(KeyCode.ENTER);
    until(() -> session.state().title() != null);
    picture("lectern-drill");
    robot.interact(() -> ((ToggleButton) stage.getScene().lookup("#compose")).fire());
    picture("lectern-compose");
    robot.interact(() -> ((ToggleButton) stage.getScene().lookup("#compose")).fire());
    robot.interact(() -> stage.getScene().lookup("#lessons").requestFocus());
    robot.type(KeyCode.ENTER);
    until(() -> session.state().phase() == Phase.DEALT);
    picture("lectern-lesson");
    robot.interact(() -> desk.wall().turn(stage));
    wallPicture("wall-dealt");
    robot.interact(() -> stage.getScene().lookup("#go-on").requestFocus());
    robot.interact(() -> desk.goOn());
    until(() -> session.state().takeRuns());
    until(() -> bar() > -0.5);
    wallPicture("wall-count-in");
    until(() -> bar() > 2.2);
    wallPicture("wall-playing");
    until(() -> session.state().review() != null && !session.state().review().provisional());
    wallPicture("wall-verdict");
    picture("review-leader");
    robot.interact(() -> scroll(1));
    picture("review-leader-end");
    robot.interact(() -> desk.goTo(View.LECTERN));
    picture("lectern-reviewed");
    assertThat(FOLDER).isDirectory();
  }

  @Test
  void theWayInForOthers() throws Exception {
    Files.createDirectories(FOLDER);
    open();
    forOthers = true;
    picture("door-for-others");
    robot.interact(() -> stage.getScene().lookup("#name").requestFocus());
    robot.write("Frau Ott").type(KeyCode.ENTER);
    until(() -> session.state().inside());
    picture("lectern-link");
    robot.interact(() -> ((Button) stage.getScene().lookup("#show-code")).fire());
    picture("lectern-code");
    assertThat(FOLDER).isDirectory();
  }

  private double bar() {
    RoomState room = session.state();
    return room.grid() == null
        ? Double.NEGATIVE_INFINITY
        : (session.link().roomMicros(System.nanoTime()) - room.grid().startMicros())
            / (room.grid().beatMicros() * room.grid().meter().beatsPerBar());
  }

  private void scroll(double to) {
    if (stage.getScene().lookup(".scroll-pane") instanceof ScrollPane pane) {
      pane.setVvalue(to);
    }
  }

  private void wallPicture(String name) throws IOException {
    for (Shade shade : List.of(Shade.LIGHT, Shade.DARK)) {
      for (Size size : SIZES) {
        robot.interact(
            () -> {
              desk.begin(new WindowOptions(WindowOptions.Way.DOOR, "", "", "", forOthers, shade));
              desk.wall().scene().getWindow().setWidth(size.width());
              desk.wall().scene().getWindow().setHeight(size.height());
            });
        WaitForAsyncUtils.waitForFxEvents();
        WaitForAsyncUtils.waitForFxEvents();
        write(
            desk.wall().scene(),
            name + "-" + shade.name().toLowerCase(Locale.ROOT) + "-" + size.name());
        assertThat(desk.wall().fits()).as("%s at %s", name, size.name()).isTrue();
      }
    }
  }

  private void open() throws Exception {
    stage = FxToolkit.registerPrimaryStage();
    session = new Session(WindowThread.INSTANCE, MonotonicClock.SYSTEM, folder);
    FxToolkit.setupFixture(
        () -> {
          Faces.load();
          desk = new Desk(stage, session, Words.in(Locale.ENGLISH), new SettingsFile(folder));
          stage.show();
          desk.start();
          desk.begin(new WindowOptions(WindowOptions.Way.DOOR, "", "", "", false, null));
        });
    WaitForAsyncUtils.waitForFxEvents();
  }

  private void picture(String name) throws IOException {
    for (Shade shade : List.of(Shade.LIGHT, Shade.DARK)) {
      for (Size size : SIZES) {
        robot.interact(
            () -> {
              desk.begin(new WindowOptions(WindowOptions.Way.DOOR, "", "", "", forOthers, shade));
              stage.setWidth(size.width());
              stage.setHeight(size.height());
            });
        WaitForAsyncUtils.waitForFxEvents();
        WaitForAsyncUtils.waitForFxEvents();
        write(
            stage.getScene(),
            name + "-" + shade.name().toLowerCase(Locale.ROOT) + "-" + size.name());
      }
    }
  }

  private void write(Scene scene, String name) throws IOException {
    WritableImage[] made = new WritableImage[1];
    robot.interact(() -> made[0] = scene.snapshot(null));
    int width = (int) made[0].getWidth();
    int height = (int) made[0].getHeight();
    BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    PixelReader reader = made[0].getPixelReader();
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        picture.setRGB(x, y, reader.getArgb(x, y));
      }
    }
    ImageIO.write(picture, "png", FOLDER.resolve(name + ".png").toFile());
  }

  private void until(Callable<Boolean> holds) {
    await()
        .atMost(PATIENCE)
        .pollInterval(Duration.ofMillis(20))
        .until(() -> WaitForAsyncUtils.waitForAsyncFx(10_000, holds));
  }
}
