package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ServerMessage;
import thinclick.server.command.ServerMain;
import thinclick.server.store.Store;

/** Names that an operator changes or erases while somebody of that name is in an open room. */
class NamesInOpenRoomsTest {
  private static final byte[] TAKE =
      """
      {"format": "thinclick.take", "version": 1, "title": "Ands", "meter": "4/4", "tempo": 120.0,
       "stepsPerBeat": 2, "startMicros": 3000000, "toleranceMillis": 50,
       "stages": [{"bars": 2, "everyBars": 1, "beats": [1]}],
       "parts": [{"player": "Quirin", "entryStep": 0, "attackSteps": [1, 3]}],
       "attacks": [{"player": "Quirin", "micros": 3260000}]}
      """
          .getBytes(StandardCharsets.UTF_8);

  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  private Path database;

  @BeforeEach
  void aTakeOfQuirin() {
    database = folder.resolve("room.db");
    try (Store store = Store.open(database, InstantSource.system(), available -> {})) {
      store.importTake("t1", FileCodec.readTake(TAKE)).join();
    }
  }

  private int run(String... words) {
    CommandLine line = ServerMain.commandLine();
    line.setOut(new PrintWriter(out, true));
    line.setErr(new PrintWriter(err, true));
    return line.execute(words);
  }

  @Test
  void renamingSaysThatAnOpenRoomKeepsTheOldNameAndErasingWaitsForTheHostToStop() {
    try (RehearsalHost host = RehearsalHost.start(HostOptions.local(database));
        WireClient leader = WireClient.connect(host.port());
        WireClient quirin = WireClient.connect(host.port())) {
      leader.send(new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
      String word = leader.expect(ServerMessage.Welcome.class).room();
      quirin.send(new ClientMessage.Join(1, 1, word, "Quirin", Role.PLAYER, null, null, false));
      quirin.expect(ServerMessage.Welcome.class);
      await()
          .atMost(Duration.ofSeconds(20))
          .until(
              () -> {
                run("take", "rename", "--db", database.toString(), "Quirin", "Quentin");
                run("take", "rename", "--db", database.toString(), "Quentin", "Quirin");
                return out.toString().contains("room"); // the room is on the disk by then
              });

      assertThat(out.toString())
          .contains("Quirin is Quentin now, in one take")
          .contains(
              "An open room still says Quirin: Quirin leaves there and comes in anew as Quentin");
      assertThat(run("erase", "Quirin", "--db", database.toString())).isEqualTo(2);
      assertThat(err.toString()).contains("expected a database that no other host has");
      assertThat(quirin.open()).isTrue();
    }
    assertThat(run("erase", "Quirin", "--db", database.toString())).isZero();
    assertThat(out.toString()).contains("1 open room closed");
  }

  @Test
  void renamingInTheHostsOwnProgramReachesTheOpenRoomAndInAnotherSaysThatItDoesNot() {
    try (RehearsalHost host = RehearsalHost.start(HostOptions.local(database));
        WireClient leader = WireClient.connect(host.port());
        WireClient quirin = WireClient.connect(host.port())) {
      leader.send(new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
      String word = leader.expect(ServerMessage.Welcome.class).room();
      quirin.send(new ClientMessage.Join(1, 1, word, "Quirin", Role.PLAYER, null, null, false));
      quirin.expect(ServerMessage.Welcome.class);
      host.classes().adopt("Year 7", "t1");
      host.classes().hold("Year 7", word);
      await().until(() -> host.classes().openRoomsSaying("Year 7", "Quirin") == 1);

      run("class", "rename", "Year 7", "Quirin", "Quentin", "--db", database.toString());
      assertThat(out.toString())
          .contains("Quirin is Quentin now, in one place", "leaves there and comes");
      run("class", "rename", "Year 7", "Quentin", "Quirin", "--db", database.toString());
      assertThat(host.classes().rename("Year 7", "Quirin", "Quentin", null)).isEqualTo(1);
      await()
          .atMost(Duration.ofSeconds(20))
          .until(
              () ->
                  leader.all(ServerMessage.Roster.class).stream()
                      .flatMap(roster -> roster.players().stream())
                      .anyMatch(person -> person.name().equals("Quentin")));
      await().until(() -> host.classes().openRoomsSaying("Year 7", "Quirin") == 0);
    }
  }
}
