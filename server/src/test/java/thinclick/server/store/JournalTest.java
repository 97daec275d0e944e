package thinclick.server.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.awaitility.Awaitility;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.slf4j.LoggerFactory;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Span;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.TakeMessage.AttackLength;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews.StopReason;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;
import thinclick.server.room.JournalEntry;
import thinclick.server.room.RoomJournal;
import thinclick.server.room.RoomJournal.Outcome;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;
import tools.jackson.databind.JsonNode;

class JournalTest {
  private static final Take WRITTEN =
      new Take(
          Take.FORMAT,
          Take.VERSION,
          "Ands",
          Meter.FOUR_FOUR,
          120,
          2,
          Swing.STRAIGHT,
          1_000_000,
          50.0,
          List.of(Stage.ofBeats(2, 1, 1)),
          List.of(Part.of("Mina", 0, List.of(1, 3)), Part.of("Jonas", 0, List.of(0, 2))),
          List.of(),
          null,
          List.of());

  /** Another writer is waited for no longer: the disk is at fault soon. */
  private static final int BUSY_MILLIS = 50;

  @TempDir Path folder;
  private final List<Boolean> availability = new CopyOnWriteArrayList<>();
  private Path file;
  private Store store;
  private RoomJournal journal;
  private long epoch;

  @BeforeEach
  void takeHasBegun() {
    file = folder.resolve("room.db");
    store =
        Store.over(
            Database.open(file, BUSY_MILLIS),
            InstantSource.system(),
            StoreLoop.COMMIT_GAP_NANOS,
            availability::add);
    journal = store.journal();
    epoch = journal.open("room", "balumidore").join().epoch();
    append(new JournalEntry.TakeBegun("t1", WRITTEN, Map.of("p1", "Mina", "p2", "Jonas")));
  }

  @AfterEach
  void close() {
    store.close();
  }

  private Outcome append(JournalEntry entry) {
    return journal.append("room", epoch, entry).join();
  }

  private Outcome played(String player, long firstSeq, long... micros) {
    List<WireAttack> attacks = new ArrayList<>();
    for (long at : micros) {
      attacks.add(WireAttack.tap(at));
    }
    return append(new JournalEntry.Played("t1", player, firstSeq, attacks));
  }

  private Take take() {
    return store.take("t1").join().orElseThrow();
  }

  @Nested
  class Attacks {
    @Test
    void areStoredAndASecondTimeTheyAreDuplicates() {
      assertThat(played("p1", 1, 1_250_000, 1_750_000)).isEqualTo(new Outcome.Stored());
      assertThat(played("p1", 1, 1_250_000, 1_750_000)).isEqualTo(new Outcome.Duplicate());
      assertThat(take().attacks())
          .containsExactly(Attack.tap("Mina", 1_250_000), Attack.tap("Mina", 1_750_000));
    }

    @Test
    void ofTwoContentsUnderOneNumberTheFirstStays() {
      played("p1", 1, 1_250_000);
      assertThat(played("p1", 1, 1_260_000, 1_750_000))
          .isEqualTo(new Outcome.Conflict(List.of(1L)));
      assertThat(take().attacks())
          .containsExactly(Attack.tap("Mina", 1_250_000), Attack.tap("Mina", 1_750_000));
    }

    @Test
    void keepEverythingThatWasSent() {
      WireAttack attack = new WireAttack(1_250_000, 1_260_000L, 96, 60, 110.5, 2.25, true);
      append(new JournalEntry.Played("t1", "p1", 1, List.of(attack)));

      assertThat(append(new JournalEntry.Played("t1", "p1", 1, List.of(attack))))
          .isEqualTo(new Outcome.Duplicate());
      assertThat(take().attacks())
          .containsExactly(new Attack("Mina", 1_250_000, 96, 60, 110.5, 2.25, false, true));
    }

    @Test
    void getTheirLengthOnceTheyAreReleasedAndTheFirstOneStays() {
      played("p1", 1, 1_250_000, 1_750_000);
      assertThat(held(2, 110.5)).isEqualTo(new Outcome.Stored());
      assertThat(held(2, 110.5)).isEqualTo(new Outcome.Duplicate());
      assertThat(held(2, 90)).isEqualTo(new Outcome.Duplicate());
      assertThat(held(9, 90)).as("no such attack").isEqualTo(new Outcome.Duplicate());

      assertThat(take().attacks())
          .containsExactly(
              Attack.tap("Mina", 1_250_000),
              new Attack("Mina", 1_750_000, null, null, 110.5, null, false, false));
      assertThat(played("p1", 1, 1_250_000, 1_750_000))
          .as("an attack sent again, as it was first sent, without its length")
          .isEqualTo(new Outcome.Duplicate());
    }

    private Outcome held(long seq, double millis) {
      return append(new JournalEntry.Lengths("t1", "p1", List.of(new AttackLength(seq, millis))));
    }

    @Test
    void ofTwoPlayersShareNumbers() {
      assertThat(played("p1", 1, 1_250_000)).isEqualTo(new Outcome.Stored());
      assertThat(played("p2", 1, 1_000_000)).isEqualTo(new Outcome.Stored());
    }

    @Test
    void ofAnEarlierEpochAreFencedAndNotWritten() {
      long newer = journal.open("room", "balumidore").join().epoch();

      assertThat(newer).isEqualTo(epoch + 1);
      assertThat(played("p1", 1, 1_250_000)).isEqualTo(new Outcome.Fenced());
      assertThat(take().attacks()).isEmpty();
    }

    @Test
    void areFencedWhereAnotherProcessHasOpenedTheRoomSince() {
      assertThat(played("p1", 1, 1_250_000)).isEqualTo(new Outcome.Stored());
      try (Store other = Store.open(file, InstantSource.system(), availability::add)) {
        other.journal().open("room", "balumidore").join();
      }
      assertThat(played("p1", 2, 1_750_000)).isEqualTo(new Outcome.Fenced());
      assertThat(take().attacks()).hasSize(1);
    }

    @Test
    void ofAnUnknownPlayerAreRefusedAndTheOthersOfTheGroupAreStored() {
      CompletableFuture<Outcome> wrong =
          journal.append(
              "room",
              epoch,
              new JournalEntry.Played("t1", "nobody", 1, List.of(WireAttack.tap(1))));
      CompletableFuture<Outcome> right =
          journal.append(
              "room", epoch, new JournalEntry.Played("t1", "p1", 1, List.of(WireAttack.tap(1))));

      assertThat(wrong.join()).isInstanceOf(Outcome.Refused.class);
      assertThat(right.join()).isEqualTo(new Outcome.Stored());
    }

    @Test
    void keepTheirNumbersForANewOpener() {
      played("p1", 1, 1_250_000, 1_350_000);
      played("p1", 4, 1_750_000);
      append(new JournalEntry.State(Rooms.withTake(WRITTEN)));

      RoomJournal.Opened opened = journal.open("room", "balumidore").join();

      assertThat(opened.state()).isEqualTo(Rooms.withTake(WRITTEN));
      assertThat(opened.takes())
          .isEqualTo(
              Map.of(
                  "t1", new RoomJournal.StoredTake(Map.of("p1", List.of(1L, 2L, 4L)), 1_750_000L)));
    }
  }

  @Nested
  class TheTake {
    @Test
    void thatFinishedHasNoEnd() {
      append(new JournalEntry.TakeEnded("t1", 5_000_000, StopReason.FINISHED));

      assertThat(take()).isEqualTo(WRITTEN);
    }

    @ParameterizedTest
    @EnumSource(
        value = StopReason.class,
        names = {"LEADER", "HOST", "CLOCK"})
    void thatWasStoppedEndsThere(StopReason reason) {
      append(new JournalEntry.TakeEnded("t1", 2_000_000, reason));

      assertThat(take().endMicros()).isEqualTo(2_000_000);
    }

    @Test
    void thatWasInterruptedEndsHalfAStepAfterItsLastAttack() {
      append(new JournalEntry.TakeEnded("t1", 1_000_000, StopReason.INTERRUPTED));
      played("p1", 1, 1_750_000);

      assertThat(take().endMicros()).isEqualTo(1_875_000);
    }

    @Test
    void knowsWhoWasAwayButNotWhoPlayedOnWhileCutOff() {
      append(new JournalEntry.Away("t1", "p1", new Span(1_200_000, 2_000_000)));
      append(new JournalEntry.Away("t1", "p2", new Span(1_200_000, 2_000_000)));
      played("p2", 1, 1_500_000);

      assertThat(take().parts())
          .extracting(Part::away)
          .containsExactly(List.of(new Span(1_200_000, 2_000_000)), List.of());
    }

    @Test
    void takesATapAsTheComputerFellAsleepOrWokeForTheEndOfBeingAway() {
      append(new JournalEntry.Away("t1", "p2", new Span(1_200_000, 9_200_000)));
      played("p2", 1, 1_300_000);
      played("p2", 2, 8_900_000);

      assertThat(take().parts())
          .extracting(Part::away)
          .containsExactly(List.of(), List.of(new Span(1_300_001, 8_900_000)));
    }

    @Test
    void thatTheLastStateDoesNotKnowIsInterruptedWhenTheRoomIsOpened() {
      append(new JournalEntry.State(Rooms.empty()));
      journal.open("room", "balumidore").join();

      assertThat(store.takes().join())
          .extracting(Store.TakeLine::ended)
          .containsExactly("interrupted");
    }

    @Test
    void keepsANameThatWasPutRightWhateverAnOpenRoomStillWritesOfIt() {
      append(new JournalEntry.TakeEnded("t1", 9_000_000, StopReason.LEADER));
      JsonNode before = Spoken.of(Scorer.analyse(take()), Speaker.english()).toJson();
      append(new JournalEntry.Reviewed("t1", true, before));
      assertThat(store.history().join().get(0).review()).contains("Mina");
      assertThat(store.renamePlayer("Mina", "Minna").join().takes()).isEqualTo(1);

      append(new JournalEntry.Rewritten("t1", WRITTEN.withParts(WRITTEN.parts())));
      append(new JournalEntry.Reviewed("t1", false, before));
      assertThat(take().parts()).extracting(Part::player).containsExactly("Minna", "Jonas");
      assertThat(store.history().join().get(0).review())
          .as("a review of the old names is to be made anew")
          .isNull();
      JsonNode after = Spoken.of(Scorer.analyse(take()), Speaker.english()).toJson();
      append(new JournalEntry.Reviewed("t1", false, after));
      assertThat(store.history().join().get(0).review()).contains("Minna");
      append(new JournalEntry.Renamed("t1", "MINNA", "Mina"));
      assertThat(take().parts()).extracting(Part::player).containsExactly("Mina", "Jonas");
    }

    @Test
    void fromAFileComesOutAsItWas() {
      Take whole =
          WRITTEN.withAttacks(
              List.of(
                  new Attack("Jonas", -5, 96, 60, 110.5, null, true, false),
                  Attack.tap("Mina", 1_250_000)));
      store.importTake("file1", whole).join();

      assertThat(store.take("file1").join()).contains(whole);
    }
  }

  @Nested
  class TheDisk {
    @Test
    void thatCannotBeWrittenHoldsTheAcknowledgementUntilItCan() throws Exception {
      CompletableFuture<Outcome> held;
      try (var other = Jdbi.create("jdbc:sqlite:" + file).open()) {
        other.execute("PRAGMA busy_timeout = 0");
        other.execute("BEGIN IMMEDIATE"); // another writer keeps the database for itself
        held =
            journal.append(
                "room",
                epoch,
                new JournalEntry.Played("t1", "p1", 1, List.of(WireAttack.tap(1_250_000))));
        Awaitility.await().atMost(20, TimeUnit.SECONDS).until(() -> availability.contains(false));
        assertThat(held).isNotDone();
        other.execute("ROLLBACK");
      }
      assertThat(held.get(20, TimeUnit.SECONDS)).isEqualTo(new Outcome.Stored());
      assertThat(availability).containsExactly(false, true);
      assertThat(take().attacks()).hasSize(1);
      assertThat(store.refusals()).as("SQLITE_BUSY may pass").isZero();
    }

    @Test
    void isWrittenOnceAlthoughWhoeverIsToldOfItIsGone() throws Exception {
      List<Boolean> told = new CopyOnWriteArrayList<>();
      Consumer<Boolean> gone =
          available -> {
            told.add(available);
            throw new RejectedExecutionException("the host is going");
          };
      try (StoreLoop loop = new StoreLoop(Database.open(file, BUSY_MILLIS), 0, gone)) {
        loop.submit(session -> session.handle.execute("CREATE TABLE tally (n)")).join();
        CompletableFuture<Integer> held;
        try (var other = Jdbi.create("jdbc:sqlite:" + file).open()) {
          other.execute("BEGIN IMMEDIATE");
          held = loop.submit(session -> session.handle.execute("INSERT INTO tally VALUES (1)"));
          Awaitility.await().atMost(20, TimeUnit.SECONDS).until(() -> told.contains(false));
          other.execute("ROLLBACK");
        }
        assertThat(held.get(20, TimeUnit.SECONDS)).isEqualTo(1);
        assertThat(told).containsExactly(false, true);
        assertThat(
                loop.submit(
                        session ->
                            session
                                .handle
                                .createQuery("SELECT count(*) FROM tally")
                                .mapTo(Integer.class)
                                .one())
                    .join())
            .isEqualTo(1);
      }
    }

    @Test
    void isWrittenAlthoughWhoeverWaitedForRoomIsGone() throws Exception {
      CountDownLatch full = new CountDownLatch(1);
      AtomicInteger called = new AtomicInteger();
      try (StoreLoop loop = new StoreLoop(Database.open(file), 0, availability::add)) {
        loop.submit(
            session -> {
              full.await();
              return 0;
            });
        CompletableFuture<Integer> last = new CompletableFuture<>();
        for (int i = 0; i < 2 * StoreLoop.FULL_AT; i++) {
          int number = i;
          last = loop.submit(session -> number);
        }
        loop.whenRoom(
            () -> {
              called.incrementAndGet();
              throw new RejectedExecutionException("the host is going");
            });
        assertThat(called).hasValue(0);
        full.countDown();

        assertThat(last.get(20, TimeUnit.SECONDS)).isEqualTo(2 * StoreLoop.FULL_AT - 1);
        assertThat(called).hasValue(1);
      }
    }

    @Test
    void writesManyWaitingWritersInFewTransactions() {
      long before = store.commits();
      List<CompletableFuture<Outcome>> all = new ArrayList<>();
      for (int seq = 1; seq <= 2_000; seq++) {
        all.add(
            journal.append(
                "room",
                epoch,
                new JournalEntry.Played(
                    "t1", "p1", seq, List.of(WireAttack.tap(1_000_000 + seq)))));
      }
      all.forEach(CompletableFuture::join);

      assertThat(take().attacks()).hasSize(2_000);
      assertThat(store.commits() - before).isLessThan(200);
    }
  }

  /** Result codes and their meaning: https://sqlite.org/rescode.html. */
  @Nested
  class WhatTheDatabaseRefusesForGood {
    private final Logger logger = (Logger) LoggerFactory.getLogger(StoreLoop.class);
    private final ListAppender<ILoggingEvent> log = new ListAppender<>();

    @BeforeEach
    void listen() {
      log.start();
      logger.addAppender(log);
      played("p1", 1, 1_250_000); // the connection is open, its statements are prepared
    }

    @AfterEach
    void listenNoMore() {
      logger.detachAppender(log);
    }

    private void change(String sql) {
      Jdbi.create("jdbc:sqlite:" + file).useHandle(handle -> handle.execute(sql));
    }

    private List<String> logged() {
      return log.list.stream()
          .map(
              event ->
                  event.getLevel()
                      + " "
                      + event.getKeyValuePairs().stream()
                          .map(pair -> String.valueOf(pair.value))
                          .collect(Collectors.joining(" ")))
          .toList();
    }

    @Test
    void failsAloneIsLoggedOnceAndNobodyElseWaits() {
      change(
          """
          CREATE TRIGGER none_of_hers BEFORE INSERT ON attack
          WHEN NEW.player = (SELECT player FROM take_player WHERE take = NEW.take AND id = 'p1')
          BEGIN SELECT RAISE(ABORT, 'not hers'); END
          """);
      List<CompletableFuture<Outcome>> hers = new ArrayList<>();
      List<CompletableFuture<Outcome>> his = new ArrayList<>();
      for (int seq = 2; seq < 40; seq++) {
        for (String player : List.of("p1", "p2")) {
          (player.equals("p1") ? hers : his)
              .add(
                  journal.append(
                      "room",
                      epoch,
                      new JournalEntry.Played(
                          "t1", player, seq, List.of(WireAttack.tap(1_000_000 + seq)))));
        }
      }
      hers.forEach(
          each ->
              assertThat(each.join()).isEqualTo(new Outcome.Refused("SQLITE_CONSTRAINT_TRIGGER")));
      his.forEach(each -> assertThat(each.join()).isEqualTo(new Outcome.Stored()));

      assertThat(take().attacks()).hasSize(39);
      assertThat(availability).as("the disk is not at fault").isEmpty();
      assertThat(logged()).containsExactly("ERROR Played of room room SQLITE_CONSTRAINT_TRIGGER");
      assertThat(store.refusals()).isEqualTo(38);
    }

    @Test
    void isAColumnThatIsGone() {
      change("ALTER TABLE attack DROP COLUMN unsure");

      assertThat(played("p1", 2, 1_750_000)).isEqualTo(new Outcome.Refused("SQLITE_ERROR"));
      assertThat(append(new JournalEntry.TakeEnded("t1", 2_000_000, StopReason.INTERRUPTED)))
          .isEqualTo(new Outcome.Stored());
      assertThat(logged()).containsExactly("ERROR Played of room room SQLITE_ERROR");
    }

    @Test
    void isATableThatIsGoneAndTheLogTellsNoName() {
      change("ALTER TABLE room DROP COLUMN state");
      change("DROP TABLE gone");

      assertThat(append(new JournalEntry.State(Rooms.withTake(WRITTEN))))
          .isEqualTo(new Outcome.Refused("SQLITE_ERROR"));

      assertThat(append(new JournalEntry.Away("t1", "p1", new Span(1_200_000, 2_000_000))))
          .isEqualTo(new Outcome.Refused("SQLITE_ERROR"));
      assertThat(played("p1", 2, 1_750_000)).isEqualTo(new Outcome.Stored());
      assertThat(availability).isEmpty();
      assertThat(log.list)
          .hasSize(2)
          .allSatisfy(
              event ->
                  assertThat(event.getThrowableProxy().getMessage())
                      .contains("no such")
                      .doesNotContain("Mina", "balumidore"));
    }

    @Test
    void isAStatementThatIsWrongWithoutACode() {
      try (StoreLoop loop = new StoreLoop(Database.open(file), 0, availability::add)) {
        loop.submit(session -> session.handle.execute("SELECT 1")).join();
        CompletableFuture<Long> wrong =
            loop.submit(
                () -> "a question",
                session -> session.handle.createQuery("SELECT :nothing").mapTo(Long.class).one());

        assertThat(wrong.handle((row, problem) -> problem).join())
            .isInstanceOf(JdbiException.class);
        assertThat(loop.submit(session -> 7).join()).isEqualTo(7);
      }
      assertThat(availability).isEmpty();
      assertThat(logged()).containsExactly("ERROR a question UnableToCreateStatementException");
    }
  }

  @Nested
  class TheFile {
    @Test
    void ofSomethingElseIsRefusedInOneLine() throws Exception {
      Path noise =
          Files.write(
              folder.resolve("noise.db"),
              "not a database".repeat(200).getBytes(StandardCharsets.UTF_8));

      assertThatThrownBy(() -> Store.open(noise, InstantSource.system(), availability::add))
          .isInstanceOf(BadInput.class)
          .hasMessageContaining("--db")
          .hasMessageContaining("noise.db")
          .message()
          .doesNotContain("\n");
    }

    @Test
    void ofANewerVersionIsRefusedWithASentence() {
      store.close();
      Jdbi.create("jdbc:sqlite:" + file)
          .useHandle(
              handle ->
                  handle.execute(
                      """
                      INSERT INTO flyway_schema_history
                      SELECT 99, '99', 'of the future', 'SQL', 'V99__of_the_future.sql', 1,
                             installed_by, installed_on, execution_time, 1
                      FROM flyway_schema_history LIMIT 1
                      """));

      assertThatThrownBy(() -> Store.open(file, InstantSource.system(), availability::add))
          .isInstanceOf(BadInput.class)
          .hasMessageContaining("of version 99; a newer Thinclick wrote it");
    }

    @Test
    void inNoFolderIsRefused() {
      assertThatThrownBy(
              () ->
                  Store.open(
                      folder.resolve("none/room.db"), InstantSource.system(), availability::add))
          .isInstanceOf(BadInput.class)
          .hasMessageContaining("expected a file in a folder that exists");
    }
  }
}
