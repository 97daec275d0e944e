package thinclick.server.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;
import picocli.CommandLine.Command;

class ServerMainTest {
  @Test
  void everyCommandIsFoundByItsOwnName() {
    ServerMain.COMMANDS.forEach(
        (name, type) -> assertThat(type.getAnnotation(Command.class).name()).isEqualTo(name));
  }

  @Test
  void helpShowsAllOfThem() {
    String help = ServerMain.commandLine().getUsageMessage();

    assertThat(help).contains(ServerMain.COMMANDS.keySet());
    assertThat(Run.of()).as("and so does no command at all").isEqualTo(new Run(0, help, ""));
  }

  @Test
  void everyCommandAndThoseBelowItExplainThemselves() {
    explained(ServerMain.commandLine());
  }

  private static void explained(CommandLine command) {
    command
        .getSubcommands()
        .forEach(
            (name, below) -> {
              List<Object> words = new ArrayList<>();
              words.addAll(List.of(below.getCommandSpec().qualifiedName(" ").split(" ")));
              words.remove(0);
              words.add("--help");
              Run help = Run.of(words.toArray());
              assertThat(help.err()).as("%s", words).isEmpty();
              assertThat(help.code()).isZero();
              assertThat(help.out()).startsWith("Usage: " + below.getCommandSpec().qualifiedName());
              assertThat(below.getCommandSpec().usageMessage().description()[0])
                  .as("what the list of commands shows of %s is a sentence", name)
                  .endsWith(".");
              explained(below);
            });
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "histori            | expected a command, found \"histori\"; did you mean \"history\"",
        "serve --port x     | --port: expected a whole number, found \"x\"; see thinclick-server serve",
        "class seat 7b Ana x| CHAIR: expected a whole number, found \"x\"; see thinclick-server class",
        "serve --prot 1     | --prot: no such option; did you mean \"--port\"",
      })
  void whatCannotBeReadIsOneLine(String given, String says) {
    Run run = Run.of((Object[]) given.split(" "));
    assertThat(run.code()).isEqualTo(ServerMain.BAD_INPUT);
    assertThat(run.err()).startsWith(says).hasLineCount(1);
    assertThat(run.out()).isEmpty();
  }
}
