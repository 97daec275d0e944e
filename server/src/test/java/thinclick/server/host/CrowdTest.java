package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.PreparingMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.server.load.RawLine;

/** Many at once from one address: a class behind its school's router, and somebody who guesses. */
class CrowdTest {
  @TempDir Path folder;
  private RehearsalHost host;
  private WireClient leader;
  private String word;

  @BeforeEach
  void roomIsOpen() {
    host = RehearsalHost.start(HostOptions.local(folder.resolve("room.db")));
    leader = WireClient.connect(host.port());
    leader.send(new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
    word = leader.expect(ServerMessage.Welcome.class).room();
  }

  @AfterEach
  void close() {
    leader.close();
    host.close();
  }

  private static ClientMessage.Join join(String word, String name) {
    return new ClientMessage.Join(1, 1, word, name, Role.PLAYER, null, null, false);
  }

  @Test
  void fortyWithTheRightWordComeInAtOnce() {
    List<RawLine> pupils =
        IntStream.range(0, 40).mapToObj(i -> RawLine.connect(host.port())).toList();
    for (int i = 0; i < 40; i++) {
      pupils.get(i).sendText(MessageCodec.write(join(word, "Pupil " + i)));
    }
    for (RawLine pupil : pupils) {
      try (pupil) {
        assertThat(pupil.read().text()).startsWith("{\"type\":\"welcome\"").contains(word);
      }
    }
  }

  @Test
  void rightWordsBetweenWrongOnesComeInUntilTwentyWereWrong() {
    try (WireClient mina = WireClient.connect(host.port())) {
      assertThat(codesOf(20, "wrongword")).containsOnly(CloseCode.ROOM.number()).hasSize(20);
      mina.send(join(word, "Mina"));

      assertThat(mina.closeCode()).as("guessing goes on").isEqualTo(CloseCode.FLOOD.number());
      assertThat(mina.expect(ServerMessage.Goodbye.class).retryAfterMillis()).isEqualTo(60_000);
    }
  }

  @Test
  void thousandsOfWrongWordsChangeNothingForTheRoom() {
    long before = used();
    List<Integer> codes = new ArrayList<>();
    for (int round = 0; round < 20; round++) {
      codes.addAll(codesOf(100, "guess"));
      leader.send(new PreparingMessage.Clock(round, 5));
      assertThat(leader.expect(AnswerMessage.ClockAnswer.class).id()).isEqualTo(round);
    }

    // Three seconds give one word back, and this takes seconds.
    assertThat(codes.stream().filter(code -> code == CloseCode.ROOM.number()).count())
        .isBetween(20L, 40L);
    assertThat(codes)
        .hasSize(2_000)
        .containsOnly(CloseCode.ROOM.number(), CloseCode.FLOOD.number());
    assertThat(used() - before).as("bytes that stay").isLessThan(16L << 20);
  }

  /** How the host ends so many that come together with a wrong word each. */
  private List<Integer> codesOf(int count, String wrong) {
    byte[] request =
        RawLine.request(MessageCodec.PATH, host.port()).getBytes(StandardCharsets.US_ASCII);
    List<RawLine> strangers = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      RawLine stranger = RawLine.dial(host.port());
      stranger.send(request);
      strangers.add(stranger);
    }
    for (RawLine stranger : strangers) {
      assertThat(stranger.head().get(0)).contains(" 101 ");
      stranger.sendText(MessageCodec.write(join(wrong, "Stranger")));
    }
    List<Integer> codes = strangers.stream().map(RawLine::closeCode).toList();
    strangers.forEach(RawLine::close);
    return codes;
  }

  private static long used() {
    System.gc();
    return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
  }
}
