package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Each system's own places. The XDG base directory specification; the others common practice. */
class FoldersTest {
  private static final Path HOME = Path.of("/home/ana");

  @Test
  void linuxKeepsSettingsAndDataApart() {
    assertThat(Folders.of("Linux", Map.of(), HOME))
        .isEqualTo(
            new Folders(HOME.resolve(".config/thinclick"), HOME.resolve(".local/share/thinclick")));
    assertThat(
            Folders.of("Linux", Map.of("XDG_CONFIG_HOME", "/c", "XDG_DATA_HOME", "relative"), HOME))
        .isEqualTo(new Folders(Path.of("/c/thinclick"), HOME.resolve(".local/share/thinclick")));
  }

  @Test
  void theOthersKeepThemTogether() {
    Path mac = HOME.resolve("Library/Application Support/thinclick");
    assertThat(Folders.of("Mac OS X", Map.of(), HOME)).isEqualTo(new Folders(mac, mac));
    Path roaming = Path.of("/roaming/thinclick");
    assertThat(Folders.of("Windows 11", Map.of("APPDATA", "/roaming"), HOME))
        .isEqualTo(new Folders(roaming, roaming));
  }
}
