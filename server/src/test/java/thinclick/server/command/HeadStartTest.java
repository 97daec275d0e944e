package thinclick.server.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.Socket;
import org.junit.jupiter.api.Test;
import thinclick.server.net.Port;

class HeadStartTest {
  private static int free() throws IOException {
    try (ServerSocket any = new ServerSocket(0)) {
      return any.getLocalPort();
    }
  }

  private static Port of(String... arguments) {
    return HeadStart.guess(arguments);
  }

  @Test
  void whoComesBeforeTheHostIsReadyIsNotRefused() throws IOException {
    int number = free();

    try (Port port = of("serve", "--db", "room.db", "--port", "" + number, "--invite");
        Socket early = new Socket("127.0.0.1", number)) {
      assertThat(early.isConnected()).isTrue();
      assertThat(port.isAt("127.0.0.1", number)).isTrue();
      assertThat(port.isAt("0.0.0.0", number)).isFalse();
    }
  }

  @Test
  void joinedWordsAreReadAsWell() throws IOException {
    int number = free();

    try (Port port = of("serve", "--port=" + number, "--host=localhost")) {
      assertThat(port.isAt("localhost", number)).isTrue();
    }
  }

  @Test
  void nothingIsBoundWhereThePortIsNamedElsewhereOrNotWanted() {
    assertThat(of()).isNull();
    assertThat(of("compose", "--port", "0")).isNull();
    assertThat(of("serve", "--port", "0", "--config", "host.toml")).isNull();
    assertThat(of("serve", "--port", "0", "--config=host.toml")).isNull();
    assertThat(of("serve", "--help")).isNull();
    assertThat(of("serve", "@words")).isNull();
  }

  @Test
  void whatCannotBeHadIsLeftToTheProperReading() throws IOException {
    try (ServerSocket taken = new ServerSocket(0)) {
      assertThat(of("serve", "--port", "" + taken.getLocalPort())).isNull();
    }
    assertThat(of("serve", "--port", "many")).isNull();
    assertThat(of("serve", "--port", "65536")).isNull();
    assertThat(of("serve", "--port", "0", "--host", "192.0.2.1")).isNull();
  }
}
