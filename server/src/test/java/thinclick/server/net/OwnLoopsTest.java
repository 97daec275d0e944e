package thinclick.server.net;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.PreparingMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.load.RawLine;
import thinclick.server.store.Store;
import thinclick.server.watch.HostMeters;

/**
 * Who is served on which event loop, over real sockets: a stranger on the strangers' own, whoever
 * is let in on the room's.
 */
class OwnLoopsTest {
  @TempDir Path folder;
  private final HostMeters meters = new HostMeters();

  /** On which threads bytes were read, in order. */
  private final Queue<String> readers = new ConcurrentLinkedQueue<>();

  private volatile CountDownLatch roomsStandStill = new CountDownLatch(0);
  private Store store;
  private Listener listener;

  /** The host's clock, which is read first of all when bytes come. */
  private long now() {
    String thread = Thread.currentThread().getName();
    if (StackWalker.getInstance().walk(OwnLoopsTest::readsBytes)) {
      readers.add(thread);
    }
    if (!onDoor(thread)) {
      standStill();
    }
    return System.nanoTime();
  }

  private static boolean readsBytes(Stream<StackWalker.StackFrame> callers) {
    StackWalker.StackFrame asking = callers.skip(1).findFirst().orElseThrow();
    return asking.getClassName().equals(ArrivalStamp.class.getName())
        && asking.getMethodName().equals("channelRead");
  }

  private void standStill() {
    try {
      roomsStandStill.await();
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  private static boolean onDoor(String thread) {
    return thread.startsWith(Listener.DOOR);
  }

  @BeforeEach
  void open() {
    store = Store.open(folder.resolve("room.db"), InstantSource.system(), available -> {});
    HostParts parts = BareHost.parts(this::now, null, store, meters, RoomNews.NONE);
    listener = Listener.open(Port.bind("127.0.0.1", 0), Lines.PLAIN, parts);
  }

  @AfterEach
  void close() {
    roomsStandStill.countDown();
    listener.close();
    store.close();
  }

  private RawLine stranger() {
    return RawLine.connect(listener.port());
  }

  private static <T extends ServerMessage> T hear(RawLine line, String type, Class<T> kind) {
    return kind.cast(MessageCodec.readServer(line.expect(type)));
  }

  private static void say(RawLine line, ClientMessage message) {
    line.sendText(MessageCodec.write(message));
  }

  private static String opensARoom(RawLine line) {
    say(line, new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
    return hear(line, "welcome", ServerMessage.Welcome.class).room();
  }

  private static void asksFor(RawLine line, String word, String name) {
    say(line, new ClientMessage.Join(1, 1, word, name, Role.PLAYER, null, null, false));
  }

  private static void joins(RawLine line, String word, String name) {
    asksFor(line, word, name);
    hear(line, "welcome", ServerMessage.Welcome.class);
  }

  /** On which thread a member's bytes are read now. */
  private String readerOf(RawLine member) {
    readers.clear();
    say(member, new PreparingMessage.Clock(1, 5));
    hear(member, "clockAnswer", AnswerMessage.ClockAnswer.class);
    return readers.element();
  }

  @Test
  void whoeverIsLetInIsOnTheRoomsLoop() {
    try (RawLine leader = stranger();
        RawLine mina = stranger();
        RawLine jonas = stranger()) {
      String word = opensARoom(leader);
      joins(mina, word, "Mina");
      joins(jonas, word, "Jonas");
      String room = readerOf(leader);

      assertThat(room).matches(thread -> !onDoor(thread));
      assertThat(List.of(readerOf(mina), readerOf(jonas))).containsOnly(room);
    }
  }

  @Test
  void hostThatCannotReadItsRoomsLeavesNeitherPortNorThread() {
    Store shut = Store.open(folder.resolve("shut.db"), InstantSource.system(), available -> {});
    shut.close();
    HostParts parts =
        BareHost.parts(MonotonicClock.SYSTEM, null, shut, new HostMeters(), RoomNews.NONE);
    Port port = Port.bind("127.0.0.1", 0);
    int number = ((InetSocketAddress) port.channel().socket().getLocalSocketAddress()).getPort();
    long doors = doors();

    assertThatThrownBy(() -> Listener.open(port, Lines.PLAIN, parts))
        .hasStackTraceContaining("the store is closed");
    await().until(() -> doors() == doors);
    // A process that another test begins may hold its copy of the socket for a moment.
    await()
        .ignoreException(BadInput.class)
        .untilAsserted(() -> Port.bind("127.0.0.1", number).close());
  }

  @Test
  void whoeverIsInNoRoomIsLetGoOfWhenTheHostGoes() {
    HostParts parts =
        BareHost.parts(MonotonicClock.SYSTEM, null, store, new HostMeters(), RoomNews.NONE);
    for (int host = 0; host < 20; host++) {
      Listener one = Listener.open(Port.bind("127.0.0.1", 0), Lines.PLAIN, parts);
      try (RawLine stranger = RawLine.connect(one.port())) {
        one.close();
        assertThat(stranger.ended()).as("at host %d", host).isTrue();
      }
    }
  }

  private static long doors() {
    return Thread.getAllStackTraces().keySet().stream()
        .filter(thread -> onDoor(thread.getName()))
        .count();
  }

  @Test
  void roomsAreOnEachLoopInTurn() {
    List<RawLine> leaders = new ArrayList<>();
    for (int i = 0; i < 2 * Runtime.getRuntime().availableProcessors(); i++) {
      leaders.add(stranger());
      opensARoom(leaders.get(i));
    }
    Set<String> threads = leaders.stream().map(this::readerOf).collect(Collectors.toSet());
    leaders.forEach(RawLine::close);

    assertThat(threads).hasSize(Runtime.getRuntime().availableProcessors());
  }

  @Test
  void strangersAreReadNowhereElseHoweverManyCome() {
    try (RawLine leader = stranger()) {
      opensARoom(leader);
      readers.clear();
      for (int i = 0; i < 60; i++) {
        try (RawLine line = stranger()) {
          asksFor(line, "guess" + i, "Mallory");
          assertThat(line.closeCode()).isIn(CloseCode.ROOM.number(), CloseCode.FLOOD.number());
        }
        try (RawLine mute = RawLine.dial(listener.port())) {
          mute.send(new byte[] {1, 2, 3});
        }
      }

      assertThat(readers).hasSizeGreaterThan(120).allMatch(OwnLoopsTest::onDoor);
    }
  }

  @Test
  void whatWasSentBehindTheFirstMessageComesAfterIt() {
    try (RawLine leader = stranger();
        RawLine mina = stranger()) {
      String word = opensARoom(leader);
      asksFor(mina, word, "Mina");
      for (int i = 1; i <= 20; i++) {
        say(mina, new PreparingMessage.Clock(i, 5));
      }

      hear(mina, "welcome", ServerMessage.Welcome.class);
      for (int i = 1; i <= 20; i++) {
        assertThat(hear(mina, "clockAnswer", AnswerMessage.ClockAnswer.class).id()).isEqualTo(i);
      }
    }
  }

  @Test
  void whoeverWasRefusedGoesOnToAnotherRoom() {
    try (RawLine first = stranger();
        RawLine second = stranger();
        RawLine third = stranger()) {
      String one = opensARoom(first);
      String two = opensARoom(second);
      asksFor(third, one, "Frau Ott"); // who is there already
      assertThat(third.expect("error")).contains("nameTaken");
      joins(third, two, "Mina");

      assertThat(readerOf(third)).isEqualTo(readerOf(second));
      await().until(() -> meters.text().contains("thinclick_players 3.0"));
    }
    await().until(() -> meters.text().contains("thinclick_players 0.0"));
    assertThat(meters.text()).contains("thinclick_connections 0.0");
  }

  @Test
  void whoeverIsGoneBeforeTheRoomsLoopComesToThemLeavesItOnce() {
    try (RawLine leader = stranger()) {
      String word = opensARoom(leader);
      roomsStandStill = new CountDownLatch(1);
      say(leader, new PreparingMessage.Clock(1, 5));
      try (RawLine mina = stranger()) {
        asksFor(mina, word, "Mina");
        try (RawLine behind = stranger()) {
          asksFor(behind, "guess", "Mallory"); // refused: so the door is done with Mina
          assertThat(behind.closeCode()).isEqualTo(CloseCode.ROOM.number());
        }
      }
      roomsStandStill.countDown();

      hear(leader, "clockAnswer", AnswerMessage.ClockAnswer.class);
      await().until(() -> meters.text().contains("thinclick_connections 1.0"));
      assertThat(meters.text()).contains("thinclick_players 1.0");
    }
    await().until(() -> meters.text().contains("thinclick_connections 0.0"));
    assertThat(meters.text()).contains("thinclick_players 0.0");
  }
}
