package thinclick.server.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;
import thinclick.server.words.HardTakes;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class ReviewCommandTest {
  @TempDir Path folder;
  private Path file;
  private Take take;

  @BeforeEach
  void writeATake() throws IOException {
    take = HardTakes.small();
    file = folder.resolve("take.json");
    Files.write(file, FileCodec.write(take));
  }

  @Test
  void proseComesFirstAndTablesAfterInUnder80Columns() {
    Run run = Run.of("review", file);

    assertThat(run.code()).isZero();
    assertThat(run.out().lines()).allMatch(line -> line.length() < 80);
    assertThat(run.out()).containsSubsequence("Held together: ", "Next: ", "Bars ", "Player ");
    assertThat(run.out()).doesNotContain("\t", "NaN", "null");
  }

  @Test
  void jsonHasTheFiguresAndTheWords() {
    JsonNode json = JsonMapper.builder().build().readTree(Run.of("review", "--json", file).out());

    assertThat(json.at("/players/0/player").stringValue()).isEqualTo("Mina");
    assertThat(json.at("/ensemble/hold").isNumber()).isTrue();
    assertThat(json.at("/words/0/says").stringValue()).startsWith("Held together: ");
  }

  @Test
  void aPlayersJsonHasNobodyElsesFigures() {
    Run run = Run.of("review", "--json", "--player", "Jonas", file);

    assertThat(run.out()).contains("Jonas").doesNotContain("Mina", "Ilse", "Tariq");
  }

  @Test
  void aSlipIsForOnePlayer() {
    Run run = Run.of("review", "--player", "Jonas", file);

    assertThat(run.out()).startsWith("Jonas, Noisy pad: ").doesNotContain("Mina", "Ilse");
  }

  @Test
  void csvHasARowForEveryAttack() {
    List<String> rows = Run.of("review", "--csv", file).out().lines().toList();

    assertThat(rows).hasSize(1 + take.attacks().size());
    assertThat(rows.get(0)).startsWith("player,micros,fromBarOneMillis,kind,writtenStep");
    assertThat(rows).allMatch(row -> row.chars().filter(c -> c == ',').count() == 11);
    assertThat(rows).anyMatch(row -> row.contains(",setAside,"));
  }

  @Test
  void aPictureIsWrittenBesideThePage() throws IOException {
    Path picture = folder.resolve("review.svg");
    Run run = Run.of("review", file, "--picture", picture);

    assertThat(run.out()).isEqualTo(Run.of("review", file).out());
    assertThat(Files.readString(picture)).contains("<svg", "<desc>Held together: ");
    assertThat(Run.of("review", file, "--picture", picture))
        .isEqualTo(
            new Run(
                2,
                "",
                picture
                    + ": expected no file of this name, found one; --replace writes over it\n"));
    assertThat(Run.of("review", file, "--picture", picture, "--replace").code()).isZero();
  }

  @Test
  void aPictureIsSvgPngOrPdf() {
    assertThat(Run.of("review", file, "--picture", "review.gif").err())
        .isEqualTo("--picture: expected a file ending in .svg, .png or .pdf, found review.gif\n");
  }

  @Test
  void aPlayerNobodyKnowsIsAnsweredWithTheNames() {
    assertThat(Run.of("review", file, "--player", "Zoe"))
        .isEqualTo(
            new Run(2, "", "--player: expected one of Mina, Jonas, Ilse, Tariq, found \"Zoe\"\n"));
  }

  @Test
  void twoTakesOfOneDrillAreCompared() throws IOException {
    Path second = folder.resolve("second.json");
    Files.write(second, FileCodec.write(take));
    Run run = Run.of("review", file, second);

    assertThat(run.code()).isZero();
    assertThat(run.out())
        .startsWith("Noisy pad at 120, the same click plan. No figure can be told apart")
        .contains("hold: the band", "spread: Tariq");
    assertThat(run.out().lines()).allMatch(line -> line.length() < 80);
  }

  @Test
  void takesThatDifferInDrillTempoOrPlanAreNotCompared() throws IOException {
    Path second = folder.resolve("second.json");
    String json = new String(FileCodec.write(take), StandardCharsets.UTF_8);

    Files.writeString(second, json.replace("\"tempo\" : 120.0", "\"tempo\" : 121.0"));
    assertThat(Run.of("review", file, second).err())
        .isEqualTo(
            second
                + ": tempo: expected 120, found 121; takes are compared only at the same drill, tempo and click plan\n");

    Files.writeString(second, json.replace("\"Noisy pad\"", "\"Quiet pad\""));
    assertThat(Run.of("review", file, second).err()).contains("title: expected \"Noisy pad\"");

    Files.write(second, FileCodec.write(HardTakes.allDrag()));
    assertThat(Run.of("review", file, second).code()).isEqualTo(2);
  }

  @Test
  void optionsThatDoNotGoTogetherAreRefused() {
    assertThat(Run.of("review", file, "--json", "--csv").err())
        .isEqualTo("--csv: expected either --json or --csv, found both\n");
    assertThat(Run.of("review", file, file, "--json").err())
        .isEqualTo("--json: expected one take, found two\n");
    assertThat(Run.of("review", file, "--player", "Mina", "--picture", "all.pdf").err())
        .isEqualTo("--picture: expected without --player, as it shows everybody; found both\n");
    assertThat(Run.of("review").code()).isEqualTo(2);
    assertThat(Run.of("review", file, file, file).err())
        .isEqualTo("TAKE: expected one take or two, found 3\n");
  }

  @Test
  void theReviewIsSaidInTheLanguageAskedFor() {
    String page = Run.of("review", file, "--language", "de").out();

    assertThat(page).contains("Gehalten: ", "Als Nächstes: ", "Streuung");
    assertThat(page.lines()).allMatch(line -> line.length() < 80);
    assertThat(Run.of("review", file, "--language", "de", "--player", "Jonas").out())
        .contains("Bei dir sitzen 32 von 32 Noten, bei einer Streuung");
    assertThat(Run.of("review", file, file, "--language", "de").out()).contains("Streuung: Jonas");
    assertThat(Run.of("review", file, "--language", "fr"))
        .isEqualTo(new Run(2, "", "--language: expected en or de, found \"fr\"\n"));
  }

  @Test
  void aMissingTakeIsNamed() {
    assertThat(Run.of("review", folder.resolve("no.json")))
        .isEqualTo(new Run(2, "", folder.resolve("no.json") + ": expected a file, found none\n"));
  }
}
