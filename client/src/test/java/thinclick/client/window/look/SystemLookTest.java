package thinclick.client.window.look;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import thinclick.client.window.look.Look.Contrast;
import thinclick.client.window.look.Look.Shade;

/**
 * What a system answers and what it comes to. The answers are from memory of each system's own
 * program; asking them was not tried on Windows and macOS.
 */
class SystemLookTest {
  @Test
  void windowsAnswersByTheRegistry() {
    assertThat(SystemLook.ask("Windows 11", registry("0x0", "127")))
        .isEqualTo(new SystemLook(true, true));
    assertThat(SystemLook.ask("Windows 11", registry("0x1", "126")))
        .isEqualTo(new SystemLook(false, false));
  }

  @Test
  void macAnswersByItsDefaults() {
    assertThat(SystemLook.ask("Mac OS X", say("AppleInterfaceStyle", "Dark\n")))
        .isEqualTo(new SystemLook(true, false));
    assertThat(SystemLook.ask("Mac OS X", say("increaseContrast", "1\n")))
        .isEqualTo(new SystemLook(false, true));
  }

  @Test
  void linuxAnswersByTheDesktopsSettings() {
    assertThat(SystemLook.ask("Linux", say("color-scheme", "'prefer-dark'\n")))
        .isEqualTo(new SystemLook(true, false));
    assertThat(SystemLook.ask("Linux", say("high-contrast", "true\n")))
        .isEqualTo(new SystemLook(false, true));
  }

  @Test
  void aSystemThatDoesNotAnswerIsUsual() {
    for (String system : List.of("Windows 10", "Mac OS X", "Linux", "")) {
      assertThat(SystemLook.ask(system, asked -> "")).isEqualTo(SystemLook.USUAL);
    }
  }

  @Test
  void whatIsSetGoesBeforeWhatTheSystemSays() {
    SystemLook dark = new SystemLook(true, true);
    assertThat(Look.FIRST.palette(dark)).isEqualTo(Palette.STRONG_DARK);
    assertThat(Look.FIRST.with(Shade.LIGHT).palette(dark)).isEqualTo(Palette.STRONG_LIGHT);
    assertThat(Look.FIRST.with(Contrast.USUAL).palette(dark)).isEqualTo(Palette.DARK);
    assertThat(Look.FIRST.palette(SystemLook.USUAL)).isEqualTo(Palette.LIGHT);
  }

  private static Function<List<String>, String> registry(String light, String flags) {
    return command ->
        command.contains("AppsUseLightTheme")
            ? "    AppsUseLightTheme    REG_DWORD    " + light + "\r\n\r\n"
            : "    Flags    REG_SZ    " + flags + "\r\n\r\n";
  }

  private static Function<List<String>, String> say(String word, String answer) {
    return command -> command.contains(word) ? answer : "";
  }
}
