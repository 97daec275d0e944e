package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.json.BadInput;
import thinclick.server.net.Port;

/** A port that is bound before its host starts. */
class EarlyPortTest {
  @TempDir Path folder;

  private static int free() throws IOException {
    try (ServerSocket any = new ServerSocket(0)) {
      return any.getLocalPort();
    }
  }

  @Test
  void whoAskedBeforeTheHostStartedIsAnswered() throws IOException {
    int number = free();
    Port port = Port.bind(HostOptions.HERE, number);
    try (Socket early = new Socket(InetAddress.getLoopbackAddress(), number)) {
      early
          .getOutputStream()
          .write("GET /health HTTP/1.1\r\nHost: here\r\n\r\n".getBytes(StandardCharsets.US_ASCII));

      try (RehearsalHost host =
          RehearsalHost.start(HostOptions.local(folder.resolve("room.db")), port)) {
        assertThat(host.port()).isEqualTo(number);
        assertThat(
                new BufferedReader(
                        new InputStreamReader(early.getInputStream(), StandardCharsets.US_ASCII))
                    .readLine())
            .isEqualTo("HTTP/1.1 200 OK");
      }
    }
  }

  @Test
  void hostThatCannotStartLetsItGo() throws IOException {
    int number = free();
    Port port = Port.bind(HostOptions.HERE, number);
    Path nowhere = folder.resolve("none").resolve("room.db");

    assertThatThrownBy(() -> RehearsalHost.start(HostOptions.local(nowhere), port))
        .isInstanceOf(BadInput.class)
        .hasMessageStartingWith("--db: expected");

    Port.bind(HostOptions.HERE, number).close();
  }

  /** What had begun before it ends again: nobody is left who listens, reviews or does chores. */
  @Test
  void hostThatFailsOnceItListensEndsAllItHasBegun() throws IOException {
    Set<Thread> before = threads();
    Path backups = Files.createDirectory(folder.resolve("backups"));
    HostOptions everyNoHours =
        HostOptions.local(folder.resolve("room.db")).backedUp(backups, 0); // no chore is so often

    assertThatThrownBy(() -> RehearsalHost.start(everyNoHours))
        .isInstanceOf(IllegalArgumentException.class);

    await()
        .untilAsserted(
            () ->
                assertThat(threads())
                    .filteredOn(thread -> !before.contains(thread))
                    .extracting(Thread::getName)
                    .noneMatch(name -> name.matches("thinclick-(review|chores).*|.*EventLoop.*")));
    RehearsalHost.start(HostOptions.local(folder.resolve("room.db"))).close();
  }

  private static Set<Thread> threads() {
    return Thread.getAllStackTraces().keySet();
  }
}
