package thinclick.server.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine.Model.OptionSpec;

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
        "host = '127.0.0.1';port =          | 2:7: expected a value after =, found the end of the file (in the parser's words: Premature end of file)",
        "port = 1;port = 2                  | 2:9: expected each key once, found one again (",
        "announce = yes                     | 1:12: expected a text in quotes, a whole number, true or false, found \"yes\" (",
        ";host = 127.0.0.1                  | 2:13: expected nothing after the value on its line, found \".0.1\" (",
        "port 7420                          | 1:5: expected a line such as port = 7420, found \"7420\" (",
        "port: 7420                         | 1:5: expected a line such as port = 7420, found \": 7420\" (",
        "port = 07420                       | 1:8: expected a number without a 0 before it, found \"07420\" (",
        "db = 'room.db;port = 1             | 1:14: expected a closing quote, found the end of the line (",
        "db = \"c:\\halls\"                  | 1:9: expected a backslash written twice, found",
        "db = \"c:\\rooms\"                  | 1: db: expected a text without control characters; a",
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
    for (OptionSpec option : options()) {
      String key = option.longestName().substring(2);
      if (!key.matches("config|print-config")) {
        assertThat(printed.out()).containsPattern("(?m)^# " + key + " = ");
      }
    }
    assertThat(printed.out()).doesNotContain("${").doesNotContain("config =");
    assertThat(Run.of("serve", "--config", file(uncommented)).err())
        .contains("port: expected 0 to 65535, found 99999");
  }

  private static List<OptionSpec> options() {
    return ServerMain.commandLine()
        .getSubcommands()
        .get("serve")
        .getCommandSpec()
        .options()
        .stream()
        .filter(option -> !option.usageHelp() && !option.versionHelp())
        .toList();
  }

  @Test
  void operatorsPageListsEveryOptionWithItsMeaningAndItsDefault() throws IOException {
    List<String> page = Files.readAllLines(Path.of("README.md"));
    List<String> listed = page.stream().filter(line -> line.startsWith("| `--")).toList();

    assertThat(String.join("\n", listed))
        .isEqualTo(String.join("\n", options().stream().map(ServeConfigTest::row).toList()));
  }

  /** As the page lists it: what its help says, the default in a column of its own. */
  private static String row(OptionSpec option) {
    String label = option.arity().max() > 0 ? " " + option.paramLabel() : "";
    String help = String.join(" ", option.description());
    Matcher said = Pattern.compile(" \\(default: (.*)\\)").matcher(help);
    String usual = said.find() ? said.group(1) : "none";
    return "| `%s%s` | %s | %s |"
        .formatted(
            option.longestName(),
            label,
            usual.replace("${DEFAULT-VALUE}", "`" + option.defaultValue() + "`"),
            help.replaceFirst(" \\(default: .*\\)", ""));
  }
}
