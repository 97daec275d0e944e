package thinclick.server.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;
import thinclick.server.store.Store;
import thinclick.server.words.HardTakes;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class HistoryCommandTest {
  private static final Take TAKE = HardTakes.small();

  @TempDir static Path shared;
  @TempDir Path folder;
  private Path database;

  /** Three takes of one drill and one at another tempo, all reviewed. */
  @BeforeAll
  static void keepFourTakes() {
    Path database = shared.resolve("host.db");
    keep(database, "t1", "2026-09-01T10:00:00Z", TAKE);
    keep(database, "t2", "2026-09-08T10:00:00Z", TAKE);
    keep(database, "t3", "2026-09-22T10:00:00Z", TAKE);
    keep(database, "t4", "2026-09-15T10:00:00Z", atTempo126());
    assertThat(Run.of("history", "--db", database).code()).isZero();
  }

  @BeforeEach
  void copyTheDatabase() throws IOException {
    database = folder.resolve("host.db");
    Files.copy(shared.resolve("host.db"), database);
  }

  @Test
  void takesAreSetSideBySideOnlyAtLikeDrillTempoAndPlan() {
    Run run = history();

    assertThat(run.code()).isZero();
    assertThat(run.out().lines()).allMatch(line -> line.length() < 80);
    assertThat(run.out().replace('\n', ' '))
        .containsSubsequence(
            "Noisy pad at 120, the same click plan: three takes.",
            "Over three weeks nothing changed that can be told from chance.",
            "Next: fewer clicks, same tempo.",
            "t1",
            "t2",
            "t3",
            "Noisy pad at 126, the same click plan: one take.",
            "t4");
    assertThat(run.out())
        .contains("2026-09-01", "no click", "Played ")
        .contains("Fewest clicks held: no click, 2026-09-01.");
  }

  @Test
  void programsReadTheSameAsJson() {
    JsonNode json = JsonMapper.shared().readTree(history("--json").out());

    assertThat(json.get("courses")).hasSize(2);
    JsonNode course = json.at("/courses/0");
    assertThat(course.get("title").stringValue()).isEqualTo("Noisy pad");
    assertThat(course.get("tempo").doubleValue()).isEqualTo(120);
    assertThat(course.get("next").stringValue()).isEqualTo("up");
    assertThat(course.get("takes")).hasSize(3);
    assertThat(course.at("/takes/0/begunAt").stringValue()).isEqualTo("2026-09-01T10:00:00Z");
    assertThat(course.at("/takes/0/hold").doubleValue()).isBetween(90.0, 100.0);
    assertThat(course.at("/takes/0/holdInterval")).hasSize(2);
    JsonNode own = JsonMapper.shared().readTree(history("--json", "--player", "Jonas").out());
    assertThat(own.get("player").stringValue()).isEqualTo("Jonas");
    assertThat(own.at("/courses/0/takes/0/written").intValue()).isEqualTo(32);
    assertThat(own.at("/courses/0").has("next")).isFalse();
  }

  @Test
  void aReviewMadeNowIsKept() {
    keep(database, "t5", "2026-09-29T10:00:00Z", TAKE);
    assertThat(history().out()).contains("four takes");

    try (Store store = open(database, "2026-10-01T10:00:00Z")) {
      assertThat(store.history().join())
          .hasSize(5)
          .allMatch(kept -> kept.review() != null && kept.review().contains("\"words\""));
    }
  }

  @Test
  void onePlayersCourseHasTheirFigures() {
    Run run = history("--player", "Jonas", "--drill", "noisy-pad");

    assertThat(run.out())
        .contains("Jonas, Noisy pad at 120", "Lean", "Dropped")
        .doesNotContain("Mina", "Next:");
  }

  @Test
  void whatWasNeverPlayedIsRefused() {
    assertThat(history("--player", "Zoe"))
        .isEqualTo(new Run(2, "", "--player: expected somebody who played, found \"Zoe\"\n"));
    assertThat(history("--drill", "Push only").err())
        .isEqualTo("--drill: expected a drill that was played, found \"Push only\"\n");
    assertThat(Run.of("history", "--db", folder.resolve("no.db")).err())
        .isEqualTo(
            "--db: expected a host's database, found no file " + folder.resolve("no.db") + "\n");
  }

  @Test
  void aTakeThatIsRemovedIsGone() {
    assertThat(Run.of("take", "remove", "--db", database, "t2").code()).isZero();

    assertThat(history().out()).doesNotContain("t2").contains("two takes");
    assertThat(Run.of("take", "remove", "--db", database, "t2"))
        .isEqualTo(
            new Run(
                2, "", "ID: expected an ended take in " + database + ", found none named t2\n"));
  }

  @Test
  void aPlayerIsRenamedInEveryTakeAndEveryReview() throws IOException {
    Run run = Run.of("take", "rename", "--db", database, "Jonas", "Juna");

    assertThat(run.out()).isEqualTo("Jonas is Juna now, in four takes.\n");
    assertThat(history("--player", "Juna").out()).contains("three takes");
    assertThat(history("--player", "Jonas").code()).isEqualTo(2);
    Path file = folder.resolve("t1.json");
    Run.of("take", "export", "--db", database, "t1", file);
    assertThat(Files.readString(file)).contains("Juna").doesNotContain("Jonas");
    assertThat(FileCodec.readTake(Files.readAllBytes(file)).attacks())
        .hasSameSizeAs(TAKE.attacks());
    history();
    try (Store store = open(database, "2026-10-01T10:00:00Z")) {
      assertThat(store.history().join())
          .hasSize(4)
          .allMatch(kept -> kept.review() != null && !kept.review().contains("Jonas"))
          .allMatch(kept -> kept.review() != null && kept.review().contains("Juna"));
    }
  }

  @Test
  void aNameSomebodyHasIsNotGivenTwice() {
    Run run = Run.of("take", "rename", "--db", database, "Jonas", "Mina");

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .isEqualTo("NEW: expected a name that nobody has, found \"Mina\" in take t1\n");
    assertThat(history("--player", "Jonas").code()).isZero();
  }

  @Test
  void theCourseIsDrawn() throws IOException {
    Path picture = folder.resolve("course.svg");

    assertThat(history("--picture", picture).code()).isZero();
    assertThat(Files.readString(picture))
        .contains("<svg", "three takes")
        .doesNotContain("NaN", "Infinity");
  }

  private Run history(Object... more) {
    Object[] words = new Object[3 + more.length];
    words[0] = "history";
    words[1] = "--db";
    words[2] = database;
    System.arraycopy(more, 0, words, 3, more.length);
    return Run.of(words);
  }

  private static void keep(Path database, String id, String when, Take take) {
    try (Store store = open(database, when)) {
      store.importTake(id, take).join();
    }
  }

  private static Store open(Path database, String when) {
    return Store.open(database, InstantSource.fixed(Instant.parse(when)), available -> {});
  }

  private static Take atTempo126() {
    String json = new String(FileCodec.write(TAKE), StandardCharsets.UTF_8);
    return FileCodec.readTake(
        json.replace("\"tempo\" : 120.0", "\"tempo\" : 126.0").getBytes(StandardCharsets.UTF_8));
  }
}
