package thinclick.client.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.Attack;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;

/** The host's process is killed in a take, as by a pulled plug, and started again. */
class HostKilledTest {
  private static final Pattern LISTENS = Pattern.compile("listens at ws://[^:]+:(\\d+)");

  @TempDir Path folder;
  private final List<Process> started = new ArrayList<>();

  /** A host in a process of its own; answers its port. */
  private int serve() throws IOException {
    String classes =
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xshare:auto",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                classes,
                "thinclick.server.command.ServerMain",
                "serve",
                "--port",
                "0",
                "--db",
                folder.resolve("rooms.db").toString())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    started.add(process);
    BufferedReader out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    Matcher said = LISTENS.matcher(String.valueOf(out.readLine()));
    assertThat(said.find()).as("the host says where it listens").isTrue();
    return Integer.parseInt(said.group(1));
  }

  private void kill() throws InterruptedException {
    Process last = started.get(started.size() - 1);
    last.destroyForcibly();
    last.waitFor();
  }

  @AfterEach
  void killAll() {
    started.forEach(Process::destroyForcibly);
  }

  /** What a copy of the database holds of a player, in the order of room time. */
  private List<Long> inACopy(String name, String takeId) throws IOException {
    Path copy = Files.createDirectory(folder.resolve(name));
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "rooms.db*")) {
      for (Path file : files) {
        if (!file.toString().endsWith("lock")) {
          Files.copy(file, copy.resolve(file.getFileName()));
        }
      }
    }
    try (RehearsalHost look = RehearsalHost.start(HostOptions.local(copy.resolve("rooms.db")))) {
      return look.take(takeId).orElseThrow().attacks().stream()
          .map(Attack::micros)
          .sorted()
          .toList();
    }
  }

  @Test
  void everyAttackIsThereOnceThoughTheHostWasKilledTwice() throws Exception {
    try (LinkLoop loop = LinkLoop.start();
        CuttingProxy proxy = new CuttingProxy(serve())) {
      RoomAddress address = RoomAddress.local(proxy.port());
      Seat leader = Seat.opens(LinkOptions.on(loop), address, "Lea").online();
      Seat mina =
          Seat.joins(LinkOptions.on(loop), address, leader.link.word(), "Mina").online().steady();
      String takeId = leader.starts("Even eighths");
      Seat.until(() -> mina.announced);
      long from = loop.nanos();
      mina.plays(60, from);
      await().until(() -> mina.storedThrough > 0);
      mina.plays(60, from + 10_000_000L);
      kill();
      long acknowledged = mina.storedThrough;
      mina.sees(LinkState.AWAY);
      assertThat(inACopy("killed", takeId))
          .as("what was acknowledged is on the disk")
          .containsAll(mina.played().subList(0, (int) acknowledged));

      proxy.target(serve());
      mina.online();
      await().atMost(Duration.ofSeconds(20)).until(() -> mina.waiting == 0);
      kill();
      assertThat(inACopy("killed-again", takeId)).isEqualTo(mina.played());
      assertThat(mina.states).doesNotContain(LinkState.CLOSED);
    }
  }
}
