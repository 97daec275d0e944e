package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.AnswerMessage.DrillLine;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.QuestionMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.server.material.Composition;
import thinclick.server.material.Stock;

/** A folder of one's own beside the stock, asked for over a real line. */
class OwnMaterialTest {
  private static final Drill OWN =
      Composition.from(Stock.find("Long threes")).title("Room 12 threes").drill();
  private static final Lesson HOUR =
      new Lesson(
          Lesson.FORMAT,
          Lesson.VERSION,
          "Our hour",
          30,
          List.of(new Lesson.Item("Room 12 threes", 3, "Softly."), item("Ands alone")));

  @TempDir private Path folder;

  private static Lesson.Item item(String drill) {
    return new Lesson.Item(drill, 2, "");
  }

  @Test
  void ownDrillsAndLessonsAreListedBeforeTheStockAndDealtByTitle() throws IOException {
    Files.write(folder.resolve("threes.drill.json"), FileCodec.write(OWN));
    Files.write(folder.resolve("hour.lesson.json"), FileCodec.write(HOUR));
    HostOptions options = HostOptions.local(folder.resolve("room.db")).withMaterial(folder);
    try (RehearsalHost host = RehearsalHost.start(options);
        WireClient leader = WireClient.connect(host.port())) {
      leader.send(new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
      long revision = leader.expect(ServerMessage.Welcome.class).revision();

      leader.send(new QuestionMessage.Browse(1, null));
      AnswerMessage.LibraryList list = leader.expect(AnswerMessage.LibraryList.class);
      assertThat(leader.expect(ServerMessage.Done.class).requestId()).isEqualTo(1);
      assertThat(list.drills().get(0)).isEqualTo(DrillLine.of(OWN, true));
      assertThat(list.drills()).hasSize(Stock.drills().size() + 1);
      assertThat(list.drills().get(1).own()).isNull();
      assertThat(list.lessons()).startsWith(HOUR).hasSize(Stock.lessons().size() + 1);

      leader.send(new QuestionMessage.Browse(2, "room 12 threes"));
      assertThat(leader.expect(AnswerMessage.WholeDrill.class).drill()).isEqualTo(OWN);
      assertThat(leader.expect(ServerMessage.Done.class).requestId()).isEqualTo(2);

      leader.send(new QuestionMessage.Browse(3, "room 12 trees"));
      ServerMessage.Problem problem = leader.expect(ServerMessage.Problem.class);
      assertThat(problem.says()).contains("did you mean \"Room 12 threes\"");
      assertThat(problem.requestId()).isEqualTo(3);

      leader.send(new LeaderCommand.Material(4, revision, null, "Room-12-threes"));
      assertThat(leader.expect(ServerMessage.Done.class).requestId()).isEqualTo(4);
    }
  }

  @Test
  void aWrongFileStopsTheHostInOneLineBeforeItListens() throws IOException {
    Files.writeString(folder.resolve("wrong.drill.json"), "{\"format\": \"thinclick.drill\"}");
    HostOptions options = HostOptions.local(folder.resolve("room.db")).withMaterial(folder);

    assertThatThrownBy(() -> RehearsalHost.start(options))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("wrong.drill.json");
  }
}
