package thinclick.client.window;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import javafx.application.Application;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;
import thinclick.client.log.Mishap;
import thinclick.client.log.OwnLog;
import thinclick.client.window.look.Faces;
import thinclick.client.window.session.Session;
import thinclick.client.window.settings.SettingsFile;
import thinclick.client.window.words.Words;
import thinclick.protocol.time.MonotonicClock;

/** The window as the toolkit starts it. {@link WindowStart} is the way in. */
public final class WindowApp extends Application {
  /** So long at most is waited for attacks to be on disk where something went wrong. */
  private static final Duration KEEPING = Duration.ofMillis(500);

  private @Nullable Desk desk;
  private @Nullable OwnLog log;

  @Override
  public void start(Stage stage) {
    Faces.load();
    WindowOptions options = WindowOptions.of(getParameters().getNamed());
    Folders folders = Folders.of(System.getProperty("os.name", ""), System.getenv(), home());
    Path logs = folders.data().resolve("log");
    log = OwnLog.into(logs);
    SettingsFile file = new SettingsFile(folders.settings());
    SettingsFile.Found found = file.read();
    Words words = Words.in(found.settings().speaks().locale(Locale.getDefault()));
    Session session =
        new Session(
            WindowThread.INSTANCE, MonotonicClock.SYSTEM, made(folders.data()), words.language());
    Desk made = new Desk(stage, session, words, file, found);
    desk = made;
    Thread.setDefaultUncaughtExceptionHandler(
        new Mishap(
            logs,
            () -> session.keepWhatWasPlayed(KEEPING),
            where -> WindowThread.INSTANCE.execute(() -> made.wentWrong(where))));
    StartWatch.watch(stage.getScene());
    stage.show();
    made.start();
    made.begin(options);
  }

  private static Path made(Path folder) {
    try {
      return Files.createDirectories(folder);
    } catch (IOException unwritable) {
      throw new UncheckedIOException("no folder for the host's data: " + folder, unwritable);
    }
  }

  private static Path home() {
    return Path.of(System.getProperty("user.home", "."));
  }

  @Override
  public void stop() {
    if (desk != null) {
      desk.close();
    }
    if (log != null) {
      log.close();
    }
  }
}
