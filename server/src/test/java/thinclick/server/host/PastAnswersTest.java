package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.AnswerMessage.CourseSoFar;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews.StopReason;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;
import thinclick.server.history.CourseLine;
import thinclick.server.history.CourseSheet;
import thinclick.server.history.HistoryJson;
import thinclick.server.history.LastLike;
import thinclick.server.room.JournalEntry;
import thinclick.server.room.PastQuestion;
import thinclick.server.room.RoomJournal;
import thinclick.server.scoring.Scorer;
import thinclick.server.store.Store;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;
import tools.jackson.databind.JsonNode;

/** What a room is told of takes before, and whose they must be; from a real database. */
class PastAnswersTest {
  private static final Instant MONDAY = Instant.parse("2026-03-02T10:00:00Z");
  private static final Map<String, String> DUO = seats("Mina", "Jonas");

  /** Made once for takes that are the same. */
  private static final Map<Object, JsonNode> REVIEWS = new HashMap<>();

  @TempDir Path folder;
  private Store store;
  private PastAnswers past;
  private Instant now = MONDAY;
  private int takes;

  @BeforeEach
  void open() {
    store = Store.open(folder.resolve("rooms.db"), () -> now, available -> {});
    past = new PastAnswers(store);
  }

  @AfterEach
  void close() {
    store.close();
  }

  private static Map<String, String> seats(String... names) {
    Map<String, String> seats = new LinkedHashMap<>();
    for (String name : names) {
      seats.put("p" + (seats.size() + 1), name);
    }
    return seats;
  }

  /** Opens a room, for a class where there is one. */
  private long room(String id, String word, String classTitle) {
    long epoch = store.journal().open(id, word).join().epoch();
    if (!classTitle.isEmpty()) {
      long number = store.classes().make(classTitle).join();
      assertThat(store.classes().hold(number, word).join()).isTrue();
    }
    return epoch;
  }

  /** Plays a take as a host writes it down; everybody on every beat, late by what is said. */
  private String played(String room, long epoch, Map<String, String> seats, long lateMicros) {
    return played(room, epoch, seats, lateMicros, null);
  }

  private String played(
      String room, long epoch, Map<String, String> seats, long lateMicros, Long stoppedAtStep) {
    now = now.plus(Duration.ofMinutes(5));
    String id = room + "-t" + ++takes;
    List<Integer> beats = IntStream.range(0, 32).mapToObj(beat -> beat * 2).toList();
    Take written =
        new Take(
            Take.FORMAT,
            Take.VERSION,
            "Beats",
            Meter.FOUR_FOUR,
            120,
            2,
            Swing.STRAIGHT,
            1_000_000,
            50.0,
            List.of(Stage.ofBeats(4, 1, 1, 2, 3, 4), Stage.ofBeats(4, 1, 1)),
            seats.values().stream().map(name -> Part.of(name, 0, beats)).toList(),
            List.of(),
            null,
            List.of());
    List<Attack> attacks = new ArrayList<>();
    write(room, epoch, new JournalEntry.TakeBegun(id, written, seats));
    seats.forEach(
        (playerId, name) -> {
          List<WireAttack> wire = new ArrayList<>();
          for (int step : beats) {
            long at = written.grid().instantOf(step) + lateMicros;
            if (stoppedAtStep == null || step < stoppedAtStep) {
              attacks.add(Attack.tap(name, at));
              wire.add(WireAttack.tap(at));
            }
          }
          write(room, epoch, new JournalEntry.Played(id, playerId, 1, wire));
        });
    boolean whole = stoppedAtStep == null;
    long end = written.grid().instantOf(whole ? 64 : stoppedAtStep);
    write(
        room,
        epoch,
        new JournalEntry.TakeEnded(id, end, whole ? StopReason.FINISHED : StopReason.LEADER));
    JsonNode review =
        REVIEWS.computeIfAbsent(
            List.of(written, attacks),
            any ->
                Spoken.of(Scorer.analyse(written.withAttacks(attacks)), Speaker.english())
                    .toJson());
    write(room, epoch, new JournalEntry.Reviewed(id, false, review));
    return id;
  }

  private void write(String room, long epoch, JournalEntry entry) {
    assertThat(store.journal().append(room, epoch, entry).join())
        .isInstanceOf(RoomJournal.Outcome.Stored.class);
  }

  private CourseSoFar course(String room, String takeId, boolean leads, String playerId) {
    return (CourseSoFar)
        past.answer(room, new PastQuestion.CourseOf(takeId, "Beats", leads, playerId))
            .orElseThrow();
  }

  private static List<String> ids(JsonNode course) {
    CourseSheet sheet = HistoryJson.read(course).get(0);
    return sheet.takes().stream().map(CourseLine::id).toList();
  }

  @Test
  void theSameBandOnAnotherEveningIsTheSameCourseAndAPlayerHearsOfNobodyElse() {
    long first = room("a", "balu", "");
    String one = played("a", first, DUO, 9_000);
    String stopped = played("a", first, DUO, 0, 16L);
    now = now.plus(Duration.ofDays(7));
    String other = played("a", first, seats("Mina", "Lotte", "Emre"), 0);
    long second = room("b", "midore", "");
    String two = played("b", second, DUO, 0);

    CourseSoFar leaders = course("b", two, true, null);
    assertThat(ids(leaders.band())).containsExactly(one, two).doesNotContain(stopped, other);
    assertThat(leaders.own()).isNull();
    LastLike last = LastLike.read(leaders.last());
    assertThat(last.id()).isEqualTo(one);
    assertThat(last.figures().players()).containsOnlyKeys("Mina", "Jonas");
    assertThat(last.figures().stages()).hasSize(2);

    CourseSoFar minas = course("b", two, false, "p1");
    assertThat(minas.band()).isNull();
    assertThat(minas.last()).isNull();
    assertThat(ids(minas.own())).containsExactly(one, two);
    assertThat(MessageCodec.write(minas)).contains("Mina").doesNotContain("Jonas");
    CourseSheet sheet = HistoryJson.read(minas.own()).get(0);
    assertThat(sheet.player()).isEqualTo("Mina");
    assertThat(sheet.takes().get(0).begunAt()).isBetween(MONDAY, MONDAY.plus(Duration.ofHours(1)));
    assertThat(sheet.takes().get(1).hold().get()).isEqualTo(100.0);
    assertThat(sheet.takes().get(1).own().placed()).isEqualTo(32);
    assertThat(course("b", two, false, "p9").own()).as("somebody without a part").isNull();
  }

  @Test
  void aNameAloneOpensNobodysCourse() {
    played("a", room("a", "balu", ""), DUO, 0);
    long strangers = room("c", "fedoka", "");
    String theirs = played("c", strangers, seats("Mina", "Zed"), 0);
    assertThat(ids(course("c", theirs, false, "p1").own())).containsExactly(theirs);
    assertThat(ids(course("c", theirs, true, null).band())).containsExactly(theirs);

    Map<String, String> later = new LinkedHashMap<>(Map.of("p7", "Mina", "p8", "Zed"));
    String another = played("c", strangers, later, 0);
    assertThat(ids(course("c", another, false, "p7").own()))
        .as("another Mina in the room that the first has left")
        .containsExactly(another);
  }

  @Test
  void whatAClassPlayedIsKnownInItsRoomsAndInNoOther() {
    long monday = room("a", "balu", "Year 7");
    String classes = played("a", monday, seats("Mina", "Jonas", "Ilse"), 0);
    String next = played("d", room("d", "nipuza", "Year 7"), seats("Mina", "Tariq"), 0);
    assertThat(ids(course("d", next, false, "p1").own()))
        .as("a pupil is known by the nickname, whoever else plays")
        .containsExactly(classes, next);
    assertThat(ids(course("d", next, true, null).band())).containsExactly(next);

    String outside = played("e", room("e", "rosiva", ""), seats("Mina", "Jonas", "Ilse"), 0);
    assertThat(ids(course("e", outside, true, "p1").band())).containsExactly(outside);
    String elsewhere =
        played("f", room("f", "tezopi", "Year 8"), seats("Mina", "Jonas", "Ilse"), 0);
    assertThat(ids(course("f", elsewhere, true, "p1").own())).containsExactly(elsewhere);
  }

  @Test
  void theFewestClicksHeldAreTheBandsOwnWithTheirDate() {
    String one = played("a", room("a", "balu", ""), DUO, 0);
    long here = room("b", "midore", "");
    AnswerMessage.Fewest found = fewest("b", "Mina", "Jonas");
    assertThat(found.held().stage()).isEqualTo(Stage.ofBeats(4, 1, 1));
    assertThat(found.held().clicksPerBar()).isEqualTo(1);
    assertThat(Instant.parse(found.held().begunAt())).isEqualTo(now).isAfter(MONDAY);
    assertThat(one).isNotEmpty();
    assertThat(fewest("b", "Lotte", "Emre").held()).as("another band's").isNull();
    assertThat(fewest("b").held())
        .as("nobody is here yet, and the room has played nothing")
        .isNull();
    played("b", here, DUO, 0);
    assertThat(fewest("b").held()).as("the room's own").isNotNull();
  }

  private AnswerMessage.Fewest fewest(String room, String... players) {
    return (AnswerMessage.Fewest)
        past.answer(room, new PastQuestion.FewestAt("Beats", 120, Set.of(players))).orElseThrow();
  }

  @Test
  void theLargestAnswerFitsIntoAFrame() {
    long epoch = room("a", "balu", "");
    String one = played("a", epoch, DUO, 0);
    String two = played("a", epoch, DUO, 0);
    int bytesOfOne = MessageCodec.write(course("a", one, true, "p1")).length();
    CourseSoFar both = course("a", two, true, "p1");
    int lastOfTwoPlayers = both.last().toString().length();
    int aTake = MessageCodec.write(both).length() - lastOfTwoPlayers - bytesOfOne;
    int largest = bytesOfOne + PastAnswers.MOST_TAKES * aTake + 12 * lastOfTwoPlayers;
    assertThat(largest).isLessThan(MessageCodec.MAX_SERVER_FRAME / 2);
  }
}
