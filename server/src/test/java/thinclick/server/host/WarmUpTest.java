package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeNews;
import thinclick.server.load.RawLine;
import thinclick.server.words.Speaker;

/** A host that gets ready before anybody comes. */
class WarmUpTest {
  @TempDir Path folder;

  @Test
  void everyMessageIsSaidAndATakeIsPlayed() {
    var shelf = HostMaterial.shelf(null);
    String title = shelf.list().drills().get(0).title();

    var said = new EmptyRoom(shelf, HostMaterial.dealer(Speaker.english()), title, 1, true).play();

    List<Class<?>> all =
        Arrays.stream(ClientMessage.class.getAnnotation(JsonSubTypes.class).value())
            .<Class<?>>map(JsonSubTypes.Type::value)
            .toList();
    assertThat(said)
        .containsAll(all)
        .contains(
            ServerMessage.Dealt.class,
            TakeNews.Announced.class,
            TakeNews.Heard.class,
            TakeNews.Stored.class,
            TakeNews.Stopped.class,
            ServerMessage.Problem.class,
            ServerMessage.Roster.class,
            AnswerMessage.LibraryList.class,
            AnswerMessage.WholeDrill.class);
  }

  @Test
  void callsAtTheOwnPortAreRefusedAndLeaveNothing() throws Exception {
    try (RehearsalHost host = RehearsalHost.start(HostOptions.local(folder.resolve("room.db")))) {
      OwnCalls.call(host.port(), 3);

      HttpRequest ask =
          HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + host.port() + "/metrics"))
              .build();
      PrometheusText after =
          PrometheusText.read(
              HttpClient.newHttpClient().send(ask, HttpResponse.BodyHandlers.ofString()).body());
      assertThat(after.value("thinclick_rooms")).isZero();
      assertThat(after.value("thinclick_players")).isZero();
    }
  }

  @Test
  void whatTheHostSaysToItselfIsNoMessage() {
    try (RehearsalHost host = RehearsalHost.start(HostOptions.local(folder.resolve("room.db")));
        RawLine line = RawLine.connect(host.port())) {
      line.sendText("{");

      assertThat(line.closeCode()).isEqualTo(CloseCode.MALFORMED.number());
    }
  }
}
