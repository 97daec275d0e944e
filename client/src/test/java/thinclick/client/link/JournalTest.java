package thinclick.client.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.Attack;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.TakeMessage.AttackLength;
import thinclick.protocol.message.TakeMessage.Attacks;
import thinclick.protocol.message.TakeMessage.Lengths;
import thinclick.protocol.message.TakeMessage.PlayedThrough;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;

/** What a player's program keeps in a file until the server has it. */
class JournalTest {
  private static final JournalFile.Bearer BEARER =
      new JournalFile.Bearer(
          "thinclick.journal", 1, "ws://127.0.0.1:7420", "lanima", "Mina", Role.PLAYER, "00ff");

  @TempDir Path folder;

  private static Attacks attack(long seq) {
    return new Attacks("r-t1", 1, seq, List.of(WireAttack.tap(1_000 * seq)));
  }

  private static Path theOneIn(Path folder) throws IOException {
    List<Path> left = JournalFile.leftIn(folder);
    assertThat(left).hasSize(1);
    return left.get(0);
  }

  @Test
  void idFromAHostLeadsNowhereElseAndCutsNoOtherHostsJournal() throws IOException {
    Path journals = Files.createDirectory(folder.resolve("journals"));
    try (JournalFile journal = JournalFile.begin(journals, "../CON", BEARER)) {
      journal.keep(attack(1));
    }
    JournalFile.Bearer impostor =
        new JournalFile.Bearer(
            "thinclick.journal", 1, "ws://192.0.2.7:7420", "lanima", "Mina", Role.PLAYER, "ff");
    try (JournalFile journal = JournalFile.begin(journals, "../CON", impostor)) {
      journal.keep(attack(2));
    }

    assertThat(JournalFile.leftIn(journals))
        .hasSize(2)
        .allMatch(file -> file.getFileName().toString().startsWith("thinclick-con-"));
    assertThat(folder.toFile().list()).containsExactly("journals");
  }

  @Test
  void whatIsKeptIsFoundAgain() throws IOException {
    try (JournalFile journal = JournalFile.begin(folder, "r-p1", BEARER)) {
      journal.keep(attack(1));
      journal.keep(attack(2));
    }
    try (JournalFile again = JournalFile.resume(theOneIn(folder))) {
      assertThat(again.bearer()).isEqualTo(BEARER);
      assertThat(again.found()).containsExactly(attack(1), attack(2));
    }
  }

  @Test
  void journalOfStoredAttacksIsRemoved() throws IOException {
    JournalFile journal = JournalFile.begin(folder, "r-p1", BEARER);
    journal.keep(attack(1));
    journal.allStored();
    assertThat(JournalFile.leftIn(folder)).isEmpty();
    journal.close();
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void lengthsAreKeptBesideTheirAttacksAndAlone() throws IOException {
    try (JournalFile journal = JournalFile.begin(folder, "r-p1", BEARER)) {
      journal.keep(new Lengths("r-t1", 1, List.of(new AttackLength(6, 90))));
      journal.keep(attack(7));
      journal.keep(new Lengths("r-t1", 1, List.of(new AttackLength(7, 110))));
      journal.keep(new Lengths("r-t2", 1, List.of(new AttackLength(3, 80))));
    }
    Outboxes outboxes = new Outboxes();
    try (JournalFile again = JournalFile.resume(theOneIn(folder))) {
      outboxes.restore(again.found());
    }
    assertThat(outboxes.waiting()).as("attack 7, lengths 6 and 3 of another").isEqualTo(3);
    List<ClientMessage> sent = new ArrayList<>();
    outboxes.pump(sent::add);
    assertThat(sent)
        .containsExactly(
            attack(7),
            new Lengths("r-t1", 1, List.of(new AttackLength(6, 90))),
            new Lengths("r-t2", 1, List.of(new AttackLength(3, 80))));
    sent.clear();
    outboxes.stored("r-t1", 7);
    outboxes.finish("r-t1");
    outboxes.pump(sent::add);
    assertThat(sent).containsExactly(new Lengths("r-t1", 1, List.of(new AttackLength(7, 110))));
    sent.clear();
    outboxes.lengthsStored("r-t1", List.of(6L, 7L));
    outboxes.lengthsStored("r-t2", List.of(3L));
    outboxes.pump(sent::add);
    assertThat(sent).containsExactly(new PlayedThrough("r-t1", 7));
    assertThat(outboxes.waiting()).isZero();
  }

  @Test
  void lineThatWasTornOffIsLeftOut() throws IOException {
    try (JournalFile journal = JournalFile.begin(folder, "r-p1", BEARER)) {
      journal.keep(attack(1));
    }
    Path file = theOneIn(folder);
    Files.writeString(file, "{\"type\":\"attacks\",\"takeI", StandardOpenOption.APPEND);
    try (JournalFile again = JournalFile.resume(file)) {
      assertThat(again.found()).containsExactly(attack(1));
    }
  }

  @Test
  void fileThatIsNoJournalIsRefused() throws IOException {
    Path file = Files.writeString(folder.resolve("x.journal"), "{\"format\":\"song\"}\n");
    assertThatThrownBy(() -> JournalFile.resume(file)).isInstanceOf(BadInput.class);
    Path empty = Files.createFile(folder.resolve("y.journal"));
    assertThatThrownBy(() -> JournalFile.resume(empty))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("empty");
  }

  @Test
  void whatIsSettledIsNotBroughtAgain() throws IOException {
    Attacks other = new Attacks("r-t2", 1, 1, List.of(WireAttack.tap(9_000)));
    try (JournalFile journal = JournalFile.begin(folder, "r-p1", BEARER)) {
      journal.keep(attack(1));
      journal.keep(other);
      journal.keep(new Lengths("r-t1", 1, List.of(new AttackLength(1, 110))));
      journal.settle("r-t1", "expected one of the last takes, found \"r-t1\"");
    }
    try (JournalFile again = JournalFile.resume(theOneIn(folder))) {
      assertThat(again.found()).containsExactly(other);
    }
  }

  /** One of the two takes in the journal is none that the room knows. */
  @Test
  void attacksOfAProgramThatDiedAreBroughtByTheNextOne() throws Exception {
    Path journals = folder.resolve("journals");
    try (RehearsalHost host = RehearsalHost.start(HostOptions.local(folder.resolve("rooms.db")));
        CuttingProxy proxy = new CuttingProxy(host.port());
        LinkLoop leaderLoop = LinkLoop.start()) {
      RoomAddress address = RoomAddress.local(proxy.port());
      Seat leader =
          Seat.opens(LinkOptions.on(leaderLoop), RoomAddress.local(host.port()), "Lea").online();
      LinkLoop dying = LinkLoop.start();
      Seat mina =
          Seat.joins(
                  LinkOptions.on(dying).withJournal(journals), address, leader.link.word(), "Mina")
              .online()
              .steady();
      String takeId = leader.starts("Even eighths");
      Seat.until(() -> mina.announced);
      mina.plays(20, dying.nanos());
      await().until(() -> mina.storedThrough == 20);
      proxy.target(1); // nothing more comes through
      proxy.cut();
      mina.sees(LinkState.AWAY);
      mina.plays(20, dying.nanos());
      await().until(() -> mina.waiting == 20);
      mina.link.close();
      dying.close();

      List<Path> left = RoomLink.unsent(journals);
      assertThat(left).hasSize(1);
      Attacks forgotten =
          new Attacks("gone-t1", 1, 1, List.of(WireAttack.tap(1), WireAttack.tap(2)));
      Files.writeString(
          left.get(0), MessageCodec.write(forgotten) + "\n", StandardOpenOption.APPEND);
      proxy.target(host.port());
      List<String> refused = new CopyOnWriteArrayList<>();
      try (LinkLoop next = LinkLoop.start()) {
        RoomListener ear =
            new RoomListener() {
              @Override
              public void attacksRefused(int attacks, String says) {
                refused.add(attacks + ": " + says);
              }
            };
        RoomLink link = RoomLink.resume(LinkOptions.on(next), left.get(0), ear);
        await().until(() -> RoomLink.unsent(journals).isEmpty());
        leader.link.lead().stop(takeId).join();
        await().until(() -> leader.review != null && !leader.review.provisional());
        assertThat(host.take(takeId).orElseThrow().attacks())
            .extracting(Attack::micros)
            .containsExactlyInAnyOrderElementsOf(mina.played());
        assertThat(refused).containsExactly("2: expected one of the last takes, found \"gone-t1\"");
        link.close();
        await().until(() -> link.state() == LinkState.CLOSED);
      }
    }
    assertThat(journals).isEmptyDirectory();
  }
}
