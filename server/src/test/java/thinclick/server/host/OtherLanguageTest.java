package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.Attack;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.music.Stage;
import thinclick.server.store.Store;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A client in another language, written from the description of the wire, plays a whole take. */
class OtherLanguageTest {
  private static final Path PLAYER = Path.of("src/test/python/player.py");

  @TempDir Path folder;

  @Test
  void joinsSyncsPlaysIsCutResendsAndGetsItsReview() throws Exception {
    assumeTrue(pythonIsThere(), "no python3 here: the client in another language is not run");
    assertThat(Files.readAllLines(PLAYER)).hasSizeLessThanOrEqualTo(200);
    Path database = folder.resolve("room.db");
    TakeNews.Announced announced;
    JsonNode printed;
    try (RehearsalHost host = RehearsalHost.start(HostOptions.local(database));
        WireClient leader = WireClient.connect(host.port())) {
      leader.send(new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
      ServerMessage.Welcome opened = leader.expect(ServerMessage.Welcome.class);
      Process player = player(host.port(), opened.room());
      while (leader.expect(ServerMessage.Roster.class).players().stream()
          .noneMatch(person -> person.name().equals("Zoë") && person.uncertaintyMicros() != null)) {
        assertThat(player.isAlive()).isTrue();
      }
      leader.send(new LeaderCommand.Material(1, opened.revision(), TestDrill.BEATS_AND_ANDS, null));
      leader.send(
          new LeaderCommand.Plan(
              4,
              leader.expect(ServerMessage.Done.class).revision(),
              List.of(Stage.ofBeats(2, 1, 1, 3)),
              180.0));
      leader.send(
          new LeaderCommand.Deal(
              2, leader.expect(ServerMessage.Done.class).revision(), 7, List.of()));
      long dealt = leader.expect(ServerMessage.Done.class).revision();
      String dealId = leader.expect(ServerMessage.Dealt.class).dealId();
      leader.send(new LeaderCommand.Start(3, dealt, dealId, 2_000, 1));
      announced = leader.expect(TakeNews.Announced.class);
      String json = new String(player.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertThat(player.waitFor(30, TimeUnit.SECONDS)).isTrue();
      assertThat(player.exitValue()).as(() -> "see " + log()).isZero();
      printed = JsonMapper.shared().readTree(json);
    }
    List<Long> sent = printed.get("sent").valueStream().map(JsonNode::asLong).sorted().toList();
    assertThat(sent).hasSize(8);
    assertThat(printed.at("/review/players/0/player").asString()).isEqualTo("Zoë");
    assertThat(printed.at("/review/players/0/written").asInt()).isEqualTo(8);
    try (Store store = Store.open(database, InstantSource.system(), available -> {})) {
      assertThat(store.take(announced.takeId()).join().orElseThrow().attacks())
          .extracting(Attack::micros)
          .containsExactlyElementsOf(sent);
    }
  }

  private Process player(int port, String word) throws IOException {
    return new ProcessBuilder("python3", PLAYER.toString(), String.valueOf(port), word, "Zoë")
        .redirectError(log())
        .start();
  }

  private File log() {
    return folder.resolve("player.log").toFile();
  }

  private static boolean pythonIsThere() throws InterruptedException {
    try {
      return new ProcessBuilder("python3", "--version").start().waitFor() == 0;
    } catch (IOException none) {
      return false;
    }
  }
}
