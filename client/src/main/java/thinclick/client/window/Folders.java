package thinclick.client.window;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Where each system keeps what a program writes for itself.
 *
 * @param settings what is remembered of this computer's user
 * @param data a host's database and attacks that are not stored yet
 */
record Folders(Path settings, Path data) {
  private static final String NAME = "thinclick";

  /**
   * The folders; they need not be there yet.
   *
   * @param system the operating system's name
   * @param environment the variables of the process
   * @param home the user's folder
   */
  static Folders of(String system, Map<String, String> environment, Path home) {
    String lower = system.toLowerCase(Locale.ROOT);
    if (lower.contains("win")) {
      String roaming = environment.get("APPDATA");
      return both(roaming == null ? home.resolve("AppData/Roaming") : Path.of(roaming));
    }
    if (lower.contains("mac")) {
      return both(home.resolve("Library/Application Support"));
    }
    return new Folders(
        given(environment.get("XDG_CONFIG_HOME"), home.resolve(".config")).resolve(NAME),
        given(environment.get("XDG_DATA_HOME"), home.resolve(".local/share")).resolve(NAME));
  }

  private static Folders both(Path parent) {
    return new Folders(parent.resolve(NAME), parent.resolve(NAME));
  }

  /** The XDG base directory specification: unset, empty or relative counts as not given. */
  private static Path given(@Nullable String variable, Path usual) {
    if (variable == null || variable.isBlank() || !Path.of(variable).isAbsolute()) {
      return usual;
    }
    return Path.of(variable);
  }
}
