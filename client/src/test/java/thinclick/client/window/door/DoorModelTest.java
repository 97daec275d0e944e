package thinclick.client.window.door;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.client.find.FoundHost;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.LinkOptions;
import thinclick.client.link.LinkState;
import thinclick.client.link.RoomAddress;
import thinclick.client.link.RoomLink;
import thinclick.client.link.RoomListener;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;

/** What is written at the door: every wrong entry gets its sentence where it belongs. */
class DoorModelTest {
  private static final String PIN = "pin=AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA";

  @TempDir Path folder;

  private Session session;
  private DoorModel door;

  @BeforeEach
  void open() {
    session = new Session(Runnable::run, MonotonicClock.SYSTEM, folder);
    door = new DoorModel(session, Words.in(Locale.ENGLISH));
  }

  @AfterEach
  void close() {
    session.close();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // name | address | word | what is said of each
        "     | 10.0.0.2:7420 | kodamine | A first name or nickname is needed. | | ",
        "Ana  |               | kodamine | | An address is a host and a port, such as 192.168.1.20:7420. | ",
        "Ana  | band room     | kodamine | | An address is a host and a port, such as 192.168.1.20:7420. | ",
        "Ana  | 10.0.0.2:7420 |          | | | The room word is needed; the leader has it.",
        "Ana  | 10.0.0.2:7420 | kod4mine | | | A room word is made of letters alone, up to 32 of them.",
        "Ana  | thinclick://  | kodamine | | That is no whole join link; copy all of it, from thinclick:// to its end. | ",
        "     |               |          | A first name or nickname is needed. | An address is a host and a port, such as 192.168.1.20:7420. | The room word is needed; the leader has it.",
      })
  void aWrongEntryIsSaidWhereItBelongs(
      String name,
      String address,
      String word,
      String nameSays,
      String addressSays,
      String wordSays) {
    door.name().write(name == null ? "" : name);
    door.address().write(address == null ? "" : address);
    door.word().write(word == null ? "" : word);
    door.join();
    assertThat(door.name().says()).isEqualTo(nameSays == null ? "" : nameSays);
    assertThat(door.address().says()).isEqualTo(addressSays == null ? "" : addressSays);
    assertThat(door.word().says()).isEqualTo(wordSays == null ? "" : wordSays);
    assertThat(session.state().link()).as("nobody is called").isNull();
  }

  /** The first entry that keeps somebody out is told, each time, and what was written stays. */
  @Test
  void whichEntryIsWrongIsTold() {
    List<Entry> told = new ArrayList<>();
    door.onWrong(told::add);
    door.address().write("band room");
    door.join();
    door.name().write("Ana");
    door.join();
    door.address().write("10.0.0.2:7420");
    door.word().write("kod4mine");
    door.join();
    door.join();
    assertThat(told).containsExactly(door.name(), door.address(), door.word(), door.word());
    assertThat(door.word().written()).isEqualTo("kod4mine");
  }

  /** By a real host: a word that opens nothing, then a name that somebody has. */
  @Test
  void whatAHostRefusesIsSaidWhereItWasWritten() throws Exception {
    List<Entry> told = new CopyOnWriteArrayList<>();
    door.onWrong(told::add);
    try (RehearsalHost host = RehearsalHost.start(HostOptions.local(folder.resolve("far.db")));
        LinkLoop loop = LinkLoop.start()) {
      RoomAddress there = RoomAddress.local(host.port());
      RoomLink leader = RoomLink.open(LinkOptions.on(loop), there, "Ana", new RoomListener() {});
      await().until(() -> leader.state() == LinkState.ONLINE);
      door.name().write("Ana");
      door.address().write("ws://127.0.0.1:" + host.port());
      door.word().write("zuzuzuzu");
      door.join();
      await().until(() -> told.size() == 1);
      assertThat(told).containsExactly(door.word());
      assertThat(door.word().says()).isEqualTo("There is no room with that word.");
      assertThat(door.word().written()).isEqualTo("zuzuzuzu");
      door.word().write(leader.word());
      assertThat(door.word().says()).isEmpty();
      door.join();
      await().until(() -> told.size() == 2);
      assertThat(told.get(1)).isEqualTo(door.name());
      assertThat(door.name().says()).contains("Ana", "taken");
      leader.close();
    }
  }

  @Test
  void writingOnWipesTheSentenceOut() {
    door.join();
    door.name().write("A");
    assertThat(door.name().says()).isEmpty();
    assertThat(door.address().says()).isNotEmpty();
  }

  @Test
  void aJoinLinkBringsTheWordAlong() {
    door.name().write("Ana");
    door.address().write("thinclick://127.0.0.1:9/kodamine?plain");
    assertThat(door.addressIsEnough()).isTrue();
    door.join();
    assertThat(session.state().address()).isEqualTo("127.0.0.1:9");
    assertThat(door.word().says()).isEmpty();
  }

  @Test
  void hostsCalledTheSameAreToldApartByTheirAddress() {
    List<FoundHost> both = List.of(host("Band room", 20), host("Band room", 21));
    assertThat(both.stream().map(door::foundSays))
        .containsExactly("Band room, at 192.168.1.20:7420", "Band room, at 192.168.1.21:7420");
    door.found().setAll(both);
    door.take(both.get(1));
    door.found().setAll(both.get(0));
    assertThat(door.address().written())
        .as("what was taken stays where its host is heard no more")
        .contains("192.168.1.21:7420");
  }

  /** U+202E turns what follows; a braille or emoji sign is as visible as a letter. */
  @Test
  void aNameThatTurnsOrHidesItselfIsWrittenOut() {
    assertThat(door.foundSays(host("Room\u202e21\u200b", 20)))
        .isEqualTo("Room\\u202e21\\u200b, at 192.168.1.20:7420");
    assertThat(door.foundSays(host("{0} Probe'raum \ud83e\udd41", 20)))
        .isEqualTo("{0} Probe'raum \ud83e\udd41, at 192.168.1.20:7420");
  }

  private static FoundHost host(String name, int number) {
    return new FoundHost(
        name, RoomAddress.parse("thinclick://192.168.1." + number + ":7420/?" + PIN));
  }

  @Test
  void aFoundHostsLinkStillNeedsTheWord() {
    door.name().write("Ana");
    door.take(new FoundHost("Room 12", RoomAddress.parse("thinclick://192.168.1.20:7420/?" + PIN)));
    assertThat(door.addressIsEnough()).isFalse();
    door.join();
    assertThat(door.address().says()).isEmpty();
    assertThat(door.word().says()).isNotEmpty();
  }
}
