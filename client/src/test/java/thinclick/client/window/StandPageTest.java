package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.window.session.FurtherSeat;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.server.material.Stock;

/** The stand in a real window: what is read first stays where it is, and larger is larger. */
class StandPageTest extends WindowCase {
  private record Size(int width, int height) {}

  /** The sheet in the window, and how large the music on it is. */
  private record Layout(Bounds sheet, double space) {}

  private static final List<Size> SIZES =
      List.of(new Size(1366, 768), new Size(1920, 1080), new Size(1024, 768));

  private static final int LARGER = 15;

  @Test
  void thePageStaysFromTheDealToTheEndAndLargerIsNeverSmaller() throws Exception {
    open();
    robot.interact(() -> node("name").requestFocus());
    robot.write("Ana").type(KeyCode.ENTER);
    until(() -> session.state().clock().state() == ClockState.STEADY);
    control(KeyCode.DIGIT1);
    assertThat(on(() -> ((RadioButton) node("check-sounds")).getText()))
        .as("there is no output here")
        .isEqualTo(words.say("check.sounds.here.none"));
    dealToAll(Stock.find("Threes over a blues"), 160);
    until(() -> session.state().phase() == Phase.DEALT && session.state().ownPart() != null);
    control(KeyCode.DIGIT2);
    assertThat(node("stand-over").isVisible()).isFalse();
    Map<String, Layout> dealt = layouts();
    theEntryIsSaidAtEverySize();
    for (Size size : SIZES) {
      double usual = dealt.get("100 " + size).space();
      assertThat(usual).as("at %s", size).isGreaterThanOrEqualTo(8);
      assertThat(dealt.get("200 " + size).space())
          .as("twice the size at %s", size)
          .isGreaterThan(usual);
    }
    control(KeyCode.ENTER);
    until(() -> text("count").matches("\\d"));
    same("count-in", dealt, "100 " + SIZES.get(2), layout());
    until(() -> bar() > 1); // the entry is over
    layouts().forEach((at, now) -> same("playing", dealt, at, now));
    marksAreExplainedToo();
    control(KeyCode.PERIOD);
    until(() -> session.state().review() != null);
    control(KeyCode.DIGIT2);
    assertThat(node("stand-over").isVisible()).isTrue();
    layouts().forEach((at, now) -> same("stopped", dealt, at, now));
  }

  /** Four who read the same line on one page, and four lines on two pages. */
  @Test
  void whicheverPartIsChosenTitleNamesAndSheetStay() throws Exception {
    open();
    robot.interact(() -> node("name").requestFocus());
    robot.write("Ana").type(KeyCode.ENTER);
    until(() -> session.state().clock().state() == ClockState.STEADY);
    for (String name : List.of("Ben", "Cleo", "Dara")) {
      robot.interact(() -> session.addSeat(name, why -> {}));
    }
    until(() -> session.state().people().size() == 4);
    Drill drill = Stock.find("Threes over a blues");
    deal(drill);
    control(KeyCode.DIGIT2);
    partsStay(" one line");
    Drill.Chair first = drill.chairs().get(0);
    deal(
        drill.withChairs(
            IntStream.range(0, 4)
                .mapToObj(at -> first.edited().named("" + (at + 1)).entryStep(at).chair())
                .toList()));
    partsStay(" four lines");
  }

  private void deal(Drill drill) {
    List<String> before = on(this::deals);
    dealToAll(drill, 120);
    until(() -> deals().size() == 4 && deals().stream().noneMatch(before::contains));
  }

  /** What each of the four has been dealt. */
  private List<String> deals() {
    return Stream.concat(
            Stream.of(session.state()), session.further().stream().map(FurtherSeat::state))
        .filter(room -> room.dealt() != null && room.ownPart() != null)
        .map(room -> room.dealt().dealId())
        .toList();
  }

  private void partsStay(String what) {
    for (Size size : SIZES) {
      robot.interact(
          () -> {
            ((ToggleButton) node("stand-all")).fire();
            stage.setWidth(size.width());
            stage.setHeight(size.height());
          });
      WaitForAsyncUtils.waitForFxEvents();
      Map<String, Object> together = places();
      for (String part : List.of("stand-part-0", "stand-part-2", "stand-all")) {
        robot.interact(() -> ((ToggleButton) node(part)).fire());
        WaitForAsyncUtils.waitForFxEvents();
        assertThat(places()).as("%s of%s at %s", part, what, size).isEqualTo(together);
      }
    }
  }

  /** Names by their height: the one that is chosen is bold, and a pixel wider. */
  private Map<String, Object> places() {
    layout();
    return on(
        () -> {
          Map<String, Object> places = new TreeMap<>();
          places.put("title", on("stand-title"));
          places.put("sheet", on("score"));
          places.put("names", on("stand-all").getMinY());
          return places;
        });
  }

  private Bounds on(String id) {
    return node(id).localToScene(node(id).getLayoutBounds());
  }

  /** In the sentence that was dealt, or in few words where the page has one line for all. */
  private void theEntryIsSaidAtEverySize() {
    for (double size : List.of(30.0, 15.0)) {
      robot.interact(() -> desk.looks().set(desk.looks().lookProperty().get().withText(size)));
      WaitForAsyncUtils.waitForFxEvents();
      Label said = (Label) node(size > 15 ? "stand-entry" : "stand-says");
      assertThat(said.getText()).contains("the one of bar 1");
      assertThat(said.getParent().isVisible()).isTrue();
      assertThat(said.getWidth()).isGreaterThanOrEqualTo(said.prefWidth(-1));
      assertThat(node("stand-what").isVisible()).isTrue();
    }
  }

  /** Where a small page has no room for its legend, in the title's place. */
  private void marksAreExplainedToo() {
    for (double size : List.of(30.0, 15.0)) {
      robot.interact(() -> desk.looks().set(desk.looks().lookProperty().get().withText(size)));
      WaitForAsyncUtils.waitForFxEvents();
      boolean brief = size > 15;
      assertThat(node("stand-legend").isVisible()).isEqualTo(!brief);
      assertThat(node("stand-legend-brief").isVisible()).isEqualTo(brief);
      assertThat(node("stand-what").isVisible()).isEqualTo(!brief);
    }
  }

  private static void same(String phase, Map<String, Layout> dealt, String at, Layout now) {
    Layout before = dealt.get(at);
    String as = phase + " at " + at + ": " + now + " but was dealt at " + before;
    assertThat(now.space()).as(as).isCloseTo(before.space(), within(0.01));
    assertThat(now.sheet()).as(as).isEqualTo(before.sheet());
  }

  /** At every size of the window, with the usual text and twice as large. */
  private Map<String, Layout> layouts() {
    Map<String, Layout> layouts = new TreeMap<>();
    for (String text : List.of("200 ", "100 ")) {
      int pixels = text.equals("200 ") ? LARGER : -LARGER;
      robot.interact(() -> desk.looks().grow(pixels));
      for (Size size : SIZES) {
        robot.interact(
            () -> {
              stage.setWidth(size.width());
              stage.setHeight(size.height());
            });
        WaitForAsyncUtils.waitForFxEvents();
        layouts.put(text + size, layout());
      }
    }
    return layouts;
  }

  private Layout layout() {
    return on(
        () -> {
          stage.getScene().getRoot().applyCss();
          stage.getScene().getRoot().layout();
          Node sheet = node("score");
          return new Layout(sheet.localToScene(sheet.getLayoutBounds()), desk.stand().staffSpace());
        });
  }
}
