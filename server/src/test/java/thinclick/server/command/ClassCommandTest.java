package thinclick.server.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.InstantSource;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.SeasonFile;
import thinclick.protocol.file.Take;
import thinclick.server.host.HostOptions;
import thinclick.server.host.Keeping;
import thinclick.server.host.RehearsalHost;
import thinclick.server.season.Weeks;
import thinclick.server.store.Backups;
import thinclick.server.store.Store;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A class of three over two weeks, kept in a real database. */
class ClassCommandTest {
  private static final String CLASS = "Tuesday class";

  @TempDir static Path shared;
  @TempDir Path folder;
  private Path database;

  @BeforeAll
  static void twoWeeks() {
    Path database = shared.resolve("host.db");
    keep(database, "t1", Weeks.week(0), Weeks.take("Ands alone", 1, spreads("Quirin"), Map.of()));
    keep(database, "t2", Weeks.week(1), Weeks.take("Ands alone", 2, spreads("Quirin"), Map.of()));
    assertThat(Run.of("class", "add", "--db", database, CLASS, "Zoe", "--chair", 4).code())
        .isZero();
    assertThat(Run.of("history", "--class", CLASS, "--db", database).code()).isZero();
  }

  private static Map<String, Double> spreads(String third) {
    Map<String, Double> spreads = new LinkedHashMap<>();
    spreads.put("Mina", 12.0);
    spreads.put("Jonas", 15.0);
    spreads.put(third, 20.0);
    return spreads;
  }

  private static void keep(Path database, String id, Instant when, Take take) {
    try (Store store = Store.open(database, InstantSource.fixed(when), available -> {})) {
      store.importTake(id, take).join();
      store.classes().adopt(store.classes().make(CLASS).join(), id).join();
    }
  }

  @BeforeEach
  void copyTheDatabase() throws IOException {
    database = folder.resolve("host.db");
    Files.copy(shared.resolve("host.db"), database);
  }

  private Run run(Object... words) {
    Object[] all = new Object[words.length + 2];
    System.arraycopy(words, 0, all, 0, words.length);
    all[words.length] = "--db";
    all[words.length + 1] = database;
    return Run.of(all);
  }

  private String history() {
    return run("history", "--class", "tuesday-class").out();
  }

  @Test
  void aClassIsToldInWordsFiguresAndAPicture() throws IOException {
    Path picture = folder.resolve("season.svg");
    Run words = run("history", "--class", "tuesday-class", "--picture", picture);
    JsonNode json = JsonMapper.shared().readTree(run("history", "--class", CLASS, "--json").out());

    assertThat(words.out())
        .contains(
            "Tuesday class: four members, two takes in two weeks.",
            "Missing: Zoe.",
            "Zoe has not played yet.",
            "Ands alone at 88, the same click plan: two takes.");
    assertThat(Files.readString(picture)).contains("Took part", "Quirin");
    assertThat(json.at("/members")).hasSize(4);
    assertThat(json.at("/members/0/level").intValue()).isBetween(1, 10);
    assertThat(run("class", "list").out())
        .startsWith("Tuesday class  one in the list  two takes  last 2026-09-0")
        .contains("kept as long as usual");
    assertThat(run("history", "--class", CLASS, "--player", "Jonas").out())
        .contains("Jonas, Ands alone at 88");
    assertThat(run("history", "--class", "Tusday class").err())
        .startsWith("CLASS: expected a class that there is, found \"Tusday class\"; did you mean");
  }

  @Test
  void aWrongNameAndAWrongSeatArePutRight() {
    assertThat(run("class", "rename", CLASS, "QUIRIN", "Quentin").out())
        .isEqualTo("QUIRIN is Quentin now, in two places.\n");
    assertThat(run("class", "rename", CLASS, "Jonas", "Mina", "--take", "t1").err())
        .startsWith(
            "NEW: expected a name that nobody has, found \"Mina\" in take t1; where the two");
    assertThat(run("class", "swap", CLASS, "t1", "jonas", "Mina").code()).isZero();
    assertThat(run("class", "seat", CLASS, "Quentin", 9).code()).isZero();

    String shown = run("class", "show", CLASS).out();
    assertThat(shown)
        .contains("chair 9  Quentin", "Jonas, Mina, Quentin", "Mina, Jonas, Quentin")
        .doesNotContain("Quirin");
    assertThat(history()).contains("Quentin took part in 2 of 2 weeks");
  }

  @Test
  void aSpoiltTakeIsDropped() {
    assertThat(run("class", "drop-take", CLASS, "t1").code()).isZero();

    assertThat(history()).contains("one take in one week");
    assertThat(run("class", "drop-take", CLASS, "t1").err())
        .isEqualTo("TAKE: expected an ended take of the class, found none named t1\n");
  }

  @Test
  void aSeasonIsOpenedElsewhereAndASecondTimeChangesNothing() throws IOException {
    Path file = folder.resolve("tuesday.season.json");
    assertThat(run("class", "save", CLASS, file).code()).isZero();
    Path other = folder.resolve("other.db");
    Run.of("class", "add", "--db", other, CLASS, "mina", "--chair", 3);

    Run once = Run.of("class", "open", "--db", other, file);
    Run twice = Run.of("class", "open", "--db", other, file);

    assertThat(once.out())
        .isEqualTo(
            """
            Tuesday class: two takes taken in, none here already, three names written into the list.
            mina: here chair 3; in the file chair 1. What is here stays.
            """);
    assertThat(twice.out())
        .startsWith("Tuesday class: no takes taken in, two here already, no names");
    String here = history();
    String there = Run.of("history", "--class", CLASS, "--db", other).out();
    assertThat(there)
        .contains("mina took part in 2 of 2 weeks", here.substring(here.indexOf("Played ")));
  }

  @Test
  void aSeasonThatIsWrongIsRefusedWhole() throws IOException {
    Path file = folder.resolve("tuesday.season.json");
    run("class", "save", CLASS, file);
    String json = Files.readString(file);
    Path other = folder.resolve("other.db");
    Files.writeString(
        file, json.replaceFirst("\"review\":\\{\"players\"", "\"review\":{\"musicians\""));
    assertThat(Run.of("class", "open", "--db", other, file).err())
        .contains("takes[0].review: expected a review, found another object")
        .hasLineCount(1);
    Files.writeString(file, json.replace("\"chair\":4", "\"chair\":0"));
    assertThat(Run.of("class", "open", "--db", other, file).err())
        .contains("chair: expected 1 to 24, found 0")
        .hasLineCount(1);
    assertThat(Run.of("class", "list", "--db", other).out()).isEmpty();
  }

  /** In the database, its log, a backup, an exported take, a season and a table beside it. */
  @Test
  void erasedNameIsInNoFileOfTheHostAndTheClassIsWhole() throws IOException {
    Path backups = everywhere();
    assertThat(holding("Quirin")).hasSize(5);

    Run run = run("erase", "QUIRIN", "--backups", backups);

    assertThat(run.code()).isZero();
    assertThat(run.out())
        .contains(
            "host.db: name replaced in 2 takes (t1, t2), 2 stored reviews deleted",
            "t1.take.json: written again without the name",
            "tuesday.season.json: written again without the name",
            "t1.csv: names somebody still",
            "Erasing here does not reach:")
        .doesNotContain("masks.txt");
    assertThat(holding("Quirin")).containsExactly("t1.csv");
    assertThat(history())
        .contains("three members, two takes in two weeks", "Mina took part")
        .doesNotContain("Quirin", "Somebody");
    SeasonFile season =
        FileCodec.readSeason(Files.readAllBytes(folder.resolve("tuesday.season.json")));
    assertThat(season.members()).extracting(SeasonFile.Member::name).doesNotContain("Quirin");
    assertThat(season.takes()).hasSize(2);
  }

  @Test
  void erasedClassIsGoneWithItsTakesAndFiles() throws IOException {
    Path backups = everywhere();
    Files.delete(folder.resolve("t1.csv"));

    Run run = run("erase", "--class", "tuesday class", "--backups", backups);

    assertThat(run.out())
        .contains(
            "host.db: 2 takes deleted, 2 stored reviews deleted, 1 entry in lists of classes deleted",
            "t1.take.json: deleted",
            "tuesday.season.json: deleted");
    for (String name : new String[] {"Quirin", "Mina", "Jonas", "Zoe", CLASS}) {
      assertThat(holding(name)).as(name).isEmpty();
    }
    assertThat(run("class", "list").out()).isEmpty();
    assertThat(run("take", "list").out()).isEmpty();
    assertThat(run("erase", "--class", CLASS).err())
        .isEqualTo("--class: expected a class that there is, found \"Tuesday class\"\n");
  }

  private Path everywhere() throws IOException {
    Path backups = Files.createDirectory(folder.resolve("backups"));
    new Backups(database, backups, InstantSource.fixed(Instant.EPOCH)).make();
    run("take", "export", "t1", folder.resolve("t1.take.json"));
    run("class", "save", CLASS, folder.resolve("tuesday.season.json"));
    Files.writeString(folder.resolve("t1.csv"), "player,hold\nQuirin,91\n");
    Files.writeString(folder.resolve("masks.txt"), "harlequirin"); // the name is in it, no person
    return backups;
  }

  private List<String> holding(String name) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files
          .filter(Files::isRegularFile)
          .filter(file -> text(file).contains(name))
          .map(file -> file.getFileName().toString())
          .toList();
    }
  }

  private static String text(Path file) {
    try {
      return new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
    } catch (IOException gone) {
      return "";
    }
  }

  /** Fourteen months after the first take; the class with the second says three years. */
  @Test
  void whatIsKeptLongEnoughIsDeletedAtTheStartUnlessTheLeaderSaysOtherwise() throws IOException {
    keep(database, "t3", Weeks.week(60), Weeks.take("Push only", 3, spreads("Quirin"), Map.of()));
    try (Store store = Store.open(database, InstantSource.fixed(Weeks.FIRST), available -> {})) {
      store.importTake("old", Weeks.take("Push only", 4, spreads("Ulfila"), Map.of())).join();
    }
    Path kept = Files.copy(database, folder.resolve("kept.db"));
    Path backups = Files.createDirectory(folder.resolve("backups"));
    Path copy = new Backups(database, backups, InstantSource.fixed(Instant.EPOCH)).make();
    Path keptBackups = Files.createDirectory(folder.resolve("keptBackups"));
    Path keptCopy = new Backups(kept, keptBackups, InstantSource.fixed(Instant.EPOCH)).make();
    Files.writeString(backups.resolve("thinclick-noise.db"), "no database");
    Run.of("class", "keep", "--db", kept, CLASS, 36); // the copy knows nothing of that
    Keeping keeping = new Keeping(InstantSource.fixed(Weeks.week(61)), Keeping.USUAL_MONTHS);
    assertThat(holding("Ulfila")).contains(String.valueOf(copy.getFileName()), "kept.db");

    try (RehearsalHost host =
        RehearsalHost.start(HostOptions.local(database).keeping(keeping).backedUp(backups, 24))) {
      assertThat(host.history()).extracting(entry -> entry.id()).containsExactly("t3");
    }
    try (RehearsalHost host =
        RehearsalHost.start(HostOptions.local(kept).keeping(keeping).backedUp(keptBackups, 24))) {
      assertThat(host.classes().season(CLASS).takes()).hasSize(3);
      assertThat(host.history()).extracting(entry -> entry.id()).doesNotContain("old");
    }
    assertThat(holding("Ulfila")).as("in the databases and their backups").isEmpty();
    assertThat(takes(copy)).containsExactly("t3");
    assertThat(takes(keptCopy)).containsExactly("t1", "t2", "t3");
    assertThat(run("class", "keep", CLASS, -1).err())
        .isEqualTo("MONTHS: expected 0 to 1200, found -1\n");
  }

  /** Three copies: from before, from after, and one in which the take was still running. */
  @Test
  void whatIsDroppedGoesFromTheBackupsWhenAHostGoesThroughThem() throws IOException {
    keep(database, "t3", Weeks.week(2), Weeks.take("Push only", 3, spreads("Ulfila"), Map.of()));
    keep(database, "t4", Weeks.week(2), Weeks.take("Push only", 4, spreads("Mina"), Map.of()));
    Path backups = Files.createDirectory(folder.resolve("backups"));
    Path before = new Backups(database, backups, InstantSource.fixed(Instant.EPOCH)).make();
    Path running = Files.copy(before, backups.resolve("thinclick-1970-01-02T00-00-00Z.db"));
    sql(running, "UPDATE take SET ended = NULL, end_micros = NULL WHERE id = 't3'");
    Path noBackups = Files.copy(before, folder.resolve("elsewhere.db"));

    assertThat(run("class", "drop-take", CLASS, "t3").out())
        .isEqualTo(
            "t3 is dropped. A host that makes backups (serve --backup-to) drops it from them at its"
                + " start and once a day.\n");
    assertThat(run("take", "remove", "t2").out()).startsWith("t2 is dropped. A host that makes");
    assertThat(run("class", "drop-take", CLASS, "none").out()).isEmpty();
    assertThat(holding("Ulfila")).contains(String.valueOf(before.getFileName()));
    Keeping forEver = new Keeping(InstantSource.fixed(Weeks.week(3)), 0);
    try (RehearsalHost host =
        RehearsalHost.start(HostOptions.local(database).keeping(forEver).backedUp(backups, 24))) {
      assertThat(host.history()).extracting(entry -> entry.id()).containsExactly("t1", "t4");
    }

    assertThat(takes(before)).containsExactly("t1", "t4");
    assertThat(takes(running)).containsExactly("t1", "t4");
    assertThat(takes(noBackups)).as("no backup of this host").hasSize(4);
    assertThat(holding("Ulfila")).containsExactly("elsewhere.db");
  }

  /** Dropped and taken in again from a season, a take is kept, here and in the backups. */
  @Test
  void droppedTakeThatIsHereAgainStaysInTheBackups() throws IOException {
    Path season = folder.resolve("tuesday.season.json");
    run("class", "save", CLASS, season);
    Path backups = Files.createDirectory(folder.resolve("backups"));
    Path copy = new Backups(database, backups, InstantSource.fixed(Instant.EPOCH)).make();
    run("class", "drop-take", CLASS, "t1");
    run("class", "open", season);
    Keeping forEver = new Keeping(InstantSource.fixed(Weeks.week(3)), 0);

    RehearsalHost.start(HostOptions.local(database).keeping(forEver).backedUp(backups, 24)).close();

    assertThat(takes(copy)).containsExactly("t1", "t2");
    assertThat(takes(database)).containsExactlyInAnyOrder("t1", "t2");
  }

  private static void sql(Path database, String statement) {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
        Statement doing = connection.createStatement()) {
      doing.executeUpdate(statement);
    } catch (SQLException problem) {
      throw new AssertionError(problem);
    }
  }

  private static List<String> takes(Path database) {
    try (Store store = Store.open(database, InstantSource.system(), available -> {})) {
      return store.takes().join().stream().map(Store.TakeLine::id).toList();
    }
  }
}
