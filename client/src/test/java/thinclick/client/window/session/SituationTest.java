package thinclick.client.window.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import thinclick.client.clock.ClockMapping;
import thinclick.client.clock.ClockView;
import thinclick.client.link.LinkState;
import thinclick.client.window.words.FromAfar;
import thinclick.client.window.words.Refused;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.message.TakeNews.StopReason;
import thinclick.protocol.message.TakeNews.Stopped;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;

/** One sentence at the bottom for every state, from the messages that make the state. */
class SituationTest {
  private static final long SECOND = 1_000_000_000L;

  private final Situation situation = new Situation(Words.in(Locale.ENGLISH));

  @Test
  void outsideOneIsToldTheWaysIn() {
    assertThat(say(RoomState.OUTSIDE)).startsWith("Write your name").contains("Enter");
  }

  @Test
  void untilTheRoomHasLetOneInOneIsJoining() {
    RoomState calling = RoomState.OUTSIDE.calling("10.0.0.2:7420");
    assertThat(say(calling)).contains("10.0.0.2:7420");
    assertThat(say(calling.linkChanged(LinkState.ONLINE, "", 0))).contains("10.0.0.2:7420");
  }

  @Test
  void aRoomThatCannotBeHadSaysWhy() {
    RoomState closed =
        RoomState.OUTSIDE
            .calling("10.0.0.2:7420")
            .linkChanged(LinkState.CLOSED, "no server answers at ws://10.0.0.2:7420", 0);
    assertThat(say(closed)).startsWith("No host answers at ws://10.0.0.2:7420. You are in no room");
  }

  /** What is said on the wire for engineers is said to players as a sentence, in both languages. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "name: \"Ana\" is taken | The name Ana is taken in this room; choose another. | Der Name Ana ist in diesem Raum vergeben; bitte einen anderen wählen.",
        "expected material to be chosen first | Choose a lesson or a drill first. | Erst eine Stunde oder eine Übung wählen.",
        "no room of that word | There is no room with that word. | Einen Raum mit diesem Wort gibt es nicht.",
        "the room has 32 members | The room is full: 32 are in it. | Der Raum ist voll: 32 sind schon da.",
        "given up 3 attacks: expected one of the last takes | Attacks of an earlier take that could not be handed in: 3. Its host does not know the take any more, or no part of yours in it. | Anschläge eines früheren Durchgangs, die sich nicht mehr übertragen ließen: 3. Der Gastgeber kennt den Durchgang nicht mehr oder keine Stimme von dir darin.",
        "tempo: something new | tempo: something new | Gesagt wurde, auf Englisch: tempo: something new",
      })
  void whatComesFromAfarIsASentence(String wire, String english, String german) {
    assertThat(new FromAfar(Words.in(Locale.ENGLISH)).say(wire)).isEqualTo(english);
    assertThat(new FromAfar(Words.in(Locale.GERMAN)).say(wire)).isEqualTo(german);
  }

  @Test
  void aPlayerWaitsALeaderIsToldWhatToDo() {
    assertThat(say(inside(false)))
        .isEqualTo("Room tededani: wait here; the leader deals the parts.");
    assertThat(say(inside(true)))
        .contains("tededani")
        .contains("only you so far")
        .contains("Ctrl+3");
    assertThat(say(inside(true).room(room(Phase.GATHERING, "Son 3-2"))))
        .contains("deal \u201cSon 3-2\u201d");
  }

  @Test
  void whatIsDealtIsReadOrCountedIn() {
    assertThat(say(inside(false).dealt(dealt("Ana"))))
        .startsWith("\u201cSon 3-2\u201d: read your part");
    assertThat(say(inside(true).dealt(dealt("Ana")))).contains("Ctrl+Enter");
    assertThat(say(inside(false).dealt(dealt(null)))).contains("from the next deal on");
  }

  @Test
  void whileTheClockIsSoughtTheDealSaysSo() {
    RoomState finding = inside(false).clockChanged(ClockView.unknown(0)).dealt(dealt("Ana"));
    assertThat(say(finding)).startsWith("Finding the room\u2019s clock");
  }

  @Test
  void aTakeSaysItsBarAndHowLongTheClickStays() {
    RoomState taking = inside(false).dealt(dealt("Ana")).announced(announced());
    assertThat(situation.say(taking, playing(2, 6), 0))
        .isEqualTo("Bar 3 of 16; the click changes in 6\u00a0bars.");
    assertThat(situation.say(taking, playing(7, 1), 0)).contains("in 1\u00a0bar");
    assertThat(situation.say(taking, playing(9, 0), 0)).contains("to the end");
  }

  @Test
  void whoLeadsATakeIsToldWhatStopsIt() {
    RoomState leading = inside(true).dealt(dealt("Ana")).announced(announced());
    assertThat(situation.say(leading, playing(2, 6), 0))
        .isEqualTo("Bar 3 of 16; the click changes in 6\u00a0bars. Ctrl+Period stops.");
    assertThat(situation.say(leading, moment(TakeMoment.Part.COUNT_IN, 0), 0))
        .isEqualTo("Count-in. Ctrl+Period stops.");
  }

  @Test
  void fromTheAnnouncementToTheFirstBarAndAfterTheLastThereIsASentence() {
    RoomState taking = inside(false).dealt(dealt("Ana")).announced(announced());
    assertThat(situation.say(taking, moment(TakeMoment.Part.BEFORE, 2), 0))
        .isEqualTo("Count-in in 2\u00a0seconds: tap on any letter key or pad.");
    assertThat(situation.say(taking, moment(TakeMoment.Part.BEFORE, 0), 0)).contains("a moment");
    assertThat(situation.say(taking, moment(TakeMoment.Part.COUNT_IN, 0), 0))
        .isEqualTo("Count-in.");
    assertThat(situation.say(taking, moment(TakeMoment.Part.OVER, 0), 0))
        .isEqualTo("That was the last bar.");
  }

  /** Every way in which a take may end has a sentence of its own, in both languages. */
  @ParameterizedTest
  @EnumSource(StopReason.class)
  void everyEndOfATakeIsSaid(StopReason reason) {
    RoomState over =
        inside(false)
            .dealt(dealt("Ana"))
            .announced(announced())
            .stopped(new Stopped("t1", 5, reason))
            .waitingChanged(2);
    assertThat(say(over))
        .startsWith("The ")
        .endsWith("The review is on its way, 2\u00a0attacks are still being sent.");
    assertThat(new Situation(Words.in(Locale.GERMAN)).say(over, TakeMoment.NONE, 0))
        .doesNotContain("The ");
  }

  @Test
  void aLeaderWhoIsAwayCanBeReplaced() {
    Person lea = person("p2", "Lea", Role.LEADER, false);
    RoomState without =
        inside(false)
            .roster(
                new ServerMessage.Roster(3, List.of(lea, person("p1", "Ana", Role.PLAYER, true))));
    assertThat(say(without)).startsWith("The leader is away").contains("Ctrl+K");
  }

  private static TakeMoment moment(TakeMoment.Part part, int seconds) {
    return new TakeMoment(part, seconds, 0, -1, -1, 0);
  }

  private static Person person(String id, String name, Role role, boolean connected) {
    return new Person(id, name, role, null, connected, null, null, null, false, false, false);
  }

  /** Not hidden by what the sound check or the season says at the foot of its page. */
  @Test
  void aLostLinkALostClockAndADealtPartComeBeforeWhatAPageSays() {
    assertThat(situation.comesFirst(RoomState.OUTSIDE)).isFalse();
    assertThat(situation.comesFirst(inside(false))).isFalse();
    assertThat(situation.comesFirst(inside(false).dealt(dealt("Ana")))).isTrue();
    assertThat(situation.comesFirst(inside(false).linkChanged(LinkState.AWAY, "cut", 1))).isTrue();
    ClockView lost =
        new ClockView(new ClockMapping(0, 0, 0), ClockState.LOST, 1, 1e6, 1e6, 1e6, 1e6);
    assertThat(situation.comesFirst(inside(false).clockChanged(lost))).isTrue();
  }

  @Test
  void aPlanThatIsChangedInTheTakeReplacesTheDealtOne() {
    RoomState replanned =
        inside(false)
            .dealt(dealt("Ana"))
            .announced(announced())
            .replanned(
                new TakeNews.Replanned(
                    "t1", 8, List.of(Stage.ofBeats(8, 1, 1, 2, 3, 4), Stage.ofBeats(4, 1))));
    assertThat(replanned.plan().bars()).isEqualTo(12);
    assertThat(situation.say(replanned, playing(2, 6), 0)).startsWith("Bar 3 of 12");
  }

  @Test
  void aLostLinkInATakeSaysHowLongAndThatOneShouldPlayOn() {
    RoomState lost =
        inside(false)
            .dealt(dealt("Ana"))
            .announced(announced())
            .waitingChanged(3)
            .linkChanged(LinkState.AWAY, "cut", 100 * SECOND)
            .linkChanged(LinkState.AWAY, "cut again", 104 * SECOND);
    assertThat(situation.say(lost, TakeMoment.NONE, 108 * SECOND))
        .contains("8\u00a0seconds")
        .contains("Play on")
        .contains("3\u00a0notes are kept");
  }

  @Test
  void anUncertainClockIsSaid() {
    ClockView lost =
        new ClockView(new ClockMapping(0, 0, 0), ClockState.LOST, 1, 1e6, 1e6, 1e6, 1e6);
    assertThat(say(inside(false).clockChanged(lost))).contains("clock is being found anew");
  }

  /** An unmeasured chair may be 60 ms off, whatever its clock knows. */
  @Test
  void whatTheHostHasNotedOfTheChairIsHowFarItMayBeOff() {
    RoomState room = inside(false);
    assertThat(room.uncertaintyMillis()).isCloseTo(60, within(0.001));
    RoomState measured = room.chairNoted(new AnswerMessage.SoundCheckNoted(42, 9, true));
    assertThat(measured.uncertaintyMillis()).isCloseTo(9, within(0.001));
    assertThat(measured.clockChanged(ClockView.unknown(0)).uncertaintyMillis()).isEqualTo(10_000);
    RoomState lost = measured.chairNoted(new AnswerMessage.SoundCheckNoted(0, 60, false));
    assertThat(lost.uncertaintyMillis()).isCloseTo(60, within(0.001));
  }

  @Test
  void theEndSaysWhyAndThenWhereTheReviewIs() {
    RoomState stopped =
        inside(false)
            .dealt(dealt("Ana"))
            .announced(announced())
            .stopped(new Stopped("t1", 5, StopReason.LEADER));
    assertThat(say(stopped)).startsWith("The leader stopped the take.");
  }

  @Test
  void whatWasRefusedIsASentenceUntilSomethingElseHappens() {
    RoomState refused =
        inside(true)
            .problem(
                new Refused(ErrorCode.WRONG_PHASE, "expected a player in the room, found none"));
    assertThat(say(refused))
        .isEqualTo(
            "Nobody in the room plays yet: wait for players, bring a stand-in, or have a part dealt"
                + " to yourself.");
    assertThat(say(refused.dealt(dealt("Ana")))).contains("Ctrl+Enter");
  }

  private String say(RoomState room) {
    return situation.say(room, TakeMoment.NONE, 0);
  }

  private static TakeMoment playing(int bar, int toNext) {
    return new TakeMoment(TakeMoment.Part.PLAYING, 0, 0, bar, 0, toNext);
  }

  private static RoomState inside(boolean leader) {
    ClockView steady =
        new ClockView(new ClockMapping(0, 0, 0), ClockState.STEADY, 1, 100, 10, 100, 100);
    Role role = leader ? Role.LEADER : Role.PLAYER;
    return RoomState.OUTSIDE
        .calling("10.0.0.2:7420")
        .linkChanged(LinkState.ONLINE, "in", 0)
        .welcome(
            new ServerMessage.Welcome(
                1,
                "p1",
                "token",
                leader ? "lead" : null,
                "tededani",
                1,
                1,
                Phase.GATHERING,
                0,
                new ServerMessage.RoomLimits(64, 16_384, 50, 256)))
        .roster(new ServerMessage.Roster(2, List.of(person("p1", "Ana", role, true))))
        .clockChanged(steady);
  }

  private static ServerMessage.Room room(Phase phase, String title) {
    return new ServerMessage.Room(
        3, phase, "tededani", title, null, null, null, null, 0, false, null);
  }

  private static Dealt dealt(String own) {
    return new Dealt(
        4,
        "d1",
        "Son 3-2",
        List.of(Part.of("Ana", 0, List.of(0, 3, 6))),
        own,
        Meter.FOUR_FOUR,
        2,
        120,
        Swing.STRAIGHT,
        50,
        List.of(Stage.ofBeats(8, 1, 1, 2, 3, 4), Stage.ofBeats(8, 1, 1)),
        List.of("Ana comes in on 1."),
        null);
  }

  private static Announced announced() {
    return new Announced("t1", "d1", 1, 8_000_000, 10_000_000, 1);
  }
}
