package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.RadioButton;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.check.TapCheck;
import thinclick.client.check.Verdict;
import thinclick.client.input.KeyHalf;
import thinclick.client.input.NoteFilter;
import thinclick.client.input.PluggedPads;
import thinclick.client.sound.ClockedSpeaker;
import thinclick.client.window.check.CheckModel.Phase;
import thinclick.client.window.settings.InputSettings;

/** The sound check's page in a real window, with and without a click that can be heard. */
class CheckPathTest extends WindowCase {
  @AfterEach
  void silence() {
    ClockedSpeaker.on(false);
  }

  @Test
  void withoutAnOutputNothingIsBegunAndThePageSaysWhy() throws Exception {
    open();
    until(() -> text("sound-says").equals(words.say("sound.none")));
    control(KeyCode.DIGIT1);
    assertThat(on(() -> node("check-begin").isDisabled())).isTrue();
    assertThat(on(() -> node("check-silence").isVisible())).isTrue();
    assertThat(text("check-sounds")).isEqualTo(words.say("check.sounds.here.none"));
    assertThat(on(() -> stage.getScene().getFocusOwner().getId())).isEqualTo("check-output");
    until(() -> text("sentence").equals(words.say("situation.check.silence")));
    robot.interact(() -> desk.check().begin(System.nanoTime()));
    assertThat(desk.check().phaseProperty().get()).isEqualTo(Phase.IDLE);
    assertThat(text("check-says")).isEqualTo(words.say("check.silence"));
    robot.interact(() -> desk.looks().grow(15));
    until( // below the page, where the sentence that says so may be out of view
        () -> inView("check-care") && text("check-care").equals(words.say("check.silence.begin")));
  }

  @Test
  void aCheckCountsItsClicksAndIsStoppedByTabAndEnter() throws Exception {
    ClockedSpeaker.on(true);
    open();
    until(() -> desk.check().audibleProperty().get());
    control(KeyCode.DIGIT1);
    robot.type(KeyCode.ENTER);
    until(() -> desk.check().phaseProperty().get() == Phase.CLICKING);
    assertThat(text("check-progress")).isEqualTo(words.say("check.leadIn", TapCheck.LEAD_IN));
    until(() -> text("check-count").equals("2"));
    assertThat(text("check-says")).as("nothing came of it yet").isEmpty();
    assertThat(on(() -> stage.getScene().lookup("#silent").isDisabled()))
        .as("neither here nor in the head")
        .isEqualTo(on(() -> node("check-silent").isDisabled()))
        .isTrue();
    robot.interact(
        () -> {
          Bounds count = at(node("check-count"));
          assertThat(count.getMinY())
              .as("below what is to be done")
              .isGreaterThan(at(node("check-how")).getMinY());
          assertThat(count.getMaxY())
              .as("above what stops it")
              .isLessThan(at(node("check-stop")).getMaxY());
        });
    robot.type(KeyCode.ESCAPE).type(KeyCode.SPACE).type(KeyCode.ENTER);
    assertThat(desk.check().phaseProperty().get()).isEqualTo(Phase.CLICKING);
    robot.type(KeyCode.F6).type(KeyCode.F6);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(on(() -> stage.getScene().getFocusOwner().getId())).isEqualTo("check-stop");
    robot.interact(() -> stage.getScene().lookup("#tab-door").requestFocus());
    robot.interact(() -> stage.getScene().lookup(".scroll-pane").requestFocus());
    robot.type(KeyCode.TAB);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(on(() -> stage.getScene().getFocusOwner().getId())).isEqualTo("check-stop");
    robot.type(KeyCode.ENTER);
    until(() -> desk.check().phaseProperty().get() == Phase.IDLE);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(text("check-says")).isEqualTo(words.say("check.stopped"));
    assertThat(on(() -> stage.getScene().lookup("#silent").isDisabled())).isFalse();
    assertThat(on(() -> ((Button) node("check-begin")).isFocused())).isTrue();
  }

  /** Kept as soon as it is set, in the file that the next window reads. */
  @Test
  void lettersAndALearnedPadAreRememberedAndABrokenFileIsPutAside() throws Exception {
    PluggedPads.Pad pad = PluggedPads.plug("pad one");
    try {
      open();
      until(() -> text("taps-say").contains("pad one"));
      control(KeyCode.DIGIT1);
      theArrowKeysChoose("keys-all", "keys-left");
      theArrowKeysChoose("hearing-not-at-all", "hearing-as-it-arrives");
      assertThat(text("hearing-says")).isEqualTo(words.say("hearing.arrives.unknown"));
      robot.interact(() -> ((Button) node("pad-learn")).fire());
      for (int i = 0; i < 4; i++) {
        pad.send(0x99, 38, 20, -1);
      }
      until(() -> text("pad-says").equals(words.say("taps.learn.channel", "pad one", 10, 10)));
    } finally {
      PluggedPads.pull(pad);
    }
    Path file = folder.resolve(InputSettings.NAME);
    InputSettings kept = InputSettings.file(folder).read().value();
    assertThat(kept)
        .isEqualTo(
            InputSettings.FIRST.with(KeyHalf.LEFT).withLearned("pad one", new NoteFilter(10, 9)));

    closeWindow();
    open();
    control(KeyCode.DIGIT1);
    assertThat(text("taps-say")).contains(words.say("taps.half.left"));
    assertThat(on(() -> ((RadioButton) node("keys-left")).isSelected())).isTrue();
    assertThat(text("pad-says")).isEqualTo(words.say("taps.learn.channel", "pad one", 10, 10));
    robot.interact(() -> ((Button) node("pad-forget")).fire());
    assertThat(InputSettings.file(folder).read().value().learned()).isEmpty();

    closeWindow();
    Files.writeString(file, Files.readString(file).replace("LEFT", "MIDDLE"));
    open();
    assertThat(text("sentence")).contains("put aside as input.unreadable-1.json");
    assertThat(text("taps-say")).contains(words.say("taps.half.all"));
  }

  private void theArrowKeysChoose(String now, String below) {
    robot.interact(() -> node(now).requestFocus());
    robot.type(KeyCode.DOWN);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(stage.getScene().getFocusOwner().getId()).isEqualTo(below);
  }

  /** The band is drawn where a delay was found, and the scale says milliseconds at their places. */
  @Test
  void whatWasFoundIsDrawnOnAScale() throws Exception {
    open();
    control(KeyCode.DIGIT1);
    java.util.List<Double> offsets =
        java.util.stream.IntStream.range(0, 36).mapToObj(i -> 78.0 + i % 5).toList();
    robot.interact(
        () ->
            desk.check().judgedElsewhere(new Verdict.Known(Verdict.How.TAPS, 80, 4, 36, offsets)));
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(text("check-scale")).isEqualTo(words.say("check.scale"));
    robot.interact(
        () -> {
          Node band = node("check-ledger").lookup(".ledger-band");
          double zero = middle(node("check-ledger").lookup(".ledger-figure-0"));
          double hundred = middle(node("check-ledger").lookup(".ledger-figure-100"));
          assertThat(middle(band))
              .isBetween(zero + 0.78 * (hundred - zero), zero + 0.82 * (hundred - zero));
          assertThat(band.getLayoutBounds().getWidth())
              .isBetween(0.07 * (hundred - zero), 0.09 * (hundred - zero));
        });
    robot.interact(() -> desk.looks().grow(7));
    until( // what came of it stays in view
        () -> at(node("check-ledger")).getMaxY() <= at(stage.getScene().lookup(".foot")).getMinY());
    assertThat(on(() -> node("check-chair").isVisible())).as("another state").isTrue();
    robot.interact(() -> desk.looks().grow(15));
    until( // and where that is higher than the window, its sentence and what goes on from there
        () ->
            at(node("check-begin")).getMinY() >= at(stage.getScene().lookup(".head")).getMaxY()
                && at(node("check-says")).getMaxY()
                    <= at(stage.getScene().lookup(".foot")).getMinY());
    robot.interact(
        () ->
            desk.check().judgedElsewhere(new Verdict.Refused(Verdict.Why.SCATTERED, 36, offsets)));
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(on(() -> node("check-ledger").lookup(".ledger-band"))).isNull();
    assertThat(text("check-scale")).isEqualTo(words.say("check.scale.refused"));
  }

  /** A caution is no caution where it is read after the first sound, or below the fold. */
  @ParameterizedTest
  @CsvSource({
    "15, 1366, 768",
    "15, 1024, 768",
    "15, 1920, 1080",
    "30, 1366, 768",
    "30, 1024, 768",
  })
  void theCareToTakeIsInViewBeforeTheFirstSound(double textSize, int width, int height)
      throws Exception {
    ClockedSpeaker.on(true);
    open(textSize);
    until(() -> desk.check().audibleProperty().get());
    robot.interact(
        () -> {
          stage.setWidth(width);
          stage.setHeight(height);
        });
    control(KeyCode.DIGIT1);
    until(() -> inView("check-care") && inView("check-begin"));
    assertThat(text("check-care")).isEqualTo(words.say("check.care"));
    robot.interact(
        () ->
            desk.check()
                .judgedElsewhere(
                    new Verdict.Known(Verdict.How.TAPS, 80, 4, 36, Collections.nCopies(36, 80.0))));
    until(() -> inView("check-care") && inView("check-begin") && inView("check-says"));
    if (width > 1024) { // narrower, what came of it takes as many lines as the page is high
      until(() -> inView("check-ledger"));
    }
  }

  private boolean inView(String id) {
    Bounds at = at(node(id));
    return at.getMinY() >= at(stage.getScene().lookup(".head")).getMaxY()
        && at.getMaxY() <= at(stage.getScene().lookup(".foot")).getMinY();
  }

  private static double middle(Node node) {
    return at(node).getCenterX();
  }

  private static Bounds at(Node node) {
    return node.localToScene(node.getLayoutBounds());
  }
}
