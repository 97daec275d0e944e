package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.check.TapCheck;
import thinclick.client.link.PlayedAttack;
import thinclick.client.sound.SoundState;
import thinclick.client.window.check.CheckModel;
import thinclick.client.window.review.ReviewPage;
import thinclick.client.window.session.FurtherSeat;
import thinclick.client.window.session.Lead;
import thinclick.client.window.session.Session;
import thinclick.client.window.settings.InputSettings;
import thinclick.client.window.settings.SettingsFile;
import thinclick.client.window.settings.SoundSettings;
import thinclick.client.window.words.Refused;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Drill.Cell;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.AnswerMessage.KeptTake;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.music.Stage;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.material.Stock;

/** Four chairs at one computer in a real room: keys, a part, a length and a measure for each. */
class ChairsTest {
  private static final long MILLI = 1_000_000;
  private static final List<KeyCode> KEYS = List.of(KeyCode.Q, KeyCode.R, KeyCode.U, KeyCode.P);

  @TempDir Path folder;

  private final Words words = Words.in(Locale.ENGLISH);
  private Session session;
  private SoundDesk sound;
  private Chairs chairs;
  private CheckModel check;
  private Taps taps;
  private Remembered remembered;
  private String said = "";

  @BeforeEach
  void sitDown() throws Exception {
    FxToolkit.registerPrimaryStage();
    run(
        () -> {
          session = new Session(WindowThread.INSTANCE, MonotonicClock.SYSTEM, folder);
          sound = new SoundDesk(session, words, SoundSettings.FIRST);
          SettingsFile file = new SettingsFile(folder);
          remembered = new Remembered(file, file.read());
          chairs = new Chairs(session, sound, words);
          check = new CheckModel(words, sound, WindowThread.INSTANCE, chairs::judged);
          taps = new Taps(session, chairs, words, check, remembered.input());
          session.openHere("Ana", false);
        });
    sound.soundChanged(SoundState.SOUNDING, "speakers");
    until(() -> session.state().clock().state() == ClockState.STEADY);
    for (String name : List.of("Ben", "Cem", "Dora")) {
      run(() -> session.addSeat(name, why -> said = why));
    }
    until(() -> session.state().people().size() == 4);
  }

  @AfterEach
  void close() throws Exception {
    run(
        () -> {
          taps.close();
          session.close();
        });
    FxToolkit.cleanupStages();
  }

  @Test
  void eachPlaysAPartOnKeysOfItsOwnAndIsMeasuredForItself() throws Exception {
    measured(KeyCode.U, 80);
    until(() -> person("Cem").soundCheck());
    assertThat(session.state().people().stream().filter(Person::soundCheck)).hasSize(1);
    assertThat(on(() -> chairs.get(2).delay().saysProperty().get())).contains("80\u00a0ms");
    assertThat(on(() -> chairs.first().delay().saysProperty().get())).contains("not measured");

    run(
        () ->
            session
                .lead()
                .chooseAndDeal(
                    new Lead.Hand(
                        held(),
                        240,
                        1,
                        session.state().people().stream().map(Person::playerId).toList())));
    until(
        () ->
            session.state().phase() == Phase.DEALT
                && session.further().stream().allMatch(seat -> seat.state().ownPart() != null));
    run(() -> session.lead().countIn());
    until(
        () ->
            chairs.all().stream().allMatch(chair -> chair.seat().state().takeRuns())
                && session.state().announced() != null);
    long start = session.link().nanosOf(session.state().announced().startMicros());
    run(
        () -> {
          for (int step = 0; step < 8; step++) {
            for (KeyCode key : KEYS) {
              long late = key == KeyCode.U ? 80 : 0; // as it was measured
              long at = start + (step * 125 + late) * MILLI;
              taps.key(Keys.pressed(key), at);
              taps.key(Keys.released(key), at + 110 * MILLI);
            }
          }
          taps.key(Keys.pressed(KeyCode.Z), start); // nobody's, where more than two play
        });
    for (Chair chair : chairs.all()) {
      assertThat(on(() -> chair.seat().take().ownAttacks(""))).as(chair.name()).hasSize(8);
    }
    double apart =
        on(() -> chairs.first().seat().take().ownAttacks("").get(0).micros())
            - on(() -> chairs.get(2).seat().take().ownAttacks("").get(0).micros());
    assertThat(apart / 1e3).as("Cem's measured delay is taken off").isCloseTo(0, within(1.0));
    until(() -> chairs.all().stream().allMatch(chair -> analysed(chair.review().pageProperty())));
    assertThat(players(0))
        .hasSize(4)
        .allMatch(line -> line.get(line.size() - 1).equals("88\u00a0% of written"));
    for (int chair = 1; chair < 4; chair++) {
      int one = chair;
      String name = on(() -> chairs.get(one).name());
      assertThat(players(chair)).as("figures on the page of " + name).hasSize(1);
      assertThat(players(chair).get(0).get(0)).isEqualTo(name);
      ReviewPage page = on(() -> chairs.get(one).review().pageProperty().get());
      assertThat(page.own()).isEqualTo(name);
      assertThat(page.content().head()).startsWith(name + ": ");
      assertThat(page.content().section("attacks")).isNotNull();
      assertThat(page.content().section("slip").says())
          .isNotEmpty()
          .allMatch(
              said -> List.of("Ana", "Ben", "Cem", "Dora").stream().noneMatch(said::contains));
    }
    aFurtherPlayersTakeIsTheirOwn();
  }

  private void aFurtherPlayersTakeIsTheirOwn() throws Exception {
    CompletableFuture<KeptTake> kept = new CompletableFuture<>();
    CompletableFuture<Refused> refused = new CompletableFuture<>();
    run(
        () -> {
          chairs.get(2).seat().keepTake(kept::complete, refused::complete);
          chairs.get(2).seat().keepTake(kept::complete, refused::complete);
        });
    until(() -> kept.isDone() && refused.isDone());
    assertThat(kept.join().whole()).isFalse();
    assertThat(kept.join().take().parts()).extracting(Part::player).containsExactly("Cem");
    assertThat(kept.join().take().attacks()).hasSize(8).allMatch(one -> one.player().equals("Cem"));
    assertThat(refused.join().says()).contains("two seconds");
  }

  private static boolean analysed(ReadOnlyObjectProperty<ReviewPage> page) {
    return page.get() != null && page.get().analysis() != null;
  }

  private List<List<String>> players(int chair) {
    return on(
        () ->
            chairs
                .get(chair)
                .review()
                .pageProperty()
                .get()
                .content()
                .section("players")
                .table()
                .lines());
  }

  /** A computer that is silent in a room with one loudspeaker, in a take for that alone. */
  @Test
  void silentChairsAreMeasuredAgainstTheRoomsOneLoudspeaker() throws Exception {
    run(() -> sound.mutedProperty().set(true));
    assertThat(on(() -> chairs.get(1).delay().saysProperty().get())).contains("not yet measured");
    checkTheRoom();
    long start = session.link().nanosOf(session.state().announced().startMicros());
    run(
        () -> {
          for (int beat = 0; beat < 40; beat++) {
            long at = start + (beat * 200 + 64) * MILLI;
            taps.key(Keys.pressed(KeyCode.R), at);
            taps.key(Keys.released(KeyCode.R), at + 20 * MILLI);
          }
        });
    until(() -> session.state().phase() == Phase.REVIEW);
    until(() -> person("Ben").soundCheck());
    assertThat(on(() -> chairs.get(1).delay().saysProperty().get()))
        .contains("room\u2019s loudspeaker", "64\u00a0ms");
    assertThat(session.state().people().stream().filter(Person::soundCheck)).hasSize(1);
    run(() -> sound.mutedProperty().set(false)); // its own output is another matter
    until(() -> !person("Ben").soundCheck());
  }

  @Test
  void aRoomsCheckInWhichThisComputersClickStumbledSetsNothing() throws Exception {
    run(() -> sound.start());
    checkTheRoom();
    long start = session.state().announced().startMicros();
    sound.clickInterrupted(start, start + 400_000);
    run(
        () -> {
          taps.key(Keys.pressed(KeyCode.Q), session.link().nanosOf(start));
          session.lead().stop();
        });
    until(() -> session.state().phase() == Phase.REVIEW);
    until(() -> check.saysProperty().get().startsWith("The click stumbled meanwhile"));
  }

  /** Deals a sound check for the room and counts it in, until it runs for every chair. */
  private void checkTheRoom() throws Exception {
    run(
        () -> {
          RoomCheck room = new RoomCheck(session, chairs, check, sound::stumbledIn);
          taps.onPlayed((chair, attack) -> room.tapped(chair, attack.nanos()));
          room.deal(300);
        });
    until(
        () ->
            session.state().phase() == Phase.DEALT
                && session.further().stream().allMatch(seat -> seat.state().ownPart() != null));
    run(() -> session.lead().countIn());
    until(() -> chairs.all().stream().allMatch(chair -> chair.seat().state().takeRuns()));
  }

  @Test
  void whoGoesTakesTheirKeysAlong() throws Exception {
    assertThat(on(() -> taps.letters(3))).isEqualTo("O L P");
    FurtherSeat ben = on(() -> session.further().get(0));
    run(() -> session.removeSeat(ben));
    assertThat(on(ben::link)).as("what still comes is not heard").isNull();
    until(() -> chairs.all().size() == 3 && person("Ben") == null);
    assertThat(on(() -> chairs.get(1).name())).isEqualTo("Cem");
    assertThat(on(() -> taps.letters(1))).isEqualTo("T G B H N");
    run(() -> taps.show(chairs.get(1)));
    taps.struck("pad two", 9, PlayedAttack.tap(System.nanoTime()));
    until(() -> taps.pads(chairs.get(1)).equals(List.of("pad two")));
    assertThat(on(() -> taps.settingsProperty().get().pads()))
        .containsExactly(new InputSettings.Pad("pad two", 10, "Cem"));
    run(() -> session.addSeat("Ana", why -> said = why)); // taken already
    until(() -> said.contains("Ana"));
    until(() -> chairs.all().size() == 3);
  }

  /** A bar of eighths for four, each written as an eighth. */
  private static Drill held() {
    Cell eighths =
        new Cell(
            8,
            List.of(0, 1, 2, 3, 4, 5, 6, 7),
            null,
            List.of(1, 1, 1, 1, 1, 1, 1, 1),
            null,
            null,
            null);
    List<Drill.Chair> four =
        IntStream.rangeClosed(1, 4).mapToObj(i -> Drill.Chair.of("" + i, eighths)).toList();
    return Stock.find("Even eighths")
        .withChairs(four)
        .withStages(List.of(Stage.ofBeats(1, 1, 1, 2, 3, 4)));
  }

  /** Thirty-six taps, all so late. */
  private void measured(KeyCode key, int lateMillis) throws Exception {
    run(
        () -> {
          long now = System.nanoTime();
          check.begin(now);
          long first = now + 1_500 * MILLI;
          for (int i = 0; i < TapCheck.LEAD_IN + TapCheck.COUNTED; i++) {
            long at = first + i * 600 * MILLI + lateMillis * MILLI;
            taps.key(Keys.pressed(key), at);
            taps.key(Keys.released(key), at + 50 * MILLI);
          }
          check.look(now + 60_000 * MILLI);
        });
  }

  private Person person(String name) {
    return session.state().people().stream()
        .filter(one -> one.name().equals(name))
        .findFirst()
        .orElse(null);
  }

  private static void run(Runnable does) throws Exception {
    on(
        () -> {
          does.run();
          return null;
        });
  }

  private static void until(Callable<Boolean> holds) {
    await().atMost(Duration.ofSeconds(40)).until(() -> on(holds));
  }

  private static <T> T on(Callable<T> asked) {
    return WaitForAsyncUtils.waitForAsyncFx(10_000, asked);
  }
}
