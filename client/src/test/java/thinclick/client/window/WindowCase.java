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
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.image.PixelReader;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.robot.BaseRobot;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.window.look.Faces;
import thinclick.client.window.look.Look;
import thinclick.client.window.session.Lead;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.settings.Settings;
import thinclick.client.window.settings.SettingsFile;
import thinclick.client.window.words.Language;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.time.MonotonicClock;

/** What tests in a real window share: the window, its keyboard, what it says, its picture. */
abstract class WindowCase {
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final double WIDTH = 1_120;
  private static final double HEIGHT = 760;
  private static final Duration OFTEN = Duration.ofMillis(20);
  private static final Duration BETWEEN_PULSES = Duration.ofMillis(4);

  @TempDir Path folder;

  final FxRobot robot = new FxRobot();
  Words words = Words.in(Locale.ENGLISH);
  Session session;
  Desk desk;
  Stage stage;

  /** All that the sentence at the bottom has said, and how much of it was waited for. */
  private final List<String> sentences = new CopyOnWriteArrayList<>();

  private int known;

  /** The window at its door, as it is opened without any choice, with the settings of a folder. */
  final void open() throws Exception {
    stage = FxToolkit.registerPrimaryStage();
    session = new Session(WindowThread.INSTANCE, MonotonicClock.SYSTEM, folder, words.locale());
    FxToolkit.setupFixture(
        () -> {
          Faces.load();
          desk = new Desk(stage, session, words, new SettingsFile(folder));
          stage.setWidth(WIDTH); // the stage is one for all tests, as the last one left it
          stage.setHeight(HEIGHT);
          stage.show();
          desk.start();
          Labeled sentence = (Labeled) node("sentence");
          sentence.textProperty().addListener((any, old, now) -> sentences.add(now));
          desk.begin(new WindowOptions(WindowOptions.Way.DOOR, "", "", "", false, null));
        });
    WaitForAsyncUtils.waitForFxEvents();
  }

  /** The same with text of another size, chosen in a run before. */
  final void open(double textSize) throws Exception {
    new SettingsFile(folder)
        .write(
            new Settings(
                Settings.FORMAT,
                Settings.VERSION,
                Look.FIRST.withText(textSize),
                Language.SYSTEM,
                "",
                ""));
    open();
  }

  @AfterEach
  final void closeWindow() throws Exception {
    Desk open = desk;
    desk = null;
    if (open != null) {
      FxToolkit.setupFixture(open::close);
      FxToolkit.cleanupStages();
    }
  }

  /** Ctrl and a key. */
  final void control(KeyCode key) {
    BaseRobot keyboard = robot.robotContext().getBaseRobot();
    keyboard.pressKeyboard(KeyCode.CONTROL);
    key(key);
    keyboard.releaseKeyboard(KeyCode.CONTROL);
    WaitForAsyncUtils.waitForFxEvents();
  }

  /** A key as the keyboard sends it, without a pause behind it: what it does is waited for. */
  final void key(KeyCode key) {
    BaseRobot keyboard = robot.robotContext().getBaseRobot();
    keyboard.pressKeyboard(key);
    keyboard.releaseKeyboard(key);
  }

  /** Does something on the window's thread, and nothing more is waited for. */
  static void act(Runnable does) {
    on(
        () -> {
          does.run();
          return true;
        });
  }

  final Node node(String id) {
    return stage.getScene().lookup("#" + id);
  }

  final String text(String id) {
    return on(() -> ((Labeled) node(id)).getText());
  }

  /**
   * Waits until the sentence at the bottom has this in it, or has had it since the last that was
   * waited for: some stand for three seconds only, in which a busy computer need not look.
   */
  final void says(String part) {
    await()
        .atMost(PATIENCE)
        .pollInterval(OFTEN)
        .untilAsserted(
            () -> {
              List<String> since =
                  Stream.concat(sentences.stream().skip(known), Stream.of(text("sentence")))
                      .toList();
              assertThat(since).anyMatch(said -> said.contains(part));
              int at = 0;
              while (!since.get(at).contains(part)) {
                at++;
              }
              known = Math.min(known + at + 1, sentences.size());
            });
    WaitForAsyncUtils.waitForFxEvents();
  }

  /** Waits for a page by the window's title. */
  final void title(String view) {
    String wanted = words.say("shell.title", words.say(view));
    until(() -> wanted.equals(stage.getTitle()));
  }

  /** Where the take stands, in bars from bar 1. */
  final double bar() {
    RoomState room = session.state();
    return room.grid() == null || session.link() == null
        ? Double.NEGATIVE_INFINITY
        : (session.link().roomMicros(System.nanoTime()) - room.grid().startMicros())
            / (room.grid().beatMicros() * room.grid().meter().beatsPerBar());
  }

  /** Has this window's leader deal a drill to everybody, in the order in which they came. */
  final void dealToAll(Drill drill, double tempo) {
    robot.interact(
        () -> {
          List<String> all = session.state().people().stream().map(Person::playerId).toList();
          session.lead().chooseAndDeal(new Lead.Hand(drill, tempo, 1, all));
        });
  }

  /**
   * Until nothing in the window moves any more: it has been laid out twice and all stood where it
   * stood before. What has an effect on the next layout, and that on the one after, is over then.
   */
  final void still() {
    Stillness still = new Stillness(stage.getScene());
    on(still::begin);
    await()
        .atMost(PATIENCE)
        .pollDelay(Duration.ZERO)
        .pollInterval(BETWEEN_PULSES)
        .until(still::reached);
    on(still::end);
  }

  static void until(Callable<Boolean> holds) {
    await().atMost(PATIENCE).pollInterval(OFTEN).until(() -> on(holds));
  }

  static <T> T on(Callable<T> asked) {
    return WaitForAsyncUtils.waitForAsyncFx(10_000, asked);
  }

  /** Writes a picture as a small file. */
  static void write(WritableImage image, Path file) throws IOException {
    int width = (int) image.getWidth();
    int height = (int) image.getHeight();
    BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    PixelReader reader = image.getPixelReader();
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        picture.setRGB(x, y, reader.getArgb(x, y));
      }
    }
    Files.createDirectories(file.getParent());
    ImageIO.write(picture, "png", file.toFile());
  }
}
