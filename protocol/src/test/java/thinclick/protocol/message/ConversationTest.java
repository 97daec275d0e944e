package thinclick.protocol.message;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The recorded conversation that the description of the wire quotes. */
class ConversationTest {
  private static final Path RECORDED = Path.of("src/test/resources/conversation/1.txt");

  @Test
  void everyLineIsReadAndTheTakeIsWhole() throws Exception {
    List<Class<?>> said = new ArrayList<>();
    List<Class<?>> told = new ArrayList<>();
    for (String line : Files.readAllLines(RECORDED)) {
      if (line.startsWith("> ")) {
        said.add(MessageCodec.readClient(line.substring(2)).getClass());
      } else {
        told.add(MessageCodec.readServer(line.substring(2)).getClass());
      }
    }
    assertThat(said)
        .containsSubsequence(
            ClientMessage.Join.class,
            PreparingMessage.Clock.class,
            PreparingMessage.Ready.class,
            TakeMessage.Attacks.class,
            ClientMessage.Join.class,
            TakeMessage.Attacks.class,
            TakeMessage.Lengths.class,
            TakeMessage.PlayedThrough.class,
            QuestionMessage.AskCourse.class);
    assertThat(told)
        .containsSubsequence(
            ServerMessage.Welcome.class,
            ServerMessage.Dealt.class,
            TakeNews.Announced.class,
            ServerMessage.Welcome.class,
            TakeNews.Stored.class,
            TakeNews.Stopped.class,
            TakeNews.LengthsStored.class,
            TakeNews.ReviewReady.class,
            AnswerMessage.CourseSoFar.class,
            ServerMessage.Done.class);
  }

  @Test
  void theDescriptionQuotesIt() throws Exception {
    String readme = Files.readString(Path.of("README.md"));
    assertThat(Files.readAllLines(RECORDED).stream().filter(line -> line.length() <= 200))
        .isNotEmpty()
        .allMatch(readme::contains);
  }
}
