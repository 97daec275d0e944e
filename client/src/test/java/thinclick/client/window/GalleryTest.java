package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import thinclick.client.check.Verdict;
import thinclick.client.find.FoundHost;
import thinclick.client.link.CuttingProxy;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.LinkOptions;
import thinclick.client.link.LinkState;
import thinclick.client.link.PlayedAttack;
import thinclick.client.link.RoomAddress;
import thinclick.client.link.RoomLink;
import thinclick.client.link.RoomListener;
import thinclick.client.sound.ClockedSpeaker;
import thinclick.client.standin.Slip;
import thinclick.client.standin.StandIn;
import thinclick.client.standin.Timing;
import thinclick.client.window.check.CheckModel;
import thinclick.client.window.session.RoomState;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.music.StepGrid;
import thinclick.server.host.ClassBook;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;
import thinclick.server.material.Stock;
import thinclick.server.words.Speaker;

/**
 * Pictures of every page in every phase of a rehearsal, light and dark, at three sizes, into {@code
 * target/gallery}: to be looked at. A whole rehearsal is played for it, with stand-ins.
 */
@Tag("long")
class GalleryTest extends PictureCase {
  GalleryTest() {
    super("gallery");
  }

  private ScheduledExecutorService hands = Executors.newSingleThreadScheduledExecutor();
  private final List<StandIn> band = new ArrayList<>();

  @Test
  void thePagesOutsideARoom() throws Exception {
    open();
    both("door");
    robot.interact(() -> ((TextField) stage.getScene().lookup("#name")).setText("Ana"));
    robot.interact(() -> ((Button) stage.getScene().lookup("#practise")).fire());
    both("practice");
    robot.type(KeyCode.F1);
    both("help");
    control(KeyCode.DIGIT7);
    both("settings");
    control(KeyCode.DIGIT1);
    both("check-silence");
    closeWindow();
    assertThat(written()).isEqualTo(60);
  }

  /** At an output that plays to nobody, since there may be none here. */
  @Test
  void aSoundCheckByTaps() throws Exception {
    ClockedSpeaker.on(true);
    try {
      open();
      until(() -> desk.check().audibleProperty().get());
      control(KeyCode.DIGIT1);
      both("check");
      aCheckByTaps();
    } finally {
      ClockedSpeaker.on(false);
      hands.shutdownNow();
    }
    closeWindow();
    assertThat(written()).isEqualTo(36);
  }

  /** As it is, and at twice the usual size. */
  private void both(String name) {
    picture(name);
    pictureTwiceAsLarge(name);
  }

  @Test
  void everyPageInEveryPhase() throws Exception {
    open();
    robot.interact(() -> ((TextField) stage.getScene().lookup("#name")).setText("Ana"));
    robot.interact(() -> stage.getScene().lookup("#name").requestFocus());
    robot.type(KeyCode.ENTER);
    until(() -> session.state().inside());
    picture("lectern-empty");
    LinkLoop loop = LinkLoop.start();
    RoomAddress where = RoomAddress.parse("ws://" + session.state().address());
    for (String name : List.of("Ben", "Cleo", "Dara")) {
      Slip slip = name.equals("Cleo") ? new Slip(4, 7, 1) : Slip.NONE;
      band.add(
          StandIn.join(
              loop,
              where,
              session.state().word(),
              name,
              Timing.PRACTISED.leaning(name.length() * 3 - 12),
              dealt -> slip,
              7));
    }
    until(() -> session.state().people().size() == 4);
    control(KeyCode.DIGIT2);
    picture("stand-waiting");
    control(KeyCode.DIGIT3);
    String title = System.getProperty("gallery.drill", "Threes over a blues");
    robot.interact(
        () -> {
          desk.lecternDesk()
              .lectern()
              .choose(
                  Stock.find(title)
                      .withStages(
                          List.of(
                              thinclick.protocol.music.Stage.ofBeats(4, 1, 1, 2, 3, 4),
                              thinclick.protocol.music.Stage.ofBeats(4, 1, 2, 4),
                              thinclick.protocol.music.Stage.ofBeats(4, 2, 1))));
          desk.lecternDesk().plan().tempo("132");
        });
    until(() -> session.state().title() != null);
    picture("lectern-chosen");
    control(KeyCode.D);
    until(() -> session.state().phase() == Phase.DEALT);
    picture("lectern-dealt");
    pictureTwiceAsLarge("lectern-dealt");
    control(KeyCode.DIGIT2);
    picture("stand-dealt");
    pictureTwiceAsLarge("stand-dealt");
    pictureEachTime("stand-count-in", this::countIn);
    countIn();
    play();
    until(() -> bar() > 6.3);
    picture("stand-playing");
    control(KeyCode.DIGIT3);
    picture("lectern-playing");
    control(KeyCode.DIGIT2);
    until(() -> session.state().review() != null && !session.state().review().provisional());
    picture("review");
    down(0.5);
    picture("review-middle");
    down(1);
    picture("review-end");
    down(0);
    pictureTwiceAsLarge("review");
    control(KeyCode.DIGIT2);
    picture("stand-stopped");
    control(KeyCode.DIGIT3);
    picture("lectern-reviewed");
    band.forEach(StandIn::close);
    loop.close();
    hands.shutdownNow();
    closeWindow();
    assertThat(written()).isGreaterThanOrEqualTo(60);
  }

  @Test
  void aDoorThatDoesNotOpenAndALinkThatIsLost() throws Exception {
    try (RehearsalHost host =
            RehearsalHost.start(
                HostOptions.local(folder.resolve("far.db")).speaking(words.language()));
        CuttingProxy proxy = new CuttingProxy(host.port());
        LinkLoop loop = LinkLoop.start()) {
      RoomAddress there = RoomAddress.local(host.port());
      RoomLink leader =
          RoomLink.open(LinkOptions.on(loop), there, "Frau Ott", new RoomListener() {});
      await().until(() -> leader.state() == LinkState.ONLINE);
      open();
      String near = "ws://127.0.0.1:" + proxy.port();
      comeIn(near, "zuzuzuzu");
      until(() -> session.state().link() == LinkState.CLOSED);
      picture("door-refused");
      comeIn(near, leader.word());
      until(() -> session.state().inside());
      picture("stand-waiting-player");
      leader.lead().material("Even eighths").join();
      leader.lead().deal(1, List.of()).join();
      until(() -> session.state().phase() == Phase.DEALT);
      leader.lead().start(session.state().dealt().dealId(), 2_000, 1).join();
      until(() -> bar() > 0);
      proxy.target(1); // nothing more comes through
      proxy.cut();
      until(() -> session.state().link() == LinkState.AWAY);
      robot.type(KeyCode.F).type(KeyCode.J);
      until(() -> session.state().waiting() == 2);
      picture("stand-lost");
      leader.close();
      closeWindow();
    }
    assertThat(written()).isEqualTo(18);
  }

  /**
   * A window that ended in its room, opened again where a class is kept and rooms are announced.
   */
  @Test
  void aDoorWithAWayBackAClassAndFoundRooms() throws Exception {
    Path again = Files.createDirectory(folder.resolve("again"));
    open();
    robot.interact(() -> stage.getScene().lookup("#name").requestFocus());
    robot.write("Frau Ott").type(KeyCode.ENTER);
    until(() -> session.state().inside());
    try (Stream<Path> left = Files.list(folder)) {
      for (Path journal : left.filter(file -> file.toString().endsWith(".journal")).toList()) {
        Files.copy(journal, again.resolve(journal.getFileName()));
      }
    }
    closeWindow();
    folder = again;
    try (ClassBook book =
        ClassBook.open(
            folder.resolve("rooms.db"), null, InstantSource.system(), Speaker.english())) {
      book.make("Tuesday class");
      book.make("Saturday clinic");
    }
    open();
    until(() -> node("come-back").isVisible());
    robot.interact(
        () ->
            desk.found(
                List.of(
                    new FoundHost("Room 12", RoomAddress.parse("192.168.1.20:7420")),
                    new FoundHost("Thinclick", RoomAddress.parse("192.168.1.37:7420")))));
    picture("door-back");
    closeWindow();
    assertThat(written()).isEqualTo(6);
  }

  /** Begun and stopped, then tapped through by a hand that is a little late; then one astray. */
  private void aCheckByTaps() {
    robot.interact(() -> ((Button) stage.getScene().lookup("#check-begin")).fire());
    until(() -> text("check-count").equals("4")); // which are listened to
    hands.scheduleAtFixedRate(() -> robot.type(KeyCode.F), 600, 600, TimeUnit.MILLISECONDS);
    until(() -> text("check-count").equals("9"));
    picture("check-tapping");
    until(() -> desk.check().phaseProperty().get() == CheckModel.Phase.IDLE);
    hands.shutdownNow();
    await().until(hands::isTerminated);
    List<Double> offsets =
        IntStream.range(0, 36).mapToObj(i -> 43 + 9 * Math.sin(i * 1.7)).toList();
    judged(new Verdict.Known(Verdict.How.TAPS, 43, 6, 36, offsets));
    both("check-result");
    List<Double> astray =
        IntStream.range(0, 36).mapToObj(i -> 43 + 160 * Math.sin(i * 1.7)).toList();
    judged(new Verdict.Refused(Verdict.Why.SCATTERED, 36, astray));
    picture("check-refused");
  }

  /** As after a check of the whole room: the page and the chair know of it. */
  private void judged(Verdict verdict) {
    robot.interact(
        () -> {
          Chair first = desk.chairs().first();
          first.delay().judged(first.inputProperty().get().name(), verdict);
          desk.check().judgedElsewhere(verdict);
        });
  }

  /** Within the first bar of a count-in, which is begun anew where it has gone on. */
  private void countIn() {
    if (on(() -> session.state().takeRuns())) {
      control(KeyCode.PERIOD);
      until(() -> session.state().review() != null);
    }
    if (on(() -> session.state().phase()) != Phase.DEALT) {
      control(KeyCode.D);
      until(() -> session.state().phase() == Phase.DEALT);
    }
    control(KeyCode.DIGIT2);
    control(KeyCode.ENTER);
    until(() -> text("count").matches("\\d"));
  }

  private void down(double share) {
    robot.interact(
        () -> {
          if (stage.getScene().lookup(".scroll-pane") instanceof ScrollPane pane) {
            pane.setVvalue(share);
          }
        });
  }

  private void comeIn(String address, String word) {
    robot.interact(
        () ->
            desk.begin(
                new WindowOptions(WindowOptions.Way.JOIN, address, word, "Ana", false, null)));
  }

  @Test
  void fourAtOneComputerAndACheck() throws Exception {
    open();
    robot.interact(() -> robot.lookup("#name").queryAs(TextField.class).requestFocus());
    robot.write("Ana").type(KeyCode.ENTER);
    until(() -> session.state().clock().state() == ClockState.STEADY);
    for (String name : List.of("Ben", "Cleo", "Dara")) {
      robot.interact(() -> session.addSeat(name, why -> {}));
    }
    until(() -> session.state().people().size() == 4);
    control(KeyCode.DIGIT1);
    picture("check-four");
    dealToAll(Stock.find("Threes over a blues"), 120);
    until(() -> session.further().stream().allMatch(seat -> seat.state().ownPart() != null));
    control(KeyCode.DIGIT2);
    picture("stand-four");
    control(KeyCode.ENTER);
    until(() -> bar() > 1.6);
    picture("stand-four-playing");
    robot.interact(() -> ((ToggleButton) node("stand-part-1")).fire());
    picture("stand-four-one");
    control(KeyCode.PERIOD);
    until(() -> session.state().review() != null);
    until(() -> session.further().stream().allMatch(seat -> seat.state().review() != null));
    robot.type(KeyCode.F7);
    picture("review-four");
    fourPartsPageByPage();
    closeWindow();
    assertThat(written()).isEqualTo(42);
  }

  /** The same line, entered a step later by each: four lines, two of which fit. */
  private void fourPartsPageByPage() {
    Drill drill = Stock.find("Threes over a blues");
    Drill.Chair first = drill.chairs().get(0);
    List<Drill.Chair> four =
        IntStream.range(0, 4)
            .mapToObj(i -> first.edited().named("" + (i + 1)).entryStep(i).instrument(null).chair())
            .toList();
    String before = on(() -> session.state().dealt().dealId());
    dealToAll(drill.withChairs(four), 120);
    until(
        () ->
            session.state().dealt() != null
                && !session.state().dealt().dealId().equals(before)
                && session.further().stream().allMatch(seat -> seat.state().ownPart() != null));
    control(KeyCode.DIGIT2);
    robot.interact(() -> ((ToggleButton) node("stand-all")).fire());
    picture("stand-four-parts");
    robot.type(KeyCode.F7);
    picture("stand-four-parts-next");
  }

  /** Plays the own part, a little late, one attack left out, one far too early, one too many. */
  private void play() {
    RoomState room = on(session::state);
    StepGrid grid = room.grid();
    int index = 0;
    for (int step : room.ownPart().attackSteps()) {
      index++;
      double off =
          9 * Math.sin(index * 1.7) + (index % 7 == 3 ? -34 : 0) + (index % 9 == 5 ? 38 : 0);
      if (index % 11 != 6) {
        tap((long) (grid.microsAt(step) + off * 1e3));
      }
      if (index % 13 == 4) {
        tap((long) (grid.microsAt(step) + grid.stepMicros() * 1.1));
      }
    }
  }

  private void tap(long micros) {
    long nanos = session.link().nanosOf(micros);
    hands.schedule(
        () ->
            WindowThread.INSTANCE.execute(
                () -> session.play(new PlayedAttack(nanos, null, null, null, null))),
        nanos - System.nanoTime(),
        TimeUnit.NANOSECONDS);
  }
}
