package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.PreparingMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews;
import thinclick.server.load.RawLine;
import thinclick.server.room.Room;

/** More than anybody needs. */
class FloodTest {
  @TempDir Path folder;
  private RehearsalHost host;
  private WireClient leader;
  private ServerMessage.Welcome opened;

  @BeforeEach
  void roomIsOpen() {
    host = RehearsalHost.start(HostOptions.local(folder.resolve("room.db")));
    leader = WireClient.connect(host.port());
    leader.send(new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
    opened = leader.expect(ServerMessage.Welcome.class);
  }

  @AfterEach
  void close() {
    leader.close();
    host.close();
  }

  private WireClient join(String name) {
    WireClient client = WireClient.connect(host.port());
    client.send(new ClientMessage.Join(1, 1, opened.room(), name, Role.PLAYER, null, null, false));
    client.expect(ServerMessage.Welcome.class);
    return client;
  }

  @Test
  void floodOfQuestionsClosesTheConnection() {
    try (WireClient mina = join("Mina")) {
      for (int id = 0; id < 500 && mina.open(); id++) {
        try {
          mina.send(new PreparingMessage.Clock(id, id));
        } catch (RuntimeException closed) {
          break;
        }
      }
      assertThat(mina.closeCode()).isEqualTo(CloseCode.FLOOD.number());
    }
  }

  @Test
  void floodOfNonsenseClosesTheConnection() {
    try (WireClient mina = join("Mina")) {
      for (int i = 0; i < 500 && mina.open(); i++) {
        try {
          mina.sendText("{\"type\":\"dance\"}");
        } catch (RuntimeException closed) {
          break;
        }
      }
      assertThat(mina.closeCode()).isEqualTo(CloseCode.FLOOD.number());
    }
  }

  @Test
  void whoeverComesBackAllTheTimeIsToldToWaitAndAnotherRoomIsNot() {
    join("Mina").close(); // her chair stays hers
    try (WireClient otherLeader = WireClient.connect(host.port())) {
      otherLeader.send(new ClientMessage.OpenRoom(1, 1, null, "Herr Voss"));
      String other = otherLeader.expect(ServerMessage.Welcome.class).room();
      int cameBack = 0;
      String answer = comes(opened.room());
      while (answer.contains("nameTaken") && cameBack < 200) {
        cameBack++;
        answer = comes(opened.room());
      }

      // The leader and Mina have come before; two a second are given back meanwhile.
      assertThat(cameBack).isBetween(Room.MAX_MEMBERS - 2, 199);
      assertThat(answer).contains("\"retryAfterMillis\":2000");
      assertThat(comes(other)).contains("\"welcome\"");
    }
  }

  @Test
  void oneWhoComesBackAllTheTimeIsToldToWaitAndOthersAreNot() {
    try (WireClient tariq = join("Tariq")) {
      String token = comesNew("Mina");
      int cameBack = 0;
      String answer = comesBack(token);
      while (answer.contains("\"welcome\"") && cameBack < Room.MAX_MEMBERS) {
        cameBack++;
        answer = comesBack(token);
      }

      // Five at once, and half a time a second is given back meanwhile.
      assertThat(cameBack).isBetween(5, Room.MAX_MEMBERS - 10);
      assertThat(answer).contains("\"retryAfterMillis\":2000");
      join("Ilse").close();
      assertThat(tariq.open()).isTrue();
    }
  }

  private String comesNew(String name) {
    try (WireClient client = WireClient.connect(host.port())) {
      client.send(
          new ClientMessage.Join(1, 1, opened.room(), name, Role.PLAYER, null, null, false));
      return client.expect(ServerMessage.Welcome.class).token();
    }
  }

  private String comesBack(String token) {
    return answered(
        new ClientMessage.Join(1, 1, opened.room(), "Mina", Role.PLAYER, token, null, false));
  }

  /** The first that is said to somebody who comes as Mina. */
  private String comes(String room) {
    return answered(new ClientMessage.Join(1, 1, room, "Mina", Role.PLAYER, null, null, false));
  }

  private String answered(ClientMessage message) {
    try (RawLine line = RawLine.connect(host.port())) {
      line.sendText(MessageCodec.write(message));
      return line.read().text();
    }
  }

  @Test
  void longResendIsSlowedDownAndStoredWhole() {
    try (WireClient mina = join("Mina")) {
      leader.send(new LeaderCommand.Material(1, opened.revision(), TestDrill.BEATS_AND_ANDS, null));
      leader.send(
          new LeaderCommand.Deal(
              2, leader.expect(ServerMessage.Done.class).revision(), 7, List.of()));
      long dealt = leader.expect(ServerMessage.Done.class).revision();
      String dealId = leader.expect(ServerMessage.Dealt.class).dealId();
      leader.send(new LeaderCommand.Start(3, dealt, dealId, 15_000, 4));
      TakeNews.Announced announced = mina.expect(TakeNews.Announced.class);
      long all = 576;
      for (long first = 1; first <= all; first += 64) {
        mina.send(
            new TakeMessage.Attacks(
                announced.takeId(),
                announced.epoch(),
                first,
                LongStream.range(first, first + 64)
                    .mapToObj(seq -> WireAttack.tap(announced.startMicros() + seq))
                    .toList()));
      }
      long through = 0;
      while (through < all) {
        through = mina.expect(TakeNews.Stored.class).throughSeq();
      }
      assertThat(mina.open()).isTrue();
    }
  }

  @Test
  void twentyOneWrongWordsInAMinuteAreTooMany() {
    for (int i = 1; i <= 21; i++) {
      try (WireClient stranger = WireClient.connect(host.port())) {
        stranger.send(
            new ClientMessage.Join(1, 1, "wrong" + i, "Mina", Role.PLAYER, null, null, false));
        assertThat(stranger.closeCode())
            .as("word %d", i)
            .isEqualTo(i <= 20 ? CloseCode.ROOM.number() : CloseCode.FLOOD.number());
      }
    }
  }
}
