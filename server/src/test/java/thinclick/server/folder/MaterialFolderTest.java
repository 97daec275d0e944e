package thinclick.server.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Lesson;
import thinclick.server.material.Composition;
import thinclick.server.material.Stock;

class MaterialFolderTest {
  @TempDir private Path folder;

  private void drill(String file, String title) throws IOException {
    Files.write(
        folder.resolve(file),
        FileCodec.write(Composition.from(Stock.find("Charleston")).title(title).drill()));
  }

  private void lesson(String drill) throws IOException {
    Files.write(
        folder.resolve("a.lesson.json"),
        FileCodec.write(
            new Lesson(
                Lesson.FORMAT, 1, "Mine", 30, List.of(new Lesson.Item(drill, 2, "Softly.")))));
  }

  @Test
  void onesOwnDrillsAndLessonsStandBesideTheStock() throws IOException {
    drill("a.drill.json", "Kitchen stomp");
    lesson("kitchen-stomp");
    Files.writeString(folder.resolve("notes.txt"), "not a drill");
    MaterialFolder material = MaterialFolder.read(folder);

    assertThat(material.drill("KITCHEN stomp").title()).isEqualTo("Kitchen stomp");
    assertThat(material.drill("long threes")).isEqualTo(Stock.find("Long threes"));
    assertThat(material.drills()).hasSize(Stock.drills().size() + 1);
    assertThat(material.lesson("mine").minutes()).isEqualTo(30);
  }

  @Test
  void onesOwnDrillComesBeforeTheStocksOfThatTitle() throws IOException {
    drill("a.drill.json", "Long threes");
    MaterialFolder material = MaterialFolder.read(folder);

    assertThat(material.drill("long threes").chairs().get(0).cell().attackSteps())
        .containsExactly(0, 3);
    assertThat(material.drills()).hasSameSizeAs(Stock.drills());
  }

  @Test
  void aWrongFileIsRefusedWithItsNameAndPlace() throws IOException {
    Files.writeString(folder.resolve("bad.drill.json"), "{\"format\": \"thinclick.drill\"");
    assertThatThrownBy(() -> MaterialFolder.read(folder))
        .hasMessageContaining("bad.drill.json: byte");

    drill("bad.drill.json", "One");
    drill("other.drill.json", "one");
    assertThatThrownBy(() -> MaterialFolder.read(folder))
        .hasMessageContaining("expected titles only once, found \"one\" twice");
  }

  @Test
  void aLessonOfAnUnknownDrillIsRefused() throws IOException {
    lesson("Long trees");
    assertThatThrownBy(() -> MaterialFolder.read(folder))
        .hasMessageContaining("lesson \"Mine\": drills[0]")
        .hasMessageContaining("\"Long threes\"");
  }

  @Test
  void wordsInADrillFileMustMeanSomething() throws IOException {
    String json =
        new String(
                FileCodec.write(Stock.find("Two-five line")),
                java.nio.charset.StandardCharsets.UTF_8)
            .replace("ii-V-I", "Dm7 | H7");
    Files.writeString(folder.resolve("bad.drill.json"), json);

    assertThatThrownBy(() -> MaterialFolder.read(folder))
        .hasMessageContaining("bad.drill.json: chairs[0].line.progression, bar 2")
        .hasMessageContaining("found \"H7\"");
  }
}
