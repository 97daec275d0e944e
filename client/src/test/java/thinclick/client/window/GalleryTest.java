package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import javafx.scene.control.Button;
import javafx.scene.control.TextField;
import javafx.scene.image.PixelReader;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.PlayedAttack;
import thinclick.client.link.RoomAddress;
import thinclick.client.standin.Slip;
import thinclick.client.standin.StandIn;
import thinclick.client.standin.Timing;
import thinclick.client.window.look.Faces;
import thinclick.client.window.look.Look.Shade;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.settings.SettingsFile;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.material.Stock;

/**
 * Pictures of every page in every phase of a rehearsal, light and dark, at three sizes, into {@code
 * target/gallery}: to be looked at. A whole rehearsal is played for it, with stand-ins.
 */
@Tag("long")
class GalleryTest {
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  /** {@code -Dgallery.language=de} makes the German ones, in a folder of their own. */
  private static final Locale LANGUAGE =
      Locale.forLanguageTag(System.getProperty("gallery.language", "en"));

  private static final Path FOLDER =
      Path.of("target", LANGUAGE.equals(Locale.ENGLISH) ? "gallery" : "gallery-" + LANGUAGE);

  /** Content sizes: a small laptop, a large screen, a projector of 4 to 3. */
  private record Size(String name, int width, int height) {}

  private static final List<Size> SIZES =
      List.of(
          new Size("1366x768", 1366, 768),
          new Size("1920x1080", 1920, 1080),
          new Size("1024x768", 1024, 768));

  /** A picture that is put on disk once nothing is in a hurry any more. */
  private interface Written {
    void write() throws IOException;
  }

  private final List<Written> pictures = new ArrayList<>();

  @TempDir Path folder;

  private final FxRobot robot = new FxRobot();
  private final ScheduledExecutorService hands = Executors.newSingleThreadScheduledExecutor();
  private final List<StandIn> band = new ArrayList<>();
  private Session session;
  private Desk desk;
  private Stage stage;

  @Test
  void everyPageInEveryPhase() throws Exception {
    Files.createDirectories(FOLDER);
    open();
    picture("door");
    robot.interact(() -> ((TextField) stage.getScene().lookup("#name")).setText("Ana"));
    robot.interact(() -> ((Button) stage.getScene().lookup("#practise")).fire());
    picture("practice");
    robot.type(KeyCode.F1);
    picture("help");
    control(KeyCode.DIGIT6);
    picture("settings");
    control(KeyCode.DIGIT1);
    picture("check");
    robot.interact(() -> ((Button) stage.getScene().lookup("#check-back")).fire());
    robot.interact(() -> stage.getScene().lookup("#name").requestFocus());
    robot.type(KeyCode.ENTER);
    until(() -> session.state().inside());
    picture("lectern-empty");
    LinkLoop loop = LinkLoop.start();
    RoomAddress where = RoomAddress.parse("ws://" + session.state().address());
    for (String name : List.of("Ben", "Cleo", "Dara")) {
      Slip slip = name.equals("Cleo") ? new Slip(4, 7, 1) : Slip.NONE;
      band.add(
          StandIn.join(
              loop,
              where,
              session.state().word(),
              name,
              Timing.PRACTISED.leaning(name.length() * 3 - 12),
              dealt -> slip,
              7));
    }
    until(() -> session.state().people().size() == 4);
    control(KeyCode.DIGIT2);
    picture("stand-waiting");
    control(KeyCode.DIGIT3);
    String title = System.getProperty("gallery.drill", "Threes over a blues");
    robot.interact(
        () ->
            session
                .lead()
                .choose(
                    Stock.find(title)
                        .withStages(
                            List.of(
                                thinclick.protocol.music.Stage.ofBeats(4, 1, 1, 2, 3, 4),
                                thinclick.protocol.music.Stage.ofBeats(4, 1, 2, 4),
                                thinclick.protocol.music.Stage.ofBeats(4, 2, 1))),
                    132.0));
    until(() -> session.state().title() != null);
    picture("lectern-chosen");
    control(KeyCode.D);
    until(() -> session.state().phase() == Phase.DEALT);
    picture("lectern-dealt");
    control(KeyCode.DIGIT2);
    picture("stand-dealt");
    control(KeyCode.ENTER);
    until(() -> session.state().announced() != null);
    play();
    until(() -> bar() > -0.9);
    picture("stand-count-in");
    until(() -> bar() > 6.3);
    picture("stand-playing");
    until(() -> session.state().review() != null && !session.state().review().provisional());
    picture("review");
    control(KeyCode.DIGIT2);
    picture("stand-stopped");
    control(KeyCode.DIGIT3);
    picture("lectern-reviewed");
    band.forEach(StandIn::close);
    loop.close();
    FxToolkit.setupFixture(desk::close);
    FxToolkit.cleanupStages();
    hands.shutdownNow();
    for (Written one : pictures) {
      one.write();
    }
    try (var made = Files.list(FOLDER)) {
      assertThat(made.count()).isGreaterThanOrEqualTo(10L * SIZES.size() * 2);
    }
  }

  private void open() throws Exception {
    stage = FxToolkit.registerPrimaryStage();
    session = new Session(WindowThread.INSTANCE, MonotonicClock.SYSTEM, folder, LANGUAGE);
    FxToolkit.setupFixture(
        () -> {
          Faces.load();
          desk = new Desk(stage, session, Words.in(LANGUAGE), new SettingsFile(folder));
          stage.show();
          desk.start();
          desk.begin(new WindowOptions(WindowOptions.Way.DOOR, "", "", "", false, null));
        });
    WaitForAsyncUtils.waitForFxEvents();
  }

  /** Plays the own part, a little late, one attack left out, one far too early, one too many. */
  private void play() {
    RoomState room = on(session::state);
    StepGrid grid = room.grid();
    int index = 0;
    for (int step : room.ownPart().attackSteps()) {
      index++;
      double off =
          9 * Math.sin(index * 1.7) + (index % 7 == 3 ? -34 : 0) + (index % 9 == 5 ? 38 : 0);
      if (index % 11 != 6) {
        tap((long) (grid.microsAt(step) + off * 1e3));
      }
      if (index % 13 == 4) {
        tap((long) (grid.microsAt(step) + grid.stepMicros() * 1.1));
      }
    }
  }

  private void tap(long micros) {
    long nanos = session.link().nanosOf(micros);
    hands.schedule(
        () ->
            WindowThread.INSTANCE.execute(
                () -> session.play(new PlayedAttack(nanos, null, null, null, null))),
        nanos - System.nanoTime(),
        TimeUnit.NANOSECONDS);
  }

  /** Where the take stands, in bars from bar 1. */
  private double bar() {
    RoomState room = session.state();
    StepGrid grid = room.grid();
    return grid == null
        ? Double.NEGATIVE_INFINITY
        : (session.link().roomMicros(System.nanoTime()) - grid.startMicros())
            / (grid.beatMicros() * grid.meter().beatsPerBar());
  }

  private void picture(String name) {
    for (Shade shade : List.of(Shade.LIGHT, Shade.DARK)) {
      for (Size size : SIZES) {
        WaitForAsyncUtils.waitForFxEvents();
        WritableImage[] made = new WritableImage[1];
        robot.interact(
            () -> {
              desk.begin(new WindowOptions(WindowOptions.Way.DOOR, "", "", "", false, shade));
              stage.setWidth(size.width());
              stage.setHeight(size.height());
            });
        WaitForAsyncUtils.waitForFxEvents();
        robot.interact(() -> made[0] = stage.getScene().snapshot(null));
        String file =
            name + "-" + shade.name().toLowerCase(Locale.ROOT) + "-" + size.name() + ".png";
        pictures.add(() -> write(made[0], FOLDER.resolve(file)));
      }
    }
  }

  private static void write(WritableImage image, Path file) throws IOException {
    int width = (int) image.getWidth();
    int height = (int) image.getHeight();
    BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    PixelReader reader = image.getPixelReader();
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        picture.setRGB(x, y, reader.getArgb(x, y));
      }
    }
    ImageIO.write(picture, "png", file.toFile());
  }

  private void control(KeyCode key) {
    robot.press(KeyCode.CONTROL).type(key).release(KeyCode.CONTROL);
    WaitForAsyncUtils.waitForFxEvents();
  }

  private void until(Callable<Boolean> holds) {
    await().atMost(PATIENCE).pollInterval(Duration.ofMillis(20)).until(() -> on(holds));
  }

  private static <T> T on(Callable<T> asked) {
    return WaitForAsyncUtils.waitForAsyncFx(10_000, asked);
  }
}
