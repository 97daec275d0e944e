package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.PreparingMessage;
import thinclick.protocol.message.ServerMessage;

/** What a stranger can send, and what is answered; the room's leader must never notice. */
class EdgeTest {
  @TempDir static Path folder;
  private static RehearsalHost host;

  private WireClient leader;
  private String word;
  private WireClient stranger;

  @BeforeAll
  static void start() {
    host = RehearsalHost.start(HostOptions.local(folder.resolve("room.db")));
  }

  @AfterAll
  static void stop() {
    host.close();
  }

  @BeforeEach
  void roomIsOpen() {
    leader = WireClient.connect(host.port());
    leader.send(new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
    word = leader.expect(ServerMessage.Welcome.class).room();
    stranger = WireClient.connect(host.port());
  }

  @AfterEach
  void leaderIsUnharmed() {
    leader.send(new PreparingMessage.Clock(1, 5));
    assertThat(leader.expect(AnswerMessage.ClockAnswer.class).t1Micros()).isEqualTo(5);
    leader.close();
    stranger.close();
  }

  private void join(String name) {
    stranger.send(new ClientMessage.Join(1, 1, word, name, Role.PLAYER, null, null, false));
    stranger.expect(ServerMessage.Welcome.class);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "not JSON",
        "null",
        "[]",
        "[\"clock\",{}]",
        "{}",
        "{\"type\":null}",
        "{\"type\":\"clock\",\"id\":1,\"id\":2,\"t1Micros\":1}",
        "{\"type\":\"clock\",\"id\":1,\"t1Micros\":123456789012345678901234}",
        "{\"type\":\"clock\",\"id\":1,\"t1Micros\":1}{}",
        "{\"type\":\"clock\",\"id\":1,\"t1Micros\":1",
        "{\"a\":[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]],\"type\":\"clock\",\"id\":1,\"t1Micros\":1}"
      })
  void whatIsNoMessageClosesTheConnection(String text) {
    join("Mina");
    stranger.sendText(text);

    assertThat(stranger.closeCode()).isEqualTo(CloseCode.MALFORMED.number());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{\"type\":\"clock\",\"id\":1,\"t1Micros\":1.9}                 | t1Micros",
        "{\"type\":\"clock\",\"id\":\"1\",\"t1Micros\":1}               | id",
        "{\"type\":\"clock\",\"id\":1}                                  | t1Micros",
        "{\"type\":\"clock\",\"id\":-1,\"t1Micros\":1}                  | id",
        "{\"type\":\"ready\",\"dealId\":\"d\",\"ready\":1}              | ready",
        "{\"type\":\"attacks\",\"takeId\":\"t\",\"epoch\":1,\"firstSeq\":1,\"attacks\":[null]} |"
            + " attacks[0]",
        "{\"type\":\"attacks\",\"takeId\":\"t\",\"epoch\":1,\"firstSeq\":1,\"attacks\":[]} |"
            + " attacks",
        "{\"type\":\"attacks\",\"takeId\":\"t\",\"epoch\":1,\"firstSeq\":0,"
            + "\"attacks\":[{\"micros\":1}]} | firstSeq"
      })
  void wrongFieldIsNamedAndTheConnectionStays(String text, String field) {
    join("Mina");
    stranger.sendText(text);

    ServerMessage.Problem problem = stranger.expect(ServerMessage.Problem.class);
    assertThat(problem.code()).isEqualTo(ErrorCode.BAD_FIELD);
    assertThat(problem.field()).isEqualTo(field);
    assertThat(problem.says()).contains("expected").contains("found");
    stranger.send(new PreparingMessage.Clock(7, 1));
    assertThat(stranger.expect(AnswerMessage.ClockAnswer.class).id()).isEqualTo(7);
  }

  @Test
  void commandThatCannotBeReadIsAnsweredByItsNumber() {
    join("Mina");
    stranger.sendText("{\"type\":\"stop\",\"requestId\":77,\"revision\":1,\"takeId\":5}");

    assertThat(stranger.expect(ServerMessage.Problem.class).requestId()).isEqualTo(77);
  }

  @Test
  void unknownTypeIsAnsweredAndTheConnectionStays() {
    join("Mina");
    stranger.sendText("{\"type\":\"dance\",\"requestId\":3}");

    ServerMessage.Problem problem = stranger.expect(ServerMessage.Problem.class);
    assertThat(problem.code()).isEqualTo(ErrorCode.UNKNOWN_TYPE);
    assertThat(problem.requestId()).isEqualTo(3);
    assertThat(stranger.open()).isTrue();
  }

  @Test
  void binaryFrameClosesTheConnection() {
    join("Mina");
    stranger.sendBinary(new byte[] {1, 2, 3});

    assertThat(stranger.closeCode()).isEqualTo(CloseCode.BINARY.number());
  }

  @Test
  void frameOverTheLimitClosesTheConnection() {
    join("Mina");
    stranger.sendText("x".repeat(MessageCodec.MAX_CLIENT_FRAME + 1));

    assertThat(stranger.closeCode()).isEqualTo(CloseCode.TOO_BIG.number());
  }

  @Test
  void anythingButAJoinFirstClosesTheConnection() {
    stranger.send(new PreparingMessage.Clock(1, 1));

    assertThat(stranger.closeCode()).isEqualTo(CloseCode.MALFORMED.number());
  }

  @Test
  void wrongWordClosesTheConnection() {
    stranger.send(new ClientMessage.Join(1, 1, "nowhere", "Mina", Role.PLAYER, null, null, false));

    assertThat(stranger.closeCode()).isEqualTo(CloseCode.ROOM.number());
  }

  @Test
  void noCommonVersionClosesTheConnection() {
    stranger.send(new ClientMessage.Join(2, 9, word, "Mina", Role.PLAYER, null, null, false));

    assertThat(stranger.closeCode()).isEqualTo(CloseCode.VERSION.number());
  }

  @Test
  void newerConnectionOfAPlayerReplacesTheOlder() {
    stranger.send(new ClientMessage.Join(1, 1, word, "Mina", Role.PLAYER, null, null, false));
    String token = stranger.expect(ServerMessage.Welcome.class).token();
    try (WireClient newer = WireClient.connect(host.port())) {
      newer.send(new ClientMessage.Join(1, 1, word, "Mina", Role.PLAYER, token, null, false));
      newer.expect(ServerMessage.Welcome.class);

      assertThat(stranger.closeCode()).isEqualTo(CloseCode.REPLACED.number());
      assertThat(stranger.expect(ServerMessage.Goodbye.class).reason()).contains("newer");
    }
  }

  @Test
  void takenNameMayBeFollowedByAnother() {
    stranger.send(new ClientMessage.Join(1, 1, word, "frau ott", Role.PLAYER, null, null, false));
    assertThat(stranger.expect(ServerMessage.Problem.class).code()).isEqualTo(ErrorCode.NAME_TAKEN);

    join("Mina");
  }

  @Test
  void clockIsAnsweredWithInstantsOfTheRoom() {
    join("Mina");
    for (int id = 0; id < 5; id++) {
      stranger.send(new PreparingMessage.Clock(id, id * 1_000L));
    }
    long before = 0;
    for (int id = 0; id < 5; id++) {
      AnswerMessage.ClockAnswer answer = stranger.expect(AnswerMessage.ClockAnswer.class);
      assertThat(answer.id()).isEqualTo(id);
      assertThat(answer.t2Micros()).isGreaterThanOrEqualTo(before);
      assertThat(answer.t3Micros()).isGreaterThanOrEqualTo(answer.t2Micros());
      before = answer.t2Micros();
    }
  }

  @Test
  void healthIsAnsweredInPlainHttpAndNothingElseIs() throws Exception {
    assertThat(get("/health").statusCode()).isEqualTo(200);
    assertThat(get("/health").body()).isEqualTo("ok\n");
    assertThat(get("/").statusCode()).isEqualTo(404);
    assertThat(get("/room").statusCode()).isEqualTo(404);
  }

  private static HttpResponse<String> get(String path) throws Exception {
    return HttpClient.newHttpClient()
        .send(
            HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + host.port() + path)).build(),
            HttpResponse.BodyHandlers.ofString());
  }

  @Test
  void pageOfABrowserIsRefused() {
    WireClient page =
        WireClient.connect(host.port(), List.of("Origin", "https://somewhere.example"));

    assertThat(page.closeCode()).isEqualTo(CloseCode.ORIGIN.number());
  }

  @Test
  void portInUseIsSaidInOneLine() {
    assertThatThrownBy(
            () ->
                RehearsalHost.start(
                    HostOptions.local(folder.resolve("other.db")).at("127.0.0.1", host.port())))
        .isInstanceOf(BadInput.class)
        .hasMessage("--port: expected a free port on 127.0.0.1, found " + host.port() + " in use");
  }

  @Test
  void databaseOfAnotherHostIsSaidInOneLine() {
    assertThatThrownBy(() -> RehearsalHost.start(HostOptions.local(folder.resolve("room.db"))))
        .isInstanceOf(BadInput.class)
        .hasMessageStartingWith("--db: expected a database that no other host has");
  }
}
