package thinclick.server.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ServeConfigTest {
  @TempDir Path folder;

  private Path file(String text) throws IOException {
    return Files.writeString(folder.resolve("hall.toml"), text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "# the hall;prot = 7420             | 2: prot: no such key; did you mean \"port\"",
        "port = 99999                       | 1: port: expected 0 to 65535, found 99999",
        ";;port = 'seven'                   | 3: port: expected a whole number, found \"seven\"",
        "port = 7.5                         | 1: port: expected a text, a whole number, true or",
        "announce = 'perhaps'               | 1: announce: expected true or false",
        "invite = 1                         | 1: invite: expected true or false, found 1",
        "port = 0;encryption = 'some'       | 2: encryption: expected others, all or none",
        "host = '127.0.0.1';port =          | 2: expected TOML",
        "port = 1;port = 2                  | expected TOML",
        "[network];port = 1                 | 1: network: no such key; did you mean",
        "config = 'other.toml'              | 1: config: no such key",
        "host-key = 'short'                 | 1: host-key: expected 12 to 128 characters, found 5",
        "certificate = 'c.pem'              | expected it together with its companion"
      })
  void wrongFileIsOneLineThatSaysFileLineAndKey(String text, String says) throws IOException {
    Path file = file(text.replace(';', '\n'));
    Run run = Run.of("serve", "--config", file, "--db", folder.resolve("room.db"));

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).hasLineCount(1).contains(says.strip());
    if (!says.contains("companion")) {
      assertThat(run.err()).startsWith(file.toString() + ":");
    }
  }

  @Test
  void missingFileIsOneLine() {
    Run run = Run.of("serve", "--config", folder.resolve("none.toml"));

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).startsWith("--config: expected a file, found none at").hasLineCount(1);
  }

  @Test
  void commandLineCountsMoreThanTheFile() throws IOException {
    Path file = file("port = 99999\nencryption = 'all'\n");
    Run run = Run.of("serve", "--config", file, "--port", "88888");

    assertThat(run.err()).isEqualTo("--port: expected 0 to 65535, found 88888\n");
  }

  @Test
  void printedFileNamesEveryOptionAndIsReadBack() throws IOException {
    Run printed = Run.of("serve", "--print-config");
    String uncommented =
        printed
            .out()
            .replaceAll("(?m)^# (?=[a-z-]+ = )", "")
            .replaceAll("(?m)^port = .*", "port = 99999");

    assertThat(printed.code()).isZero();
    for (String key :
        List.of(
            "host",
            "port",
            "db",
            "host-key",
            "backup-to",
            "backup-hours",
            "encryption",
            "certificate",
            "certificate-key",
            "announce",
            "called",
            "metrics-to-all",
            "invite",
            "invite-to")) {
      assertThat(printed.out()).containsPattern("(?m)^# " + key + " = ");
    }
    assertThat(printed.out()).doesNotContain("${").doesNotContain("config =");
    assertThat(Run.of("serve", "--config", file(uncommented)).err())
        .contains("port: expected 0 to 65535, found 99999");
  }
}
