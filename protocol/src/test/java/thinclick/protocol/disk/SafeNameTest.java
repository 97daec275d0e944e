package thinclick.protocol.disk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.json.BadInput;

/** Titles and ids that would lead elsewhere as file names. */
class SafeNameTest {
  private static final byte[] CONTENT = "a review".getBytes(StandardCharsets.UTF_8);

  @TempDir Path place;
  private Path folder;

  @BeforeEach
  void folder() throws IOException {
    folder = Files.createDirectory(place.resolve("exports"));
  }

  private void nothingElsewhere(String... besides) throws IOException {
    try (Stream<Path> files = Files.list(place)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .containsExactlyInAnyOrder(
              Stream.concat(Stream.of("exports"), Stream.of(besides)).toArray(String[]::new));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "'Threes over a blues', thinclick-threes-over-a-blues",
    "'../../etc/passwd', thinclick-etc-passwd",
    "'..\\..\\Windows\\system32', thinclick-windows-system32",
    "'/etc/cron.d/x', thinclick-etc-cron-d-x",
    "'C:\\autoexec.bat', thinclick-c-autoexec-bat",
    "'a\u0000b', thinclick-a-b",
    "'a\n\u001b[31mb', thinclick-a-31mb",
    "'\u202efdp.exe', thinclick-fdp-exe",
    "'CON', thinclick-con",
    "'nul.txt', thinclick-nul-txt",
    "'COM1', thinclick-com1",
    "'file:stream', thinclick-file-stream",
    "'.hidden', thinclick-hidden",
    "'~root', thinclick-root",
    "'-rf', thinclick-rf",
    "'$(reboot)', thinclick-reboot",
    "'...', thinclick",
    "'\u304a\u3068', thinclick",
    "'', thinclick"
  })
  void titleIsAStemThatEverySystemTakes(String title, String stem) throws IOException {
    assertThat(SafeName.stem(title)).isEqualTo(stem);
    Path file = SafeName.write(folder, title, "pdf", CONTENT);

    assertThat(file)
        .isEqualTo(folder.toRealPath().resolve(stem + ".pdf"))
        .hasBinaryContent(CONTENT);
    nothingElsewhere();
  }

  @Test
  void longTitleIsCut() throws IOException {
    Path file = SafeName.write(folder, "x".repeat(5_000), "pdf", CONTENT);

    assertThat(file.getFileName().toString()).hasSizeLessThan(80);
  }

  @Test
  void whatIsThereIsNeverWrittenOver() throws IOException {
    Path there = Files.writeString(folder.resolve("thinclick-ands.pdf"), "mine");
    Path file = SafeName.write(folder, "Ands", "pdf", CONTENT);

    assertThat(there).hasContent("mine");
    assertThat(file.getFileName()).hasToString("thinclick-ands-2.pdf");
  }

  @Test
  void linkInItsPlaceIsNotFollowedEvenWhereItLeadsNowhere() throws IOException {
    Path victim = place.resolve("victim");
    link(folder.resolve("thinclick-ands.pdf"), victim);
    Path file = SafeName.write(folder, "Ands", "pdf", CONTENT);

    assertThat(victim).doesNotExist();
    assertThat(file.getFileName()).hasToString("thinclick-ands-2.pdf");
    nothingElsewhere();
  }

  @Test
  void folderThatIsALinkIsWrittenWhereItLeadsAndSaid() throws IOException {
    Path elsewhere = Files.createDirectory(place.resolve("elsewhere"));
    link(place.resolve("shortcut"), elsewhere);
    Path file = SafeName.write(place.resolve("shortcut"), "../Ands", "pdf", CONTENT);

    assertThat(file).isEqualTo(elsewhere.toRealPath().resolve("thinclick-ands.pdf"));
    nothingElsewhere("elsewhere", "shortcut");
  }

  private static void link(Path from, Path to) throws IOException {
    try {
      Files.createSymbolicLink(from, to);
    } catch (UnsupportedOperationException none) {
      assumeThat(none).as("links").isNull();
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "..", "../x", "a/b", "a\\b", "CON", "a.b", "-x", "a\u0000", "a b", "\u00e9"})
  void idsOfOthersThatAreNoneAreRefused(String id) {
    assertThatThrownBy(() -> SafeName.ofId(folder, id, "svg")).isInstanceOf(BadInput.class);
  }

  @Test
  void idOfOursIsTheName() {
    assertThat(SafeName.ofId(folder, "bl42stjbur3nr", "svg"))
        .isEqualTo(folder.resolve("bl42stjbur3nr.svg"));
  }
}
