package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.settings.SettingsFile;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeNews.StopReason;

/**
 * From the first window to finished takes by keyboard alone, pressing only the keys that the
 * sentence at the bottom names: a substitute who has never seen it runs a lesson in at most six
 * actions.
 */
class KeyboardPathTest extends WindowCase {
  @BeforeEach
  void openDoor() throws Exception {
    open();
  }

  /** As the window writes keys: Enter, Ctrl+Enter, Ctrl+Period, Ctrl+D. */
  private static final Pattern KEY = Pattern.compile("(Ctrl\\+)?(Enter|Period|(?<=\\+)[A-Z0-9])");

  private int actions;

  @Test
  void aSubstituteRunsALessonInSixActions() throws Exception {
    says("Write your name");
    action(
        () -> {
          robot.write("Ana");
          doWhatItSays();
        });
    says("choose a lesson or a drill");
    assertThat(new SettingsFile(folder).read().settings().name())
        .as("remembered at once, for a program that is killed")
        .isEqualTo("Ana");
    action(this::doWhatItSays); // the first lesson, marked already
    says("\u201cEven eighths\u201d is dealt: count in with Ctrl+Enter");
    robot.interact(() -> stage.getScene().getRoot().fireEvent(Keys.pressed(KeyCode.K)));
    action(this::doWhatItSays);
    says("tap on any letter");
    until(() -> moment().part() == TakeMoment.Part.PLAYING);

    robot.interact(() -> stage.getScene().getRoot().fireEvent(Keys.pressed(KeyCode.K)));
    robot.type(KeyCode.F).type(KeyCode.J);
    robot.type(KeyCode.SPACE).type(KeyCode.ESCAPE).type(KeyCode.DIGIT1);
    until(() -> session.take().ownAttacks("").size() == 2);
    assertThat(on(() -> session.take().ownAttacks("").size()))
        .as("K is held since before")
        .isEqualTo(2);
    robot.clickOn(node("stand-title")); // mouse and finger are for practising alone
    robot.type(KeyCode.ENTER);
    aHeldKeyIsOneAttack();
    aKeyHeldWhenTheFocusWentTapsAgain();
    assertThat(on(() -> session.state().takeRuns())).as("neither Esc nor a letter stops").isTrue();

    says("Ctrl+Period stops");
    action(this::doWhatItSays);
    until(() -> session.state().phase() == Phase.REVIEW);
    says("Ctrl+Enter plays \u201cEven eighths\u201d once more.");
    assertThat(on(() -> stage.getTitle())).isEqualTo("Thinclick: Review");
    assertThat(on(() -> session.state().waiting())).isZero();
    theReviewIsKeptAsItIsSeen();
    action(this::doWhatItSays); // the drill once more, from wherever the leader is
    says("\u201cEven eighths\u201d is dealt: count in with Ctrl+Enter");
    assertThat(on(() -> stage.getTitle())).as("the review is gone").isEqualTo("Thinclick: Lectern");
    aNoteStandsOnTheStand();
    action(this::doWhatItSays);
    says("tap on any letter");
    assertThat(actions).as("actions from opening to the second take").isLessThanOrEqualTo(6);
  }

  /** What the leader writes is read on the stand, beside what there is to do, not in its place. */
  private void aNoteStandsOnTheStand() {
    robot.interact(
        () -> {
          desk.goTo(View.LECTERN);
          stage.getScene().lookup("#roster").requestFocus();
        });
    robot.press(KeyCode.ALT).type(KeyCode.N).release(KeyCode.ALT);
    robot.write("Softly.").type(KeyCode.ENTER);
    until(() -> session.state().note().equals("Softly."));
    robot.interact(() -> desk.goTo(View.STAND));
    Label note = on(() -> (Label) stage.getScene().lookup("#stand-note"));
    assertThat(on(note::isVisible)).isTrue();
    assertThat(on(note::getText)).isEqualTo("The leader writes: Softly.");
    until(
        () ->
            text("sentence")
                .startsWith("\u201cEven eighths\u201d is dealt: count in with Ctrl+Enter"));
  }

  private void action(Runnable does) {
    actions++;
    does.run();
  }

  /** Presses the first key that the sentence at the bottom names; nothing else is known. */
  private void doWhatItSays() {
    Matcher key = KEY.matcher(text("sentence"));
    assertThat(key.find()).as("a key in: %s", text("sentence")).isTrue();
    KeyCode code =
        switch (key.group(2)) {
          case "Enter" -> KeyCode.ENTER;
          case "Period" -> KeyCode.PERIOD;
          default -> KeyCode.getKeyCode(key.group(2));
        };
    if (key.group(1) == null) {
      robot.type(code);
    } else {
      control(code);
    }
  }

  /** To the end of a first take, in real time: four actions, and letters while it runs. */
  @Test
  @Tag("long")
  void aFirstTakeIsFinishedByWhoDoesOnlyWhatTheWindowSays() {
    says("Write your name");
    action(
        () -> {
          robot.write("Ana");
          doWhatItSays();
        });
    says("choose a lesson or a drill");
    action(this::doWhatItSays);
    says("count in with");
    action(this::doWhatItSays);
    says("tap on any letter");
    action(this::tapsOnceABar);
    until(() -> session.state().review() != null);
    until(() -> stage.getScene().lookup("#review-attacks") != null);
    assertThat(on(() -> session.state().stopped().reason())).isEqualTo(StopReason.FINISHED);
    assertThat(stage.getTitle()).isEqualTo("Thinclick: Review");
    assertThat(actions).isEqualTo(4);
  }

  /** In the count-in nothing is heard yet: what was tapped there alone would be no take. */
  private void tapsOnceABar() {
    for (int bar = 1; bar <= 4; bar++) {
      says("Bar " + bar + " of");
      robot.type(KeyCode.F);
    }
  }

  /** Case 24: what is not known is said in words, and what is kept says what the screen says. */
  private void theReviewIsKeptAsItIsSeen() throws Exception {
    until(() -> stage.getScene().lookup("#review-attacks") != null);
    Parent sheet = (Parent) stage.getScene().lookup(".measure");
    List<String> seen = on(() -> words(sheet));
    assertThat(seen).contains("not known").anyMatch(line -> line.contains("placed"));
    robot.interact(() -> sheet.lookup("#save-svg").requestFocus());
    robot.type(KeyCode.SPACE);
    robot.interact(() -> sheet.lookup("#save-pdf").requestFocus());
    robot.type(KeyCode.SPACE);
    Path reviews = folder.resolve("reviews");
    robot.interact(() -> sheet.lookup("#keep-take").requestFocus());
    robot.type(KeyCode.SPACE);
    until(() -> kept(reviews));
    Take take = FileCodec.readTake(Files.readAllBytes(only(reviews, ".take.json")));
    assertThat(take.parts()).extracting(Part::player).containsExactly("Ana");
    assertThat(take.attacks()).hasSize(on(() -> session.take().ownAttacks("").size()));
    String svg = Files.readString(only(reviews, ".svg"));
    String pdf;
    try (PDDocument document = Loader.loadPDF(Files.readAllBytes(only(reviews, ".pdf")))) {
      pdf = flat(new PDFTextStripper().getText(document));
    }
    String drawn = flat(String.join(" ", labels(svg)));
    for (String line : seen) {
      assertThat(drawn).contains(flat(line));
      assertThat(pdf).contains(flat(line));
    }
  }

  private static boolean kept(Path reviews) throws IOException {
    try (Stream<Path> files = Files.list(reviews)) {
      return files.anyMatch(file -> file.toString().endsWith(".take.json"));
    }
  }

  private static List<String> words(Parent sheet) {
    List<String> found = new ArrayList<>();
    for (Node node : sheet.getChildrenUnmodifiable()) {
      if (node instanceof Label label && !label.getText().isEmpty()) {
        found.add(label.getText());
      } else if (node instanceof Parent deeper
          && !(node instanceof Button)
          && !Set.of("review-leader", "review-keep").contains(Objects.toString(node.getId()))) {
        found.addAll(words(deeper));
      }
    }
    return found;
  }

  private static Path only(Path folder, String end) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(end)).findFirst().orElseThrow();
    }
  }

  private static List<String> labels(String svg) {
    Matcher matcher = Pattern.compile("aria-label=\"([^\"]*)\"").matcher(svg);
    return matcher.results().map(found -> found.group(1)).toList();
  }

  private static String flat(String text) {
    return text.replace("&apos;", "'").replaceAll("[\\s\u00a0]+", "");
  }

  private void aHeldKeyIsOneAttack() {
    robot.press(KeyCode.G);
    robot.interact(() -> stage.getScene().getRoot().fireEvent(Keys.pressed(KeyCode.G)));
    robot.interact(() -> stage.getScene().getRoot().fireEvent(Keys.pressed(KeyCode.G)));
    robot.release(KeyCode.G);
    assertThat(on(() -> session.take().ownAttacks("").size())).isEqualTo(3);
  }

  private void aKeyHeldWhenTheFocusWentTapsAgain() {
    robot.interact(
        () -> {
          stage.getScene().getRoot().fireEvent(Keys.pressed(KeyCode.H));
          desk.focusLost();
          stage.getScene().getRoot().fireEvent(Keys.pressed(KeyCode.H));
        });
    assertThat(on(() -> session.take().ownAttacks("").size())).isEqualTo(5);
  }

  private TakeMoment moment() {
    RoomState room = session.state();
    return room.announced() == null || room.grid() == null || session.link() == null
        ? TakeMoment.NONE
        : TakeMoment.at(
            room.grid(),
            room.plan(),
            room.announced(),
            session.link().roomMicros(System.nanoTime()));
  }
}
