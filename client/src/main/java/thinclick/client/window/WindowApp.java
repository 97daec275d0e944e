package thinclick.client.window;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import javafx.application.Application;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Faces;
import thinclick.client.window.session.Session;
import thinclick.client.window.settings.SettingsFile;
import thinclick.client.window.words.Words;
import thinclick.protocol.time.MonotonicClock;

/** The window as the toolkit starts it. {@link WindowStart} is the way in. */
public final class WindowApp extends Application {
  private @Nullable Desk desk;

  @Override
  public void start(Stage stage) {
    Faces.load();
    WindowOptions options = WindowOptions.of(getParameters().getNamed());
    Folders folders = Folders.of(System.getProperty("os.name", ""), System.getenv(), home());
    SettingsFile file = new SettingsFile(folders.settings());
    SettingsFile.Found found = file.read();
    Words words = Words.in(found.settings().speaks().locale(Locale.getDefault()));
    Session session =
        new Session(
            WindowThread.INSTANCE, MonotonicClock.SYSTEM, made(folders.data()), words.language());
    Desk made = new Desk(stage, session, words, file, found);
    desk = made;
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
  }
}
