package thinclick.client.window.lectern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.client.standin.Manner;
import thinclick.client.window.lectern.LessonModel.Pause;
import thinclick.client.window.season.ClassDesk;
import thinclick.client.window.session.Lead.Hand;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.session.Situation;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.time.MonotonicClock;
import thinclick.protocol.time.VirtualTime;
import thinclick.server.dealing.Dealer;
import thinclick.server.lesson.LessonScript;
import thinclick.server.material.Stock;

/** The leader's desk against a real host, without a window. */
class LecternDeskTest {
  private static final Duration PATIENCE = Duration.ofSeconds(30);

  @TempDir Path folder;

  private final ExecutorService windowThread = Executors.newSingleThreadExecutor();
  private final Words words = Words.in(Locale.ENGLISH);
  private Session session;
  private LecternDesk desk;

  @BeforeEach
  void aRoomWithTwoStandIns() {
    session = new Session(windowThread, MonotonicClock.SYSTEM, folder);
    ClassDesk classes = new ClassDesk(session, windowThread, words);
    desk = LecternDesk.of(session, words, MonotonicClock.SYSTEM, classes);
    run(() -> session.openHere("Frau Ott", false));
    until(() -> session.state().inside() && session.state().people().size() == 1);
    for (int i = 0; i < 2; i++) {
      int wanted = i + 2;
      run(() -> desk.roster().fill(Manner.STEADY, null, 0));
      until(() -> session.state().people().size() == wanted);
    }
  }

  @AfterEach
  void close() {
    run(session::close);
    windowThread.shutdown();
  }

  @Test
  void whatIsOnThePageIsDealtAndADealCanBeTakenBack() {
    run(() -> desk.lectern().choose(Stock.find("Jigsaw")));
    until(() -> "Jigsaw".equals(session.state().title()));
    Hand shown = ask(() -> desk.lectern().page());
    List<String> names = ask(() -> desk.roster().playing()).stream().map(Person::name).toList();
    List<Part> first = dealt(() -> desk.lectern().deal());
    assertThat(attacks(first)).isEqualTo(attacks(of(shown, names)));

    run(() -> desk.lectern().choose(Stock.find("Charleston")));
    until(() -> "Charleston".equals(session.state().title()));
    List<Part> second = dealt(() -> desk.lectern().deal());
    assertThat(attacks(second)).isNotEqualTo(attacks(first));

    List<Part> back = dealt(() -> desk.lectern().undo());
    assertThat(attacks(back)).isEqualTo(attacks(first));
    assertThat(ask(() -> desk.lectern().chosen().title())).isEqualTo("Jigsaw");

    run(() -> desk.lectern().undo());
    until(() -> session.state().phase() == Phase.GATHERING);
    assertThat(ask(() -> session.state().dealt())).isNull();
    assertThat(ask(() -> desk.lectern().canUndo())).isFalse();
  }

  private static List<Part> of(Hand hand, List<String> names) {
    return Dealer.deal(hand.drill(), names, hand.seed(), hand.tempo(), hand.drill().stages())
        .parts();
  }

  private static List<List<Integer>> attacks(List<Part> parts) {
    return parts.stream().map(Part::attackSteps).toList();
  }

  private List<Part> dealt(Runnable deals) {
    String before = ask(() -> session.state().dealt() == null ? "" : id());
    run(deals);
    until(() -> session.state().dealt() != null && !id().equals(before));
    return ask(() -> session.state().dealt().parts());
  }

  private String id() {
    return session.state().dealt().dealId();
  }

  @Test
  void chairsAreMovedAndTheOthersFollowInOrder() {
    Person second = ask(() -> desk.roster().playing().get(1));
    run(() -> desk.roster().move(second, 1));
    until(() -> desk.roster().playing().get(2).playerId().equals(second.playerId()));
    run(() -> desk.lectern().choose(Stock.find("Jigsaw")));
    until(() -> "Jigsaw".equals(session.state().title()));
    List<Part> parts = dealt(() -> desk.lectern().deal());
    assertThat(parts.get(2).player()).isEqualTo(second.name());
    assertThat(ask(() -> desk.roster().lines(null)).get(2).chair()).isEqualTo("3");
  }

  @Test
  void thePlanIsEditedLineByLineAndRefusedInWords() {
    run(() -> desk.lectern().choose(Stock.find("Charleston")));
    until(() -> "Charleston".equals(session.state().title()));
    assertThat(ask(() -> desk.plan().line(0, "4 bars: first only"))).isEmpty();
    assertThat(ask(() -> desk.plan().line(9, "2 bars: none"))).isEmpty();
    assertThat(ask(() -> desk.plan().lines()))
        .startsWith("4 bars: the one of every bar")
        .endsWith("2 bars: no click");
    int before = ask(() -> desk.plan().lines()).size();
    assertThat(ask(() -> desk.plan().line(0, ""))).isEmpty();
    assertThat(ask(() -> desk.plan().lines())).hasSize(before - 1);
    assertThat(ask(() -> desk.plan().line(0, "eight bars of it"))).startsWith("Not understood");
    assertThat(ask(() -> desk.plan().tempo("400"))).contains("played from");
    List<Part> parts = dealt(() -> desk.lectern().deal());
    assertThat(parts).hasSize(3);
    assertThat(ask(() -> session.state().dealt().stages()))
        .isEqualTo(ask(() -> desk.lectern().chosen().stages()));
  }

  @Test
  void aLessonGoesItsWayByOneButton() {
    run(() -> desk.lesson().choose(Stock.findLesson("First day")));
    until(() -> session.state().phase() == Phase.DEALT);
    assertThat(headline(TakeMoment.Part.NONE)).isEqualTo("Say: Clap it once without the click.");
    assertThat(ask(() -> desk.prompt().place()))
        .isEqualTo("Drill 1 of 6: Even eighths, take 1 of 3");
    assertThat(ask(() -> desk.prompt().left())).startsWith("45\u00a0minutes left");
    List<String> plan = ask(() -> desk.plan().lines());
    dealt(() -> desk.lesson().fewerClicks());
    assertThat(ask(() -> desk.plan().lines())).isNotEqualTo(plan);
    dealt(() -> desk.lesson().moreClicks());
    assertThat(ask(() -> desk.plan().lines())).isEqualTo(plan);
    dealt(() -> desk.lesson().next());
    assertThat(ask(() -> session.state().title())).isEqualTo("Bare one");
    run(() -> desk.lesson().goOn());
    until(() -> session.state().takeRuns());
    run(() -> desk.take().stop());
    until(() -> session.state().phase() == Phase.REVIEW);
    assertThat(ask(() -> desk.prompt().place()))
        .as("stopped in the count-in: abandoned, and not counted")
        .contains("Bare one, take 1");
    dealt(() -> desk.lesson().goOn());
    assertThat(ask(() -> session.state().title())).isEqualTo("Bare one");
  }

  /** One command is set off from the others: the one whose keys the window's foot names. */
  @Test
  void theCommandThatComesNextIsTheOneTheFootAsksFor() {
    assertThat(ask(() -> desk.prompt().due())).isEqualTo(Prompt.Command.NONE);
    run(() -> desk.lectern().choose(Stock.find("Charleston")));
    until(() -> "Charleston".equals(session.state().title()));
    assertThat(foot()).contains("Ctrl+D");
    assertThat(ask(() -> desk.prompt().due())).isEqualTo(Prompt.Command.DEAL);
    dealt(() -> desk.lectern().deal());
    assertThat(foot()).contains("Ctrl+Enter");
    assertThat(ask(() -> desk.prompt().due())).isEqualTo(Prompt.Command.GO_ON);
    run(() -> desk.take().countIn());
    until(() -> session.state().takeRuns());
    assertThat(ask(() -> desk.prompt().due())).isEqualTo(Prompt.Command.STOP);
    run(() -> desk.take().stop());
    until(() -> session.state().phase() == Phase.REVIEW);
    assertThat(ask(() -> desk.prompt().due()))
        .as("no lesson: it is dealt again")
        .isEqualTo(Prompt.Command.DEAL);
    dealt(() -> desk.lesson().choose(Stock.findLesson("First day")));
    run(() -> desk.lesson().goOn());
    until(() -> session.state().takeRuns());
    run(() -> desk.lesson().pause());
    until(() -> session.state().phase() == Phase.REVIEW);
    assertThat(ask(() -> desk.prompt().resting(true))).contains("Ctrl+Enter");
    assertThat(ask(() -> desk.prompt().due())).isEqualTo(Prompt.Command.GO_ON);
  }

  private String foot() {
    return ask(() -> new Situation(words).say(session.state(), TakeMoment.NONE, 0));
  }

  /** What the leader says in the first take is never the headline of a later one. */
  @Test
  void theHeadlineSpeaksOfTheStepThatIsNow() {
    run(() -> desk.lesson().choose(Stock.findLesson("First day")));
    until(() -> session.state().phase() == Phase.DEALT);
    assertThat(ask(() -> desk.lesson().canRepeat())).as("nothing was played").isFalse();
    assertThat(ask(() -> desk.plan().line(0, "1 bar: all beats"))).isEmpty();
    assertThat(ask(() -> desk.plan().tempo("160"))).isEmpty();
    dealt(() -> desk.lesson().repeat());
    run(() -> desk.lesson().goOn());
    until(() -> session.state().takeRuns());
    assertThat(headline(TakeMoment.Part.COUNT_IN)).startsWith("Count: One two three four");
    assertThat(headline(TakeMoment.Part.PLAYING))
        .isEqualTo("While it runs: Stay quiet and tap the one on your leg.");
    assertThat(headline(TakeMoment.Part.OVER)).startsWith("Afterwards: ");
    until(() -> session.state().phase() == Phase.REVIEW);
    assertThat(headline(TakeMoment.Part.NONE))
        .startsWith("Afterwards: Read the first two sentences");
    assertThat(ask(() -> desk.prompt().place())).endsWith("Even eighths, take 1 of 3 played");
    assertThat(texts(TakeMoment.Part.NONE)).containsExactly("Play the same drill twice more.");
    assertThat(ask(() -> desk.lesson().canRepeat())).as("the one button repeats it").isFalse();
    assertThat(ask(() -> desk.lectern().pageIsDealt())).as("as it was played").isTrue();

    dealt(() -> desk.lesson().goOn());
    assertThat(ask(() -> desk.lesson().canRepeat())).as("the one button counts in").isTrue();
    assertThat(headline(TakeMoment.Part.NONE))
        .isEqualTo(
            "Say: The same again. This time listen to one other player all the way through.");
    assertThat(texts(TakeMoment.Part.NONE))
        .first()
        .isEqualTo("The click stays on all beats for the one bar.");
    assertThat(ask(() -> desk.prompt().place())).endsWith("Even eighths, take 2 of 3");
    assertThat(ask(() -> desk.plan().tempo("150"))).isEmpty();
    assertThat(ask(() -> desk.lectern().pageIsDealt())).as("dealt at another tempo").isFalse();
  }

  private String headline(TakeMoment.Part part) {
    return ask(() -> desk.prompt().headline(part));
  }

  private List<String> texts(TakeMoment.Part part) {
    return ask(() -> desk.prompt().lines(part)).stream().map(LessonScript.Line::text).toList();
  }

  /** Stand-ins hold what they are dealt, so the click thins, and what clicked is in the take. */
  @Test
  @Tag("long")
  void theClickFollowsWhatIsHeldAndTwoClickedBarsComeAsARescue() {
    Drill fast =
        new Composing(
                null,
                "Beats",
                "4/4",
                "2",
                "1 3 5 7",
                "",
                "",
                "",
                "",
                "",
                "",
                "",
                "",
                "",
                null,
                "all beats")
            .drill();
    run(() -> desk.roster().leaderPlaysProperty().set(false));
    run(() -> desk.lectern().choose(fast));
    until(() -> "Beats".equals(session.state().title()));
    assertThat(ask(() -> desk.plan().line(0, "24 bars: all beats"))).isEmpty();
    assertThat(ask(() -> desk.plan().tempo("200"))).isEmpty();
    dealt(() -> desk.lectern().deal());
    run(() -> desk.take().asHeldProperty().set(true));
    until(() -> session.state().people().stream().filter(Person::ready).count() == 2);
    run(() -> desk.take().countIn());
    until(() -> session.state().takeRuns());
    until(() -> looked().bar() >= 6);
    String said =
        ask(() -> desk.steering().saysProperty().get() + session.state().problem().says());
    assertThat(said).startsWith("Held ");
    assertThat(ask(() -> session.state().dealt().stages()).get(0).bars()).as(said).isEqualTo(6);
    assertThat(ask(() -> desk.plan().lines()))
        .as("the lines are those that sound")
        .hasSizeGreaterThan(1)
        .startsWith("6 bars: all beats");
    run(() -> desk.take().asHeldProperty().set(false));
    TakeMoment now = ask(this::looked);
    run(() -> desk.steering().rescue(now));
    until(() -> desk.steering().saysProperty().get().startsWith("Two clicked bars"));
    until(
        () ->
            session.state().dealt().stages().stream()
                .anyMatch(stage -> stage.bars() == 2 && stage.beats().size() == 4));
    assertThat(ask(() -> session.state().dealt().stages().stream().mapToInt(s -> s.bars()).sum()))
        .isEqualTo(24);
    run(() -> desk.take().stop());
    until(() -> session.state().betweenTakes());
    assertThat(ask(() -> desk.plan().lines()))
        .as("what is dealt next is what was chosen")
        .containsExactly("24 bars: all beats");
  }

  /** Looks as the window does, fifty times a second. */
  private TakeMoment looked() {
    RoomState room = session.state();
    if (room.grid() == null || room.announced() == null || session.link() == null) {
      return TakeMoment.NONE;
    }
    long micros = session.link().roomMicros(System.nanoTime());
    TakeMoment moment = TakeMoment.at(room.grid(), room.plan(), room.announced(), micros);
    desk.steering().look(moment, micros);
    return moment;
  }

  @Test
  void aLessonsClockStandsInABreakAndThePauseSaysWhatItDoes() {
    assertThat(ask(() -> desk.lesson().pauseDoes())).isEqualTo(Pause.NOTHING);
    run(() -> desk.lesson().choose(Stock.findLesson("First day")));
    until(() -> session.state().phase() == Phase.DEALT);
    assertThat(pause()).as("before a count-in there is a lesson to rest from").isEqualTo("Break");
    run(() -> desk.lesson().pause());
    assertThat(ask(() -> desk.lesson().paused())).isTrue();
    assertThat(pause()).isEqualTo("End the break");
    assertThat(headline(TakeMoment.Part.NONE))
        .isEqualTo("Break: the lesson\u2019s clock is stopped.");
    assertThat(ask(() -> desk.prompt().care())).as("said at the foot already").isEmpty();
    assertThat(ask(() -> desk.prompt().resting(false)))
        .isEqualTo(headline(TakeMoment.Part.NONE) + " " + ask(() -> desk.prompt().resting(true)));
    run(() -> desk.lesson().pause());
    assertThat(ask(() -> desk.lesson().paused())).isFalse();
    assertThat(pause()).isEqualTo("Break");
    run(() -> desk.lesson().pause());
    run(() -> desk.lesson().leave());
    assertThat(ask(() -> desk.lesson().paused())).as("no lesson, no break").isFalse();
    assertThat(ask(() -> desk.lesson().pauseDoes())).isEqualTo(Pause.NOTHING);
  }

  /** Five minutes of rest are a break; a shorter one is none. */
  @Test
  void afterTwentyFiveMinutesWithoutABreakOneIsDue() {
    VirtualTime hour = new VirtualTime(0);
    ClassDesk classes = new ClassDesk(session, windowThread, words);
    LecternDesk lesson = LecternDesk.of(session, words, hour, classes);
    run(() -> lesson.lesson().choose(Stock.findLesson("First day")));
    until(() -> session.state().phase() == Phase.DEALT);
    hour.advanceTo(minutes(24.9));
    assertThat(ask(() -> lesson.prompt().care())).isEmpty();
    hour.advanceTo(minutes(26));
    assertThat(ask(() -> lesson.prompt().care()))
        .startsWith("26\u00a0minutes without a break: five minutes are due")
        .contains("Pain means stop", "licensed professionals");
    run(() -> lesson.lesson().pause());
    hour.advanceTo(minutes(28));
    run(() -> lesson.lesson().pause());
    assertThat(ask(() -> lesson.prompt().care())).startsWith("28\u00a0minutes");
    run(() -> lesson.lesson().pause());
    hour.advanceTo(minutes(33));
    run(() -> lesson.lesson().pause());
    assertThat(ask(() -> lesson.prompt().care())).isEmpty();
  }

  private static long minutes(double minutes) {
    return Math.round(minutes * 60e9);
  }

  private String pause() {
    return ask(() -> desk.prompt().pause());
  }

  @Test
  void aPausedTakeIsGoneOnWithByEitherKeyAndThePageSaysWhatItsRestIs() {
    run(() -> desk.lesson().choose(Stock.findLesson("First day")));
    until(() -> session.state().phase() == Phase.DEALT);
    run(() -> desk.lesson().pause());
    run(() -> desk.lesson().goOn());
    assertThat(ask(() -> desk.lesson().paused())).as("the lesson goes on").isFalse();
    assertThat(ask(() -> desk.prompt().care())).isEmpty();
    until(() -> session.state().takeRuns());
    assertThat(pause()).isEqualTo("Pause");

    List<List<Integer>> figures = attacks(ask(() -> session.state().dealt().parts()));
    List<String> plan = ask(() -> desk.plan().lines());
    String first = ask(() -> session.state().announced().takeId());
    run(() -> desk.lesson().pause());
    until(() -> session.state().phase() == Phase.REVIEW);
    assertThat(ask(() -> desk.lesson().paused())).isTrue();
    assertThat(pause()).isEqualTo("Go on");
    assertThat(headline(TakeMoment.Part.NONE)).isEqualTo("Paused in bar 1.");
    assertThat(ask(() -> desk.prompt().resting(true))).contains("Ctrl+Enter", "goes on from bar 1");
    assertThat(ask(() -> desk.prompt().care()))
        .contains("a take of its own", "every entry comes anew", "lists both takes");
    assertThat(ask(() -> desk.prompt().nextStep())).isEqualTo("Go on from bar 1");
    run(() -> desk.lesson().pause());
    until(() -> session.state().takeRuns());
    assertThat(ask(() -> desk.lesson().paused())).isFalse();
    assertThat(ask(() -> session.state().announced().takeId())).isNotEqualTo(first);
    assertThat(attacks(ask(() -> session.state().dealt().parts()))).isEqualTo(figures);
    assertThat(ask(() -> desk.plan().lines())).isEqualTo(plan);
    run(() -> desk.take().stop());
    until(() -> session.state().phase() == Phase.REVIEW);
    assertThat(ask(() -> desk.prompt().nextStep())).isEqualTo("Once more: Even eighths");
  }

  @Test
  void whatIsLookedForIsForgottenOnceADrillIsInUse() {
    run(() -> desk.drills().lookingProperty().set("jig"));
    assertThat(ask(() -> titles(desk.drills().foundProperty()))).containsExactly("Jigsaw");
    run(() -> desk.lectern().choose(Stock.find("Jigsaw")));
    assertThat(ask(() -> desk.drills().lookingProperty().get())).isEmpty();
    assertThat(ask(() -> desk.drills().foundProperty().size())).isEqualTo(Stock.drills().size());
    assertThat(ask(() -> titles(desk.drills().foundProperty().filtered(desk.drills()::inUse))))
        .containsExactly("Jigsaw");
  }

  private static List<String> titles(List<Drill> drills) {
    return drills.stream().map(Drill::title).toList();
  }

  @Test
  void whoComesAfterADealPlaysFromTheNext() {
    run(() -> desk.lectern().choose(Stock.find("Charleston")));
    until(() -> "Charleston".equals(session.state().title()));
    assertThat(dealt(() -> desk.lectern().deal())).hasSize(3);
    run(() -> desk.roster().fill(Manner.STEADY, null, 0));
    until(() -> session.state().people().size() == 4);
    assertThat(ask(() -> session.state().dealt().parts())).hasSize(3);
    assertThat(dealt(() -> desk.lectern().deal())).hasSize(4);
  }

  @Test
  void aNoteAndTheLockReachTheRoom() {
    run(() -> desk.roster().note("Softly.", null));
    until(() -> "Softly.".equals(session.state().note()));
    run(() -> desk.roster().lock(true));
    until(() -> session.state().locked());
    run(() -> desk.roster().remove(desk.roster().playing().get(2)));
    until(() -> session.state().people().size() == 2);
  }

  private void run(Runnable does) {
    ask(
        () -> {
          does.run();
          return true;
        });
  }

  private <T> T ask(Callable<T> asked) {
    try {
      return windowThread.submit(asked).get();
    } catch (Exception failed) {
      throw new AssertionError(failed);
    }
  }

  private void until(Callable<Boolean> holds) {
    await().atMost(PATIENCE).pollInterval(Duration.ofMillis(10)).until(() -> ask(holds));
  }
}
