package thinclick.client.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import thinclick.client.window.WindowOptions;
import thinclick.client.window.WindowOptions.Way;
import thinclick.client.window.look.Look.Shade;
import thinclick.protocol.json.BadInput;

/** How the window is asked to open, and what is refused in one line before it does. */
class WindowArgumentsTest {
  @Test
  void withoutArgumentsTheDoorIsShown() {
    assertThat(read()).isEqualTo(new WindowOptions(Way.DOOR, "", "", "", false, null));
  }

  @Test
  void aRoomIsJoinedOpenedThereOrOpenedHere() {
    assertThat(read("--server", "10.0.0.2:7420", "--room", "tededani", "--name", "Ana"))
        .isEqualTo(new WindowOptions(Way.JOIN, "10.0.0.2:7420", "tededani", "Ana", false, null));
    assertThat(read("--server", "10.0.0.2:7420", "--name", "Ana").way()).isEqualTo(Way.THERE);
    assertThat(read("--here", "--name", "Ana", "--dark"))
        .isEqualTo(new WindowOptions(Way.HERE, "", "", "Ana", false, Shade.DARK));
  }

  @Test
  void aRoomHereLetsOthersInOnlyWhereThatIsSaid() {
    assertThat(read("--here", "--name", "Ana").forOthers()).isFalse();
    assertThat(read("--here", "--network", "--name", "Ana").forOthers()).isTrue();
  }

  @ParameterizedTest
  @CsvSource({
    "--here, --name",
    "--here --server 10.0.0.2:7420 --name Ana, --here",
    "--room tededani --name Ana, --server",
    "--network --name Ana, --network",
    "--server nonsense --room tededani --name Ana, server",
  })
  void whatContradictsItselfIsRefused(String arguments, String where) {
    assertThatThrownBy(() -> read(arguments.split(" ")))
        .isInstanceOf(BadInput.class)
        .hasMessageStartingWith(where);
  }

  private static WindowOptions read(String... arguments) {
    Holder holder = new Holder();
    new CommandLine(holder).parseArgs(arguments);
    return holder.window.options();
  }

  @Command
  private static final class Holder {
    @Mixin private WindowArguments window = new WindowArguments();
  }
}
