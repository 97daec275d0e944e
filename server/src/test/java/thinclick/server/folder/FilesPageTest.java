package thinclick.server.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.SeasonFile;

/** What the page on drill and lesson files shows can be put into a folder and used. */
class FilesPageTest {
  private static final Pattern JSON = Pattern.compile("```json\n(.*?)```", Pattern.DOTALL);

  @TempDir private Path folder;

  @Test
  void theExamplesOfThePageAreReadFromAFolder() throws IOException {
    Path page = Path.of("../protocol/FILES.md");
    Matcher examples = JSON.matcher(Files.readString(page));
    for (String name : List.of("one.drill.json", "one.lesson.json")) {
      assertThat(examples.find()).isTrue();
      Files.write(folder.resolve(name), examples.group(1).getBytes(StandardCharsets.UTF_8));
    }
    MaterialFolder material = MaterialFolder.read(folder);
    assertThat(examples.find()).isTrue();
    SeasonFile season = FileCodec.readSeason(examples.group(1).getBytes(StandardCharsets.UTF_8));

    assertThat(material.drill("own-threes").chairs().get(0).cell().grouping()).isEqualTo(3);
    assertThat(material.lesson("own hour").drills()).hasSize(2);
    assertThat(FileCodec.readSeason(FileCodec.writeSeason(season))).isEqualTo(season);
    assertThat(new String(FileCodec.writeSeason(season), StandardCharsets.UTF_8)).hasLineCount(3);
  }
}
