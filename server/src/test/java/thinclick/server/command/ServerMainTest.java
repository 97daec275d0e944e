package thinclick.server.command;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
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
  }
}
