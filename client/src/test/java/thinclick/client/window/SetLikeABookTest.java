package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javafx.geometry.Bounds;
import javafx.geometry.Orientation;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListView;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ScrollBar;
import javafx.scene.control.Slider;
import javafx.scene.image.PixelReader;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;
import javafx.scene.text.Text;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.window.look.Form;
import thinclick.client.window.look.Look;

/** The pages outside a room, measured: edges, base lines, columns, what head and foot leave. */
class SetLikeABookTest extends WindowCase {
  private static final List<View> PAGES =
      List.of(View.DOOR, View.PRACTICE, View.CHECK, View.SETTINGS, View.HELP);

  @Test
  void usualTextIsSetTrue() throws Exception {
    open();
    allIsTrue(Look.USUAL_TEXT, 1366, 768);
    allIsTrue(Look.USUAL_TEXT, 1024, 768);
    aListThatGoesOnShowsIt(Look.USUAL_TEXT);
    whatToTapOnIsSaidWhereSomethingIsTapped();
    theEdgeOfAButtonIsOneLineOfPixels();
    theFocusIsAFrameAndNoChoice();
  }

  @Test
  void textTwiceAsLargeIsSetTrueAndLeavesRoomForThePage() throws Exception {
    open(Look.LARGEST_TEXT);
    allIsTrue(Look.LARGEST_TEXT, 1920, 1080);
    allIsTrue(Look.LARGEST_TEXT, 1024, 768);
    aListThatGoesOnShowsIt(Look.LARGEST_TEXT);
    largeTextLeavesRoomForThePage(1366, 768, 0.77);
    largeTextLeavesRoomForThePage(1920, 1080, 0.8);
    largeTextLeavesRoomForThePage(1024, 768, 0.7);
  }

  private void allIsTrue(double textSize, int width, int height) {
    List<String> off = new ArrayList<>();
    for (View view : PAGES) {
      turnTo(view, width, height);
      robot.interact(
          () -> {
            for (Region region : all(Region.class)) {
              edges(region, view + ": ", off);
            }
            for (Form form : all(Form.class)) {
              columns(form, view + ": ", off);
            }
          });
    }
    assertThat(off).as("letters of %.0f at %d", textSize, width).isEmpty();
    List<Double> lines = new ArrayList<>();
    robot.interact(
        () -> {
          for (Labeled word : all(Labeled.class)) {
            boolean inHead = inside(word, "head") && !inside(word, "slider");
            if (inHead && (textSize < 20 || inside(word, "tab-door") || !controlsBelow())) {
              lines.add(baseLine(word));
            }
          }
        });
    assertThat(lines).isNotEmpty();
    lines.forEach(
        line ->
            assertThat(line)
                .as("in the head, letters of %.0f at %d", textSize, width)
                .isEqualTo(lines.get(0), within(0.6)));
  }

  /** Twice as large, head and foot leave the page seven tenths of a low window. */
  private void largeTextLeavesRoomForThePage(int width, int height, double share) {
    for (View view : PAGES) {
      turnTo(view, width, height);
      double page = on(() -> height - high(".head") - high(".foot")) / height;
      assertThat(page).as("%s at %d", view, width).isGreaterThan(share);
    }
  }

  private void whatToTapOnIsSaidWhereSomethingIsTapped() {
    for (View view : PAGES) {
      turnTo(view, 1366, 768);
      assertThat(on(() -> node("taps-say").isVisible()))
          .as("%s", view)
          .isEqualTo(view == View.CHECK);
    }
  }

  /** What is chosen fills the circle; the focus frames the word as well, and leaves the circle. */
  private void theFocusIsAFrameAndNoChoice() {
    turnTo(View.SETTINGS, 1366, 768);
    RadioButton dark = (RadioButton) node("shade-dark");
    Region circle = (Region) dark.lookup(".radio");
    robot.interact(() -> node("shade-light").requestFocus());
    Object before = on(() -> List.of(circle.getBackground(), circle.getWidth()));
    robot.interact(dark::requestFocus);
    robot.type(KeyCode.F24);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(on(() -> List.of(circle.getBackground(), circle.getWidth()))).isEqualTo(before);
    assertThat(on(() -> dark.getBorder().getStrokes().get(0).getTopStroke()))
        .isNotEqualTo(
            on(
                () ->
                    ((Region) node("shade-light")).getBorder().getStrokes().get(0).getTopStroke()));
    assertThat(on(() -> dark.getBorder().getStrokes().get(0).getInsets().getTop())).isNegative();
  }

  /** A pale second line above or below would make one button look heavier than the next. */
  private void theEdgeOfAButtonIsOneLineOfPixels() {
    turnTo(View.DOOR, 1366, 768);
    List<String> off = new ArrayList<>();
    robot.interact(
        () -> {
          PixelReader seen = stage.getScene().snapshot(null).getPixelReader();
          for (String id : List.of("open-here", "join", "practise", "check")) {
            Bounds at = node(id).localToScene(node(id).getLayoutBounds());
            int x = (int) at.getMinX() + 6;
            int top = (int) Math.rint(at.getMinY());
            int bottom = (int) Math.rint(at.getMaxY()) - 1;
            int ink = seen.getArgb((int) Math.rint(at.getMinX()), (top + bottom) / 2);
            for (int edge : List.of(top, bottom)) {
              boolean clean =
                  seen.getArgb(x, edge) == ink
                      && seen.getArgb(x, edge - 1) == seen.getArgb(x, edge - 3)
                      && seen.getArgb(x, edge + 1) == seen.getArgb(x, edge + 3);
              if (!clean) {
                off.add(id + " at " + edge);
              }
            }
          }
        });
    assertThat(off).isEmpty();
  }

  private void aListThatGoesOnShowsIt(double textSize) {
    turnTo(View.PRACTICE, 1366, 768);
    robot.interact(
        () -> {
          ScrollBar bar =
              node("practice-drills").lookupAll(".scroll-bar").stream()
                  .map(ScrollBar.class::cast)
                  .filter(one -> one.getOrientation() == Orientation.VERTICAL)
                  .findFirst()
                  .orElseThrow();
          Region thumb = (Region) bar.lookup(".thumb");
          assertThat(bar.isVisible()).isTrue();
          assertThat(bar.getWidth()).isGreaterThanOrEqualTo(0.7 * textSize);
          assertThat(thumb.getHeight()).isBetween(10.0, bar.getHeight() - 10);
          ListView<?> drills = (ListView<?>) node("practice-drills");
          double row = drills.getFixedCellSize();
          double rows = Math.floor(bar.getHeight() / row);
          assertThat(row).isGreaterThan(textSize);
          assertThat(bar.getHeight() - rows * row).isLessThan(1); // the last row is a whole one
        });
  }

  private void turnTo(View view, int width, int height) {
    robot.interact(
        () -> {
          stage.setWidth(width);
          stage.setHeight(height);
          desk.goTo(view);
        });
    WaitForAsyncUtils.waitForFxEvents();
    robot.interact(
        () -> {
          stage.getScene().getRoot().applyCss();
          stage.getScene().getRoot().layout();
        });
  }

  /** What has a ground or an edge begins and ends between two pixels, never inside one. */
  private static void edges(Region region, String where, List<String> off) {
    if (region.getStyleClass().contains("radio") || region.getStyleClass().contains("dot")) {
      return; // round, so that no edge is level
    }
    Bounds at = region.localToScene(region.getLayoutBounds());
    boolean painted = region.getBackground() != null || region.getBorder() != null;
    if (painted && (inside(at.getMinY()) || inside(at.getMaxY()) || inside(at.getMinX()))) {
      off.add(where + region + " at " + at);
    }
  }

  private static boolean inside(double at) {
    return Math.abs(at - Math.rint(at)) > 0.01;
  }

  /** All that is filled in begins at one place, each on the base line of its name. */
  private static void columns(Form form, String where, List<String> off) {
    List<Node> nodes = form.getChildrenUnmodifiable();
    for (int i = 0; i + 1 < nodes.size(); i += 2) {
      Labeled name = (Labeled) nodes.get(i);
      Node beside = nodes.get(i + 1);
      if (Math.abs(beside.getLayoutX() - nodes.get(1).getLayoutX()) > 0.01) {
        off.add(where + name.getText() + " begins at " + beside.getLayoutX());
      }
      double named = name.getLayoutY() + name.getBaselineOffset();
      double filled = beside.getLayoutY() + beside.getBaselineOffset();
      if (Math.abs(named - filled) > 0.6) {
        off.add(where + name.getText() + " on " + named + ", beside it " + filled);
      }
    }
  }

  private boolean controlsBelow() {
    Bounds level = node("level").localToScene(node("level").getLayoutBounds());
    Bounds door = node("tab-door").localToScene(node("tab-door").getLayoutBounds());
    return level.getMinY() > door.getMaxY() - 1;
  }

  /** Whether it is, or stands in, what has that style or that id. */
  private static boolean inside(Node node, String named) {
    Node sought = node;
    while (sought != null
        && !named.equals(sought.getId())
        && !sought.getStyleClass().contains(named)) {
      sought = sought.getParent();
    }
    return sought != null;
  }

  private static double baseLine(Labeled labeled) {
    Text text =
        labeled.getChildrenUnmodifiable().stream()
            .filter(Text.class::isInstance)
            .map(Text.class::cast)
            .findFirst()
            .orElseThrow();
    Point2D line =
        text.localToScene(0, text.getLayoutBounds().getMinY() + text.getBaselineOffset());
    return line.getY();
  }

  private double high(String selector) {
    return ((Region) stage.getScene().lookup(selector)).getHeight();
  }

  private <N extends Node> List<N> all(Class<N> kind) {
    List<N> found = new ArrayList<>();
    walk(
        stage.getScene().getRoot(),
        node -> {
          if (kind.isInstance(node)) {
            found.add(kind.cast(node));
          }
        });
    return found;
  }

  /** All that is shown; a slider is a measure of its own and no text. */
  private static void walk(Node node, Consumer<Node> each) {
    if (!node.isVisible() || node instanceof Slider) {
      return;
    }
    each.accept(node);
    if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> walk(child, each));
    }
  }
}
