package thinclick.client.rehearse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.client.link.LeftRoom;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.LinkState;
import thinclick.client.standin.Slip;
import thinclick.client.standin.Timing;
import thinclick.client.window.review.LeaderFiles;
import thinclick.client.window.session.PastTakes;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.AnswerMessage.CourseSoFar;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeNews.ReviewReady;
import thinclick.server.history.CourseLine;
import thinclick.server.history.Entry;
import thinclick.server.history.FewestClicks;
import thinclick.server.history.HistoryJson;
import thinclick.server.history.LastLike;
import thinclick.server.scoring.Displacement;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Review;
import thinclick.server.season.Season;
import thinclick.server.words.Spoken;
import tools.jackson.databind.JsonNode;

/**
 * One evening of a class of 24 by script, on one virtual clock over real sockets: the leader's and
 * one pupil's computer are the window's own models, and a lesson of five drills goes its way by the
 * one button. Two pupils are late, one falls asleep for four bars, one leaves, one goes and
 * returns, the leader's computer dies in a take and comes back.
 */
class ClassTest {
  private static final String LATE = "Omar";
  private static final String LATER = "Finja";
  private static final String SLEEPER = "Kofi";
  private static final String LEAVER = "Tove";
  private static final String RETURNER = "Milo";
  private static final String TURNED = "Emre";
  private static final String EARLY = "Runa";
  private static final String AT_A_WINDOW = "Anouk";
  private static final String CLASS = "Tuesday evening";

  @TempDir Path folder;

  private ClassRoom room;
  private LessonDesk leader;
  private LessonDesk anouk;
  private LinkLoop kofis;
  private final Map<String, Take> takes = new LinkedHashMap<>();

  @BeforeEach
  void theClassComesIn() throws IOException {
    room = new ClassRoom(folder);
    leader = room.computer("desk");
    leader.run(() -> leader.session.openAt(room.address(), "Frau Ott"));
    leader.inside();
    leader.run(() -> leader.desk.roster().leaderPlaysProperty().set(false));
    anouk = room.computer("window");
    anouk.run(() -> anouk.session.join(room.address(), leader.state().word(), AT_A_WINDOW));
    anouk.inside().plays(Timing.PRACTISED, 3);
    for (String name : Band.of(24)) {
      if (name.equals(SLEEPER)) {
        kofis = room.comesAlone(name, Timing.PRACTISED, word());
      } else if (!List.of(LATE, LATER, AT_A_WINDOW).contains(name)) {
        room.comes(name, Timing.PRACTISED.leaning(name.equals(EARLY) ? -30 : 0), word());
      }
    }
    room.step.until("everybody's clock", 5, () -> ClassRoom.ready(leader).size() == 23);
    room.step.until("the lesson", 2, () -> hasLesson(leader));
    room.host.classes().hold(CLASS, word());
  }

  @AfterEach
  void everybodyGoes() {
    room.close();
  }

  private String word() {
    return leader.state().word();
  }

  private static boolean hasLesson(LessonDesk desk) {
    return desk.on(() -> desk.desk.lesson().lessons()).stream()
        .anyMatch(one -> one.title().equals(ClassRoom.LESSON));
  }

  @Test
  void anEveningOfAClassOfTwentyFour() throws IOException {
    firstTakeWithTwoStillOnTheirWay();
    theDrillOnceMoreWhileOneFallsAsleep();
    fewerClicksWhileOneLeaves();
    moreClicksWhileTheLeadersComputerDies();
    aPupilMayLeadAfterHalfAMinuteAndTheTokenWinsTheLeadBack();
    theClickFollowsWhatIsHeld();
    theLastDrillWithOneTurnedAround();

    everyAttackIsStoredOnceInTheTakeItWasPlayedIn();
    everySlipIsItsPlayersOwn();
    theHistoryOfTheEveningIsRight();
    theSeasonKnowsWhoTookPart();
  }

  // ---------------------------------------------------------------- the evening

  private void firstTakeWithTwoStillOnTheirWay() {
    Lesson evening = lessonOf(leader);
    room.deals(leader, () -> leader.desk.lesson().choose(evening));
    assertThat(leader.on(() -> leader.desk.prompt().place()))
        .isEqualTo("Drill 1 of 5: All four, take 1 of 1");
    room.begins(leader);
    room.toBar(leader, 0);
    room.comes(LATE, Timing.PRACTISED, word());
    room.toBar(leader, 2);
    room.comes(LATER, Timing.PRACTISED, word());
    Review review = ends("first");
    assertThat(names(review)).hasSize(22).doesNotContain(LATE, LATER);
    assertThat(review.ensemble().hold().get()).isGreaterThan(95);
    assertThat(leader.on(() -> leader.desk.proposals().line().says())).contains("once more");
  }

  private void theDrillOnceMoreWhileOneFallsAsleep() {
    gone.put(RETURNER, pupil(RETURNER));
    pupil(RETURNER).leave();
    room.step.until("Milo is gone", 2, () -> ClassRoom.ready(leader).size() == 24);
    room.deals(leader, () -> leader.desk.lesson().repeat());
    room.begins(leader);
    room.toBar(leader, 1);
    room.sleeps(kofis);
    room.toBar(leader, 5);
    room.wakes(kofis);
    Review review = ends("second");
    assertThat(names(review)).hasSize(23).contains(LATE, LATER).doesNotContain(RETURNER);
    PlayerReview kofi = review.player(SLEEPER);
    assertThat(kofi.away()).as("four bars of three").isBetween(11, 14);
    assertThat(kofi.dropped()).as("asleep is not dropped").isLessThanOrEqualTo(1);
    assertThat(kofi.written() + kofi.away()).isEqualTo(18);
    assertThat(kofi.hold().get()).isGreaterThan(85);
    bothTakesAreTheCourseOfTheClassAndEachPupilsOwn();
  }

  /** The leader and the pupil at a window are told by the host, as by any that is elsewhere. */
  private void bothTakesAreTheCourseOfTheClassAndEachPupilsOwn() {
    room.step.until("the course", 3, () -> course(leader) != null && course(anouk) != null);
    List<String> ids = List.copyOf(ids());
    CourseSoFar bands = course(leader);
    assertThat(HistoryJson.read(bands.band()).get(0).takes())
        .extracting(CourseLine::id)
        .containsExactlyElementsOf(ids);
    LastLike first = LastLike.read(bands.last());
    assertThat(first.id()).isEqualTo(ids.get(0));
    assertThat(first.figures().players()).hasSize(21).doesNotContainKeys(LATE, LATER, RETURNER);
    CourseSoFar own = course(anouk);
    assertThat(own.band()).isNull();
    assertThat(own.last()).isNull();
    assertThat(HistoryJson.read(own.own()).get(0).takes()).hasSize(2);
    assertThat(own.own().toString()).contains(AT_A_WINDOW).doesNotContain(LATE, SLEEPER, EARLY);
    leader.run(() -> leader.desk.proposals().lookUp());
    room.step.until("the fewest clicks", 3, () -> looked(leader).contains("% held on "));
    assertThat(looked(leader)).startsWith("All four at 200: ");
  }

  private static String looked(LessonDesk desk) {
    return desk.on(() -> desk.desk.proposals().saysProperty().get());
  }

  /** What is told of the take that this computer knows last; null until it is. */
  private static CourseSoFar course(LessonDesk desk) {
    PastTakes.Told told = desk.on(() -> desk.session.past().told());
    return told.takeId().equals(desk.state().announced().takeId()) ? told.course() : null;
  }

  private void fewerClicksWhileOneLeaves() {
    room.deals(leader, () -> leader.desk.lesson().next());
    double before = clicks();
    room.deals(leader, () -> leader.desk.lesson().fewerClicks());
    assertThat(clicks()).isLessThan(before);
    room.begins(leader);
    room.toBar(leader, 2);
    pupil(LEAVER).leave();
    Review review = ends("third");
    PlayerReview tove = review.player(LEAVER);
    assertThat(tove.written()).as("two bars of four, and no more").isBetween(7, 9);
    assertThat(tove.written() + tove.away()).isEqualTo(16);
    assertThat(tove.dropped()).isLessThanOrEqualTo(1);
  }

  private void moreClicksWhileTheLeadersComputerDies() throws IOException {
    room.comes(RETURNER, Timing.PRACTISED, word());
    room.step.until("Milo's clock", 3, () -> ClassRoom.ready(leader).contains(RETURNER));
    room.deals(leader, () -> leader.desk.lesson().next());
    double before = clicks();
    room.deals(leader, () -> leader.desk.lesson().moreClicks());
    assertThat(clicks()).isGreaterThan(before);
    room.begins(leader);
    room.toBar(leader, 1);
    room.copyDisk("desk", "desk again");
    room.step.without(leader.loop);
    leader.dies();
    anouk.run(() -> anouk.session.lead().claim());
    room.step.until("a refusal", 2, () -> !anouk.state().problem().isEmpty());
    assertThat(anouk.state().problem().says()).contains("gone for 30 s");
    room.step.until("the end", 30, () -> !anouk.state().takeRuns());
    room.step.until(
        "the take's own slip",
        8,
        () -> anouk.state().review() != null && !anouk.state().review().provisional());
    String takeId = anouk.state().announced().takeId();
    takes.put("fourth", room.host.take(takeId).orElseThrow());
    assertThat(takes.get("fourth").endMicros()).as("it went on to its end").isNull();
    assertThat(takes.get("fourth").parts()).hasSize(23);
  }

  private void aPupilMayLeadAfterHalfAMinuteAndTheTokenWinsTheLeadBack() throws IOException {
    // From the end of the take on: when the host sees the dead line is the system's affair.
    room.step.pass(30);
    anouk.run(() -> anouk.session.lead().claim());
    room.step.until("Anouk leads", 2, () -> anouk.state().leader());
    room.step.until("the lesson", 2, () -> hasLesson(anouk));
    Lesson evening = lessonOf(anouk);
    room.deals(anouk, () -> anouk.desk.lesson().choose(evening));
    assertThat(anouk.state().dealt().parts()).as("the class, and the one who leads").hasSize(23);

    leader = room.computer("desk again");
    leader.run(leader.session::bringWhatIsLeft);
    LeftRoom left = leader.on(() -> leader.session.leftRooms().get(0));
    assertThat(left.name()).isEqualTo("Frau Ott");
    assertThat(left.led()).isTrue();
    leader.run(() -> leader.session.comeBack(left));
    await().until(() -> leader.link() == LinkState.ONLINE);
    leader.run(() -> leader.desk.roster().leaderPlaysProperty().set(false));
    room.step.until("Frau Ott leads", 3, () -> leader.state().leader());
    room.step.until("and Anouk does not", 3, () -> !anouk.state().leader());
    assertThat(leader.state().phase()).isEqualTo(Phase.DEALT);
    room.step.until("the lesson", 2, () -> hasLesson(leader));
  }

  private void theClickFollowsWhatIsHeld() {
    leader.looks();
    Lesson evening = lessonOf(leader);
    room.deals(leader, () -> leader.desk.lesson().choose(evening));
    for (int drill = 2; drill <= 4; drill++) {
      room.deals(leader, () -> leader.desk.lesson().next());
    }
    leader.run(() -> leader.desk.take().asHeldProperty().set(true));
    room.begins(leader);
    Review review = ends("fifth");
    assertThat(leader.on(() -> leader.desk.steering().saysProperty().get())).startsWith("Held ");
    assertThat(takes.get("fifth").stages())
        .as("what clicked is in the take: two bars after the decision a rung thinner")
        .hasSize(2);
    assertThat(takes.get("fifth").stages().get(0).bars()).isEqualTo(6);
    assertThat(review.stages().get(1).clicksPerBar())
        .isLessThan(review.stages().get(0).clicksPerBar());
    leader.run(() -> leader.desk.take().asHeldProperty().set(false));
  }

  private void theLastDrillWithOneTurnedAround() {
    room.deals(leader, () -> leader.desk.lesson().next());
    room.begins(leader);
    room.toBar(leader, 1);
    leader.run(() -> leader.desk.take().stop());
    ends("abandoned");
    assertThat(takes.get("abandoned").endMicros()).as("kept, as stopped early").isNotNull();
    assertThat(leader.on(() -> leader.desk.prompt().place())).contains("Push, take 1 of 1");
    assertThat(leader.on(() -> leader.desk.prompt().nextStep())).isEqualTo("Once more: Push");
    assertThat(leader.on(() -> leader.desk.proposals().line()))
        .as("no rung is proposed for what was abandoned")
        .isNull();

    room.deals(leader, () -> leader.desk.lesson().goOn());
    pupil(TURNED).slip = new Slip(2, 5, 1);
    room.begins(leader);
    Review review = ends("sixth");
    assertThat(names(review)).hasSize(23).contains(LATE, LATER, RETURNER).doesNotContain(LEAVER);
    assertThat(review.player(TURNED).displacements()).containsExactly(new Displacement(2, 5, 1));
    assertThat(leader.state().review().review().get("next").stringValue())
        .as("one of 23 who is turned around holds nobody else up")
        .doesNotContain("count aloud");
    assertThat(review.player(EARLY).leanMillis().get()).isBetween(-45.0, -15.0);
    assertThat(review.players()).filteredOn(one -> !one.displacements().isEmpty()).hasSize(1);
  }

  // ---------------------------------------------------------------- afterwards

  private void everyAttackIsStoredOnceInTheTakeItWasPlayedIn() {
    List<String> ids = List.copyOf(ids());
    int index = 0;
    for (Take take : takes.values()) {
      String id = ids.get(index++);
      for (Part part : take.parts()) {
        List<Long> played =
            part.player().equals(AT_A_WINDOW)
                ? anouk.played.get(id)
                : everySent(part.player()).get(id);
        assertThat(
                take.attacks().stream()
                    .filter(attack -> attack.player().equals(part.player()))
                    .map(Attack::micros))
            .as("%s in %s", part.player(), id)
            .containsExactlyInAnyOrderElementsOf(played);
      }
    }
  }

  private void everySlipIsItsPlayersOwn() throws IOException {
    List<String> ids = List.copyOf(ids());
    Spoken leaders = Spoken.fromJson(leader.state().review().review());
    for (Pupil pupil : room.pupils.values()) {
      for (ReviewReady slip : pupil.slips.values()) {
        assertThat(slip.review().get("players")).hasSizeLessThanOrEqualTo(1);
        for (JsonNode line : slip.review().get("players")) {
          assertThat(line.get("player").stringValue()).isEqualTo(pupil.name());
        }
      }
      if (!pupil.name().equals(LEAVER)) {
        ReviewReady last = pupil.slips.get(ids.get(6));
        assertThat(last.provisional()).isFalse();
        assertThat(last.review().get("players")).hasSize(1);
        Spoken own = Spoken.fromJson(last.review());
        assertThat(own.slip(pupil.name()))
            .as("the same words and figures as the leader has of %s", pupil.name())
            .isEqualTo(leaders.slip(pupil.name()));
        assertThat(own.slip(pupil.name()).says()).as("the last is what comes next").isNotEmpty();
        assertThat(own.review().player(pupil.name()))
            .isEqualTo(leaders.review().player(pupil.name()));
      }
    }
    assertThat(leaders.slips()).filteredOn(slip -> slip.next() != null).isNotEmpty();
    assertThat(leaders.slip(TURNED).rules()).as("what is to be mended").isNotEmpty();
    byte[] pages = leader.on(() -> new LeaderFiles(Words.in(Locale.ENGLISH)).pages(leaders));
    try (PDDocument read = Loader.loadPDF(pages)) {
      assertThat(read.getNumberOfPages()).as("a page for each, to be printed").isEqualTo(23);
    }
  }

  private void theHistoryOfTheEveningIsRight() {
    List<Entry> evening = room.host.history();
    assertThat(evening).extracting(Entry::id).containsExactlyElementsOf(ids());
    assertThat(evening)
        .extracting(entry -> entry.key().title())
        .containsExactly(
            "All four", "All four", "And the ands", "Late starters", "As held", "Push", "Push");
    assertThat(evening.get(0).key()).as("the drill once more").isEqualTo(evening.get(1).key());
    List<List<String>> who = evening.stream().map(entry -> names(entry.review())).toList();
    assertThat(who.stream().map(List::size)).containsExactly(22, 23, 23, 23, 23, 23, 23);
    assertThat(in(who, LATE)).containsExactly(1, 2, 3, 4, 5, 6);
    assertThat(in(who, LEAVER)).as("only while there").containsExactly(0, 1, 2);
    assertThat(in(who, RETURNER)).containsExactly(0, 3, 4, 5, 6);
    assertThat(evening.get(1).review().player(SLEEPER).away()).isGreaterThan(10);
    FewestClicks fewest = FewestClicks.of(evening, "All four", 200).orElseThrow();
    assertThat(fewest.clicksPerBar()).isEqualTo(2);
    assertThat(fewest.begunAt()).isEqualTo(evening.get(0).begunAt());
  }

  private void theSeasonKnowsWhoTookPart() {
    Season season = room.host.classes().season(CLASS);
    assertThat(season.takes()).hasSize(7);
    assertThat(season.pupils()).extracting(one -> one.name()).contains(LATE, LEAVER, RETURNER);
    assertThat(taken(season, LATE)).isEqualTo(6);
    assertThat(taken(season, LEAVER)).as("counted only while there").isEqualTo(3);
    assertThat(taken(season, RETURNER)).isEqualTo(5);
    assertThat(taken(season, AT_A_WINDOW)).isEqualTo(7);
    assertThat(season.courses())
        .extracting(course -> course.key().title())
        .containsExactlyInAnyOrder("All four", "And the ands", "Late starters", "As held", "Push");
    assertThat(season.pupils())
        .as("everybody's level and fewest clicks are known right afterwards")
        .hasSize(24)
        .allSatisfy(
            pupil -> {
              assertThat(pupil.standing()).as(pupil.name()).isPresent();
              assertThat(pupil.rung()).as(pupil.name()).isPresent();
            });
  }

  private static int taken(Season season, String name) {
    return season.pupil(name).orElseThrow().takes().size();
  }

  // ---------------------------------------------------------------- small words

  private Review ends(String which) {
    takes.put(which, room.ends(leader));
    return room.host.history().get(takes.size() - 1).review();
  }

  private List<String> ids() {
    return room.host.history().stream().map(Entry::id).toList();
  }

  private final Map<String, Pupil> gone = new LinkedHashMap<>();

  private Pupil pupil(String name) {
    return room.pupils.get(name);
  }

  private Map<String, List<Long>> everySent(String name) {
    Map<String, List<Long>> all = new LinkedHashMap<>(pupil(name).played);
    if (gone.containsKey(name)) {
      all.putAll(gone.get(name).played);
    }
    return all;
  }

  private double clicks() {
    return leader.state().dealt().stages().stream()
        .mapToDouble(stage -> stage.bars() * (double) stage.beats().size() / stage.everyBars())
        .sum();
  }

  private static Lesson lessonOf(LessonDesk desk) {
    return desk.on(() -> desk.desk.lesson().lessons()).stream()
        .filter(one -> one.title().equals(ClassRoom.LESSON))
        .findFirst()
        .orElseThrow();
  }

  private static List<String> names(Review review) {
    return review.players().stream().map(PlayerReview::player).toList();
  }

  private static List<Integer> in(List<List<String>> takes, String name) {
    List<Integer> found = new ArrayList<>();
    for (int i = 0; i < takes.size(); i++) {
      if (takes.get(i).contains(name)) {
        found.add(i);
      }
    }
    return found;
  }
}
