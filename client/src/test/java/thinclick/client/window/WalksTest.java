package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import javafx.event.ActionEvent;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.sound.ClockedSpeaker;
import thinclick.client.window.door.DoorModel;
import thinclick.client.window.help.HelpText;
import thinclick.client.window.help.HelpText.Kind;
import thinclick.client.window.review.LeaderFiles;
import thinclick.client.window.session.Session;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.material.Stock;
import thinclick.server.words.Spoken;

/**
 * The walks of the help and the README, walked: every name and key that a step says is pressed in
 * the step's order, in a real window or, for somebody else's computer, at a second door; a step
 * that says another name than was pressed fails.
 */
class WalksTest extends WindowCase {
  private final List<Session> guests = new ArrayList<>();
  private final List<String> pressed = new ArrayList<>();
  private HelpText.Section walk;
  private int step;

  @BeforeEach
  void openTheDoor() throws Exception {
    ClockedSpeaker.on(true); // a check wants a click that can be heard
    open();
  }

  @AfterEach
  void closeTheGuests() {
    ClockedSpeaker.on(false);
    guests.forEach(Session::close);
  }

  @Test
  void aClassADuoAndAClinicInFiveStepsEach() throws Exception {
    aClass();
    leave();
    aDuo();
    leave();
    aClinic();
  }

  private void aClass() throws Exception {
    begin("A class in five steps");
    write("Your name", "Ana");
    write("Class", "7b");
    fire("Let other computers on this network join");
    fire("Open a room");
    until(() -> session.state().inside() && onPage("Lectern"));
    assertThat(on(() -> label("#address").getText()))
        .contains(session.state().address(), session.state().word());
    stepIsOver();

    comeIn("Ben", 2);
    fire("Silent here");
    fire("Bring a stand-in");
    until(() -> session.state().people().size() == 3);
    stepIsOver();

    mark("Lessons");
    key("Enter", () -> robot.type(KeyCode.ENTER));
    until(() -> session.state().phase() == Phase.DEALT);
    assertThat(on(() -> visible("#script-lines"))).as("what to say and do").isTrue();
    control("Ctrl+4", KeyCode.DIGIT4);
    assertThat(on(() -> desk.wall().showing())).isTrue();
    robot.press(KeyCode.CONTROL).type(KeyCode.DIGIT4).release(KeyCode.CONTROL);
    assertThat(on(() -> desk.wall().showing())).as("and puts it away").isFalse();
    stepIsOver();

    control("Ctrl+Enter", KeyCode.ENTER);
    says("Bar 1");
    ClickPlan before = on(() -> session.state().plan());
    control("Ctrl+R", KeyCode.R);
    until(() -> !before.equals(session.state().plan()));
    control("Ctrl+Period", KeyCode.PERIOD);
    until(() -> session.state().review() != null && onPage("Review"));
    stepIsOver();

    byte[] pages = kept("Keep each player\u2019s page (PDF)", LeaderFiles::pages);
    assertThat(new String(pages, 0, 5, StandardCharsets.ISO_8859_1)).isEqualTo("%PDF-");
    fire("Season");
    until(() -> onPage("Season"));
    theWalkIsOver();
  }

  private void aDuo() throws Exception {
    begin("A duo in five steps");
    write("Your name", "Ana");
    assertThat(((CheckBox) named("Let other computers", true)).isSelected()).isTrue();
    pressed.add("Let other computers on this network join");
    fire("Open a room");
    until(() -> session.state().inside() && onPage("Lectern"));
    stepIsOver();

    comeIn("Cleo", 2);
    stepIsOver();

    control("Ctrl+1", KeyCode.DIGIT1);
    until(() -> desk.check().audibleProperty().get());
    fire("Begin");
    until(() -> !label("#check-progress").getText().isEmpty());
    robot.interact(() -> ((ButtonBase) stage.getScene().lookup("#check-stop")).fire());
    seen("Hearing the others");
    robot.interact(() -> ((ButtonBase) stage.getScene().lookup("#hearing-in-time")).fire());
    until(() -> label("#hearing-says").getText().contains("nobody waits for the line"));
    stepIsOver();

    control("Ctrl+3", KeyCode.DIGIT3);
    mark("Drills");
    key("Enter", () -> robot.type(KeyCode.ENTER));
    until(() -> session.state().title() != null);
    soon();
    aTakeOfTwoBars();
    control("Ctrl+D", KeyCode.D);
    until(() -> session.state().phase() == Phase.DEALT);
    control("Ctrl+Enter", KeyCode.ENTER);
    until(() -> session.state().review() != null && onPage("Review"));
    stepIsOver();

    Session partner = guests.get(guests.size() - 1);
    until(() -> partner.state().review() != null);
    assertThat(partner.state().review().takeId()).isEqualTo(session.state().review().takeId());
    fire("Keep as PDF");
    kept("#review-done", ".pdf");
    seen("What next");
    robot.interact(() -> ((ButtonBase) stage.getScene().lookup("#review-next")).fire());
    until(() -> session.state().phase() == Phase.DEALT || onPage("Stand"));
    theWalkIsOver();
  }

  private void aClinic() throws Exception {
    begin("A clinic in five steps");
    write("Your name", "Ana");
    fire("Open a room");
    until(() -> session.state().inside() && onPage("Lectern"));
    control("Ctrl+1", KeyCode.DIGIT1);
    fire("Learn a pad");
    until(() -> label("#pad-says").getText().startsWith("Strike the pad four times"));
    write("Another name", "Ben");
    fire("Let in");
    until(() -> session.state().people().size() == 2);
    for (String player : List.of("Ana", "Ben")) {
      assertThat(named("Give " + player + " a pad", false).isDisabled()).isFalse();
    }
    stepIsOver();

    control("Ctrl+3", KeyCode.DIGIT3);
    write("Look for a drill", "Room 12");
    mark("Drills");
    key("Enter", () -> robot.type(KeyCode.ENTER));
    until(() -> "Room 12 rhythm section".equals(session.state().title()));
    soon();
    comeIn("Dara", 3);
    pressed.removeIf(words.say("door.name")::equals);
    pressed.removeIf(words.say("door.address")::equals);
    pressed.removeIf(words.say("door.word")::equals);
    pressed.removeIf(words.say("door.join.button")::equals);
    ListView<?> roster = (ListView<?>) stage.getScene().lookup("#roster");
    robot.interact(() -> roster.getSelectionModel().select(2));
    fire("Chair before");
    fire("Chair after");
    ChoiceBox<?> manner = (ChoiceBox<?>) stage.getScene().lookup("#manner");
    robot.interact(() -> manner.getSelectionModel().select(2));
    fire("Bring a stand-in");
    until(() -> session.state().people().size() == 4);
    stepIsOver();

    fire("Thin as held: the click follows what the band holds");
    control("Ctrl+D", KeyCode.D);
    until(() -> session.state().phase() == Phase.DEALT);
    stepIsOver();

    control("Ctrl+Enter", KeyCode.ENTER);
    says("Bar 3");
    stop();
    stepIsOver();

    until(() -> onPage("Review"));
    seen("Role by role");
    seen("Who follows whom");
    byte[] figures = kept("Keep the figures (CSV)", LeaderFiles::figures);
    assertThat(new String(figures, StandardCharsets.UTF_8)).contains("Dara");
    fire("Compare with the last take of this kind");
    until(() -> found("There is no take before this one", true) != null);
    theWalkIsOver();
  }

  // ---------------------------------------------------------------- the text and what was done

  private void begin(String title) {
    walk =
        HelpText.in(Locale.ENGLISH).sections().stream()
            .filter(section -> section.title().equals(title))
            .findFirst()
            .orElseThrow();
    step = 0;
  }

  /** What was pressed since the step before is what the step names, in its order. */
  private void stepIsOver() {
    HelpText.Line line = walk.lines().get(step);
    assertThat(pressed)
        .as("%s, %s", walk.title(), line.text())
        .isEqualTo(
            line.runs().stream()
                .filter(run -> run.kind() != Kind.WORDS)
                .map(HelpText.Run::text)
                .toList());
    pressed.clear();
    step++;
  }

  private void theWalkIsOver() {
    stepIsOver();
    assertThat(step).isEqualTo(walk.lines().size()).isEqualTo(5);
  }

  // ---------------------------------------------------------------- hands

  private void write(String name, String text) {
    TextField field = (TextField) named(name, false);
    robot.interact(() -> field.setText(text));
    pressed.add(name);
  }

  private void fire(String name) {
    ButtonBase button = (ButtonBase) named(name, false);
    assertThat(button.isDisabled()).as(name).isFalse();
    robot.interact(button::fire);
    pressed.add(name);
  }

  private void mark(String name) {
    ListView<?> list = (ListView<?>) named(name, false);
    robot.interact(
        () -> {
          list.requestFocus();
          list.getSelectionModel().select(0);
        });
    pressed.add(name);
  }

  private void seen(String name) {
    assertThat(named(name, false)).isInstanceOf(Label.class);
    pressed.add(name);
  }

  private void control(String says, KeyCode code) {
    key(says, () -> robot.press(KeyCode.CONTROL).type(code).release(KeyCode.CONTROL));
  }

  private void key(String says, Runnable does) {
    does.run();
    WaitForAsyncUtils.waitForFxEvents();
    pressed.add(says);
  }

  /** Somebody at another computer comes in by the door's own model. */
  private void comeIn(String name, int people) throws IOException {
    Path elsewhere = Files.createDirectories(folder.resolve("elsewhere-" + guests.size()));
    Session guest = new Session(WindowThread.INSTANCE, MonotonicClock.SYSTEM, elsewhere);
    guests.add(guest);
    String address = session.state().address();
    String port = address.substring(address.lastIndexOf(':'));
    robot.interact(
        () -> {
          DoorModel door = new DoorModel(guest, words);
          door.name().write(name);
          door.address().write("127.0.0.1" + port);
          door.word().write(session.state().word());
          door.join();
        });
    List.of("door.name", "door.address", "door.word", "door.join.button")
        .forEach(key -> pressed.add(words.say(key)));
    until(() -> session.state().people().size() == people);
  }

  /** As fast as the drill is played at all, so that its bars are over soon. */
  private void soon() {
    long fastest = Math.round(Stock.find(session.state().title()).tempo().to());
    robot.interact(
        () -> {
          TextField tempo = (TextField) stage.getScene().lookup("#tempo");
          tempo.setText(Long.toString(fastest));
          tempo.fireEvent(new ActionEvent());
        });
    assertThat(on(() -> label("#plan-wrong").getText())).isEmpty();
  }

  /** The plan is shortened line by line as a leader would, so that the take is whole soon. */
  private void aTakeOfTwoBars() {
    robot.interact(
        () -> {
          TextField line = (TextField) stage.getScene().lookup("#plan-1");
          line.setText("2 bars: all beats");
          line.fireEvent(new ActionEvent());
        });
  }

  private void stop() {
    robot.press(KeyCode.CONTROL).type(KeyCode.PERIOD).release(KeyCode.CONTROL);
    until(() -> session.state().review() != null && onPage("Review"));
  }

  private void leave() {
    robot.interact(() -> ((ButtonBase) stage.getScene().lookup("#leave")).fire());
    until(() -> !session.state().inside() && onPage("Door"));
  }

  // ---------------------------------------------------------------- eyes

  /** What the button would keep: the system's dialog for a place is not there in a test. */
  private byte[] kept(String name, BiFunction<LeaderFiles, Spoken, byte[]> makes) {
    assertThat(named(name, false).isDisabled()).as(name).isFalse();
    pressed.add(name);
    Spoken spoken = Spoken.fromJson(on(() -> session.state().review().review()));
    return makes.apply(new LeaderFiles(words), spoken);
  }

  private void kept(String where, String ending) {
    until(() -> label(where) != null && label(where).getText().contains(ending));
    String says = on(() -> label(where).getText());
    try (Stream<Path> files = Files.walk(folder)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .as(says)
          .anyMatch(file -> file.endsWith(ending));
    } catch (IOException unreadable) {
      throw new AssertionError(unreadable);
    }
  }

  private Label label(String id) {
    return (Label) stage.getScene().lookup(id);
  }

  private boolean visible(String id) {
    Node node = stage.getScene().lookup(id);
    return node != null && node.isVisible();
  }

  private boolean onPage(String view) {
    return words.say("shell.title", view).equals(stage.getTitle());
  }

  private Node named(String name, boolean begins) {
    until(() -> found(name, begins) != null);
    return on(() -> Objects.requireNonNull(found(name, begins), name));
  }

  private Node found(String name, boolean begins) {
    return found(stage.getScene().getRoot(), name, begins);
  }

  /** The first visible control of a name, a control that does something before words alone. */
  private static Node found(Parent parent, String name, boolean begins) {
    Node words = null;
    for (Node node : parent.getChildrenUnmodifiable()) {
      if (!node.isVisible()) {
        continue;
      }
      Node hit = null;
      String says = node instanceof Labeled labeled ? labeled.getText() : null;
      if (node instanceof TextField || node instanceof ListView) {
        says = node.getAccessibleText();
      }
      if (says != null && (begins ? says.startsWith(name) : says.equals(name))) {
        hit = node;
      } else if (node instanceof Parent deeper && !(node instanceof Labeled)) {
        hit = found(deeper, name, begins);
      }
      if (hit != null && !(hit instanceof Label)) {
        return hit;
      }
      words = words == null ? hit : words;
    }
    return words;
  }
}
