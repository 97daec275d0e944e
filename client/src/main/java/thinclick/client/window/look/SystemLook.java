package thinclick.client.window.look;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the system's user has set for all programs. The toolkit does not tell, so each system is
 * asked by its own program; what cannot be asked counts as usual.
 *
 * @param dark true where dark windows are wanted
 * @param strong true where strong contrast is wanted
 */
public record SystemLook(boolean dark, boolean strong) {
  /** Where nothing is known. */
  public static final SystemLook USUAL = new SystemLook(false, false);

  private static final long PATIENCE_MILLIS = 1_500;
  private static final Pattern LAST_NUMBER = Pattern.compile("\\s(\\d{1,9})$");

  /** Asks this system; takes up to some seconds, so never on the window's thread. */
  public static SystemLook ask() {
    return ask(System.getProperty("os.name", ""), SystemLook::answer);
  }

  /**
   * What a system's answers come to.
   *
   * @param system the operating system's name
   * @param asked runs a command and answers what it wrote; empty where it failed
   */
  static SystemLook ask(String system, Function<List<String>, String> asked) {
    String lower = system.toLowerCase(Locale.ROOT);
    if (lower.contains("win")) {
      String themes = "HKCU\\Software\\Microsoft\\Windows\\CurrentVersion\\Themes\\Personalize";
      String access = "HKCU\\Control Panel\\Accessibility\\HighContrast";
      String light = asked.apply(List.of("reg", "query", themes, "/v", "AppsUseLightTheme"));
      String flags = asked.apply(List.of("reg", "query", access, "/v", "Flags"));
      return new SystemLook(light.strip().endsWith("0x0"), (lastNumber(flags) & 1) == 1);
    }
    if (lower.contains("mac")) {
      String style = asked.apply(List.of("defaults", "read", "-g", "AppleInterfaceStyle"));
      String more =
          asked.apply(List.of("defaults", "read", "com.apple.universalaccess", "increaseContrast"));
      return new SystemLook(style.strip().equals("Dark"), more.strip().equals("1"));
    }
    String scheme =
        asked.apply(List.of("gsettings", "get", "org.gnome.desktop.interface", "color-scheme"));
    String high =
        asked.apply(
            List.of("gsettings", "get", "org.gnome.desktop.a11y.interface", "high-contrast"));
    return new SystemLook(scheme.contains("prefer-dark"), high.strip().equals("true"));
  }

  /** The decimal number at the end of what was written; 0 where there is none. */
  private static long lastNumber(String written) {
    Matcher last = LAST_NUMBER.matcher(written.strip());
    return last.find() ? Long.parseLong(last.group(1)) : 0;
  }

  private static String answer(List<String> command) {
    try {
      Process process =
          new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
      process.getOutputStream().close();
      if (!process.waitFor(PATIENCE_MILLIS, TimeUnit.MILLISECONDS)) {
        process.destroyForcibly();
        return "";
      }
      byte[] said = process.getInputStream().readAllBytes();
      return process.exitValue() == 0 ? new String(said, StandardCharsets.UTF_8) : "";
    } catch (IOException missing) {
      return "";
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      return "";
    }
  }
}
