package thinclick.client.window;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;

/** Where each system keeps what a program writes for itself. */
final class DataFolder {
  private static final String NAME = "thinclick";

  private DataFolder() {}

  /**
   * The folder; it need not be there yet.
   *
   * @param system the operating system's name
   * @param environment the variables of the process
   * @param home the user's folder
   */
  static Path of(String system, Map<String, String> environment, Path home) {
    String lower = system.toLowerCase(Locale.ROOT);
    if (lower.contains("win")) {
      String roaming = environment.get("APPDATA");
      return (roaming == null ? home.resolve("AppData/Roaming") : Path.of(roaming)).resolve(NAME);
    }
    if (lower.contains("mac")) {
      return home.resolve("Library/Application Support").resolve(NAME);
    }
    String xdg = environment.get("XDG_DATA_HOME");
    boolean given = xdg != null && !xdg.isBlank();
    return (given ? Path.of(xdg) : home.resolve(".local/share")).resolve(NAME);
  }
}
