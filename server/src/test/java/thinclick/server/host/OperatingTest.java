package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.awaitility.Awaitility.await;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.LongStream;
import org.jdbi.v3.core.Jdbi;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.PreparingMessage;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.time.VirtualTime;

/** What an operator asks a host, and how a host is taken out of service. */
class OperatingTest {
  private static final Duration PATIENCE = Duration.ofSeconds(20);

  @TempDir Path folder;
  private RehearsalHost host;
  private WireClient leader;
  private ServerMessage.Welcome opened;
  private long revision;

  @AfterEach
  void stop() {
    leader.close();
    host.close();
  }

  private void start(HostOptions options) {
    host = RehearsalHost.start(options);
    leader = WireClient.connect(host.port());
    leader.send(new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
    opened = leader.expect(ServerMessage.Welcome.class);
    revision = opened.revision();
  }

  private HostOptions options() {
    return HostOptions.local(folder.resolve("room.db"));
  }

  private WireClient join(String name) {
    WireClient client = WireClient.connect(host.port());
    client.send(new ClientMessage.Join(1, 1, opened.room(), name, Role.PLAYER, null, null, false));
    client.expect(ServerMessage.Welcome.class);
    return client;
  }

  private TakeNews.Announced startTake() {
    leader.send(new LeaderCommand.Material(1, revision, TestDrill.BEATS_AND_ANDS, null));
    revision = leader.expect(ServerMessage.Done.class).revision();
    leader.send(new LeaderCommand.Deal(2, revision, 1, List.of()));
    revision = leader.expect(ServerMessage.Done.class).revision();
    String dealId = leader.expect(ServerMessage.Dealt.class).dealId();
    leader.send(new LeaderCommand.Start(3, revision, dealId, 2_000, 1));
    revision = leader.expect(ServerMessage.Done.class).revision();
    return leader.expect(TakeNews.Announced.class);
  }

  private HttpResponse<String> ask(String method, String path, String... headers) throws Exception {
    return askAt("127.0.0.1", method, path, headers);
  }

  private HttpResponse<String> askAt(String to, String method, String path, String... headers)
      throws Exception {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://" + to + ":" + host.port() + path))
            .method(method, BodyPublishers.noBody());
    if (headers.length > 0) {
      request.headers(headers);
    }
    return HttpClient.newHttpClient().send(request.build(), HttpResponse.BodyHandlers.ofString());
  }

  private PrometheusText metrics() throws Exception {
    HttpResponse<String> answer = ask("GET", "/metrics");
    assertThat(answer.headers().firstValue("Content-Type"))
        .contains("text/plain; version=0.0.4; charset=utf-8");
    return PrometheusText.read(answer.body());
  }

  @Test
  void metricsCountWhatHappens() throws Exception {
    start(options());
    try (WireClient mina = join("Mina")) {
      TakeNews.Announced take = startTake();
      mina.send(
          new PreparingMessage.ClockReport(
              opened.epoch(), ClockState.STEADY, 1_500, 100, 0.0, null, null));
      mina.send(attacks(take));
      assertThat(mina.expect(TakeNews.Stored.class).throughSeq()).isEqualTo(5);
      await().atMost(PATIENCE).until(() -> metrics().value("thinclick_attacks_stored_total") == 5);

      PrometheusText now = metrics();
      assertThat(now.value("thinclick_rooms")).isEqualTo(1);
      assertThat(now.value("thinclick_players")).isEqualTo(2);
      assertThat(now.value("thinclick_connections")).isEqualTo(2);
      assertThat(now.value("thinclick_attacks_total")).isEqualTo(5);
      assertThat(now.value("thinclick_heard_dropped_total")).isZero();
      assertThat(now.kind("thinclick_acknowledgement_seconds")).isEqualTo("histogram");
      assertThat(now.value("thinclick_acknowledgement_seconds_count")).isEqualTo(1);
      assertThat(now.value("thinclick_acknowledgement_seconds_sum")).isBetween(1e-5, 20.0);
      assertThat(now.edges("thinclick_acknowledgement_seconds")).contains(.005, .05, .5);
      assertThat(now.value("thinclick_clock_uncertainty_seconds_sum")).isEqualTo(.0015);
      assertThat(now.kind("thinclick_pauses_seconds")).isEqualTo("histogram");
    }
    await().atMost(PATIENCE).until(() -> metrics().value("thinclick_players") == 1);
  }

  @Test
  void roomThatTheDatabaseRefusesForGoodLosesItsTakeAndTheOtherPlaysOn() throws Exception {
    start(options());
    try (WireClient mina = join("Mina")) {
      TakeNews.Announced spoilt = startTake();
      Jdbi.create("jdbc:sqlite:" + folder.resolve("room.db"))
          .useHandle(
              handle ->
                  handle.execute(
                      """
                      CREATE TRIGGER not_this_take BEFORE INSERT ON attack
                      WHEN NEW.take = (SELECT number FROM take WHERE id = '%s')
                      BEGIN SELECT RAISE(ABORT, 'not this one'); END
                      """
                          .formatted(spoilt.takeId())));
      try (WireClient first = leader) {
        leader = WireClient.connect(host.port());
        leader.send(new ClientMessage.OpenRoom(1, 1, null, "Herr Lind"));
        opened = leader.expect(ServerMessage.Welcome.class);
        revision = opened.revision();
        try (WireClient ilse = join("Ilse")) {
          TakeNews.Announced whole = startTake();
          mina.send(attacks(spoilt));
          ilse.send(attacks(whole));

          assertThat(ilse.expect(TakeNews.Stored.class).throughSeq()).isEqualTo(5);
          assertThat(mina.expect(TakeNews.Stopped.class).reason())
              .isEqualTo(TakeNews.StopReason.INTERRUPTED);
          assertThat(first.expect(ServerMessage.Problem.class).says())
              .contains("refuses this for good (SQLITE_CONSTRAINT_TRIGGER)");
        }
      }
      assertThat(ask("GET", "/health").body()).isEqualTo("ok\n");
      assertThat(metrics().value("thinclick_store_refused_total")).isEqualTo(1);
    }
  }

  private static TakeMessage.Attacks attacks(TakeNews.Announced take) {
    return new TakeMessage.Attacks(
        take.takeId(),
        take.epoch(),
        1,
        LongStream.range(0, 5)
            .mapToObj(i -> WireAttack.tap(take.startMicros() + i * 250_000))
            .toList());
  }

  @Test
  void metricsTellNoName() throws Exception {
    start(options());
    try (WireClient mina = join("Mina")) {
      assertThat(ask("GET", "/metrics").body())
          .doesNotContain("Mina", "Ott", opened.room(), opened.playerId());
      assertThat(mina.open()).isTrue();
    }
  }

  @Test
  void metricsAreForThisComputerUnlessOthersAreLetIn() throws Exception {
    start(options().at("0.0.0.0", 0).encrypting(Encryption.NONE));
    String address = host.addresses().get(0);
    assumeThat(address).as("an address beside the loop").isNotEqualTo("127.0.0.1");

    assertThat(askAt(address, "GET", "/metrics").statusCode()).isEqualTo(404);
    assertThat(askAt(address, "POST", "/drain").statusCode()).isEqualTo(404);
    assertThat(askAt(address, "GET", "/health").body()).isEqualTo("ok\n");
    leader.close();
    host.close();
    start(options().at("0.0.0.0", 0).encrypting(Encryption.NONE).withMetricsToAll());
    assertThat(askAt(address, "GET", "/metrics").statusCode()).isEqualTo(200);
  }

  @Test
  void pageInABrowserCannotDrain() throws Exception {
    start(options());

    assertThat(ask("POST", "/drain", "Origin", "https://somewhere.example").statusCode())
        .isEqualTo(404);
    assertThat(ask("GET", "/drain").statusCode()).isEqualTo(404);
    assertThat(ask("GET", "/health").statusCode()).isEqualTo(200);
  }

  @Test
  void roomWithoutATakeEndsAtOnceWhenDrained() throws Exception {
    start(options());

    assertThat(ask("POST", "/drain").statusCode()).isEqualTo(202);
    assertThat(leader.closeCode()).isEqualTo(CloseCode.GOING.number());
    assertThat(leader.expect(ServerMessage.Goodbye.class).retryAfterMillis()).isEqualTo(1_000);
    host.drained().get(20, TimeUnit.SECONDS);
    try (WireClient mina = WireClient.connect(host.port())) {
      mina.send(
          new ClientMessage.Join(1, 1, opened.room(), "Mina", Role.PLAYER, null, null, false));
      assertThat(mina.closeCode()).as("no wrong word").isEqualTo(CloseCode.GOING.number());
    }
  }

  @Test
  void takePlaysToItsEndAndNoNewRoomIsOpenedWhileDraining() throws Exception {
    start(options());
    try (WireClient mina = join("Mina");
        WireClient newcomer = WireClient.connect(host.port())) {
      TakeNews.Announced take = startTake();
      assertThat(ask("POST", "/drain").body()).isEqualTo("draining, rooms left: 1\n");

      assertThat(ask("GET", "/health").statusCode()).isEqualTo(503);
      assertThat(ask("GET", "/health").body()).isEqualTo("draining\n");
      newcomer.send(new ClientMessage.OpenRoom(1, 1, null, "Herr Lind"));
      assertThat(newcomer.closeCode()).isEqualTo(CloseCode.OVERLOAD.number());
      leader.send(new LeaderCommand.Stop(9, revision, take.takeId()));
      assertThat(mina.expect(TakeNews.Stopped.class).reason())
          .isEqualTo(TakeNews.StopReason.LEADER);
      assertThat(host.drained()).as("the review is waited for").isNotDone();
      assertThat(mina.open()).isTrue();
    }
  }

  @Test
  void roomEndsTenSecondsAfterItsTakeWhileDraining() throws Exception {
    VirtualTime time = new VirtualTime(0);
    start(options().on(time, time));
    try (WireClient mina = join("Mina")) {
      TakeNews.Announced take = startTake();
      host.drain();
      host.settled().get(20, TimeUnit.SECONDS); // the room knows before its take ends
      leader.send(new LeaderCommand.Stop(9, revision, take.takeId()));
      mina.expect(TakeNews.Stopped.class);
      host.settled().get(20, TimeUnit.SECONDS);
      pass(time, 9_999);
      leader.send(new PreparingMessage.Clock(7, 1));
      assertThat(leader.expect(AnswerMessage.ClockAnswer.class).id()).isEqualTo(7);
      assertThat(host.drained()).isNotDone();

      pass(time, 1);
      assertThat(mina.expect(ServerMessage.Goodbye.class).retryAfterMillis()).isEqualTo(1_000);
      assertThat(mina.closeCode()).isEqualTo(CloseCode.GOING.number());
      host.drained().get(20, TimeUnit.SECONDS);
    }
  }

  private void pass(VirtualTime time, long millis) throws Exception {
    time.advanceTo(time.nanos() + millis * 1_000_000);
    host.settled().get(20, TimeUnit.SECONDS);
  }
}
