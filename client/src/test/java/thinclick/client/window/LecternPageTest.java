package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.event.Event;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.image.PixelReader;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import org.junit.jupiter.api.Test;
import thinclick.client.standin.Manner;
import thinclick.client.window.look.Look;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.server.material.Stock;

/** The prompt book measured: columns, margins, whole rows, buttons that stay where they are. */
class LecternPageTest extends WindowCase {
  private static final int[][] SIZES = {{1920, 1080}, {1366, 768}, {1024, 768}};
  private static final List<String> COMMANDS =
      List.of("go-on", "pause", "stop", "more", "fewer", "rescue", "deal", "undo");

  @Test
  void thePageKeepsItsColumnsItsRowsAndItsButtons() throws Exception {
    open();
    enter();
    title("view.lectern");
    for (int i = 0; i < 3; i++) {
      int players = i + 2;
      act(() -> desk.roster().fill(Manner.STEADY, null, 0));
      until(() -> session.state().people().size() == players);
    }
    for (int[] size : SIZES) {
      at(size);
      nothingOverlaps("open at " + size[0]);
      allStandsOnWholePixels("open at " + size[0]);
      oneLineIsOneLine();
      wholeRows("lessons", 5);
      wholeRows("roster", 4);
      wholeRows("drills", -1);
      theHeadsStandOnOneLine();
      theCommandsFillTheirRows();
      theRostersHeadsStandOverTheirCells();
    }
    theListSaysHowManyRowsAreNotInView();
    assertThat(on(() -> cell((ListView<?>) node("lessons")).getBackground().getFills().size()))
        .as("the marked row is seen")
        .isEqualTo(2);

    aDrillThatIsChosenComesIntoView();

    act(() -> desk.lecternDesk().lesson().choose(Stock.findLesson("First day")));
    until(() -> session.state().phase() == Phase.DEALT);
    until(() -> session.state().people().stream().filter(p -> p.ready()).count() >= 3);
    for (int[] size : SIZES) {
      at(size);
      nothingOverlaps("lesson at " + size[0]);
      allStandsOnWholePixels("lesson at " + size[0]);
      List<Bounds> dealt = commands();
      act(() -> desk.lecternDesk().lesson().pause());
      at(size);
      assertThat(text("pause")).isEqualTo("End the break");
      theCommandsStandUnderEachOther();
      assertThat(commands()).as("in a break, at %d", size[0]).isEqualTo(dealt);
      act(() -> desk.lecternDesk().lesson().pause());
    }
    assertThat(text("readiness")).endsWith("ready");
    assertThat(inUse("lessons")).containsExactly("First day, 45\u00a0minutes, six drills, in use");
    assertThat(inUse("drills")).containsExactly("Even eighths, 4/4, level 1, in use");
    List<Bounds> dealt = commands();
    control(KeyCode.ENTER);
    until(() -> session.state().takeRuns());
    act(() -> desk.goTo(View.LECTERN));
    at(SIZES[2]);
    assertThat(commands()).as("in a take").isEqualTo(dealt);
    assertThat(node("stop").getStyleClass()).as("what comes next").contains("primary");
    assertThat(node("go-on").getStyleClass()).doesNotContain("primary");
  }

  /** German words are longer, and still all commands of a lesson stand in three rows. */
  @Test
  void germanCommandsFindRoomInThreeRows() throws Exception {
    words = Words.in(Locale.GERMAN);
    open();
    enter();
    until(() -> session.state().inside());
    act(() -> desk.roster().fill(Manner.STEADY, null, 0));
    until(() -> session.state().people().size() == 2);
    act(() -> desk.lecternDesk().lesson().choose(Stock.findLesson("First day")));
    until(() -> session.state().phase() == Phase.DEALT);
    at(SIZES[1]);
    theCommandsStandUnderEachOther();
    assertThat(commands().stream().map(Bounds::getMinY).distinct()).hasSize(3);
    act(() -> desk.lecternDesk().lesson().pause());
    at(SIZES[1]);
    assertThat(on(() -> texts((Button) node("pause"))))
        .as("whole, in the width it always has")
        .containsExactly("Pause beenden");
  }

  /** At twice the usual size the page keeps close to the window, and still one margin. */
  @Test
  void largeTextKeepsItsMarginsItsRowsAndItsHeads() throws Exception {
    open(2 * Look.USUAL_TEXT);
    enter();
    title("view.lectern");
    act(() -> desk.roster().fill(Manner.STEADY, null, 0));
    until(() -> session.state().people().size() == 2);
    for (int[] size : SIZES) {
      at(size);
      nothingOverlaps("large at " + size[0]);
      allStandsOnWholePixels("large at " + size[0]);
      wholeRows("lessons", 5);
      wholeRows("roster", 2);
      theCommandsFillTheirRows();
      assertThat(bounds(node("to-compose")).getMaxY())
          .as("the ways to the drills are at the head at %d", size[0])
          .isLessThan(bounds(node("go-on")).getMaxY());
      if (size[0] == SIZES[0][0]) {
        theHeadsStandOnOneLine();
      }
    }
    act(() -> desk.lecternDesk().lesson().choose(Stock.findLesson("First day")));
    until(() -> session.state().phase() == Phase.DEALT);
    for (int[] size : SIZES) {
      at(size);
      nothingOverlaps("large lesson at " + size[0]);
      assertThat(bounds(node("script")).getMaxY())
          .as("the script's first line is seen at %d", size[0])
          .isLessThan(bounds(stage.getScene().lookup(".foot")).getMinY());
      aLongNameMovesNoCommand();
      aLongTitleStaysOnTheSheet();
    }
  }

  /** Where the drills stand further down, the page says so at its head, and a key goes there. */
  @Test
  void whatStandsFurtherDownIsOneKeyAway() throws Exception {
    open();
    enter();
    title("view.lectern");
    int cut = 0;
    for (int[] size : SIZES) {
      at(size);
      control(KeyCode.DIGIT2); // from another page as well
      control(KeyCode.E);
      theCursorIsIn("compose-title");
      control(KeyCode.O);
      theCursorIsIn("looking");
      cut += rowsEndWhole();
      if (size[0] < 1_900) {
        act(() -> moveTo(0));
        still();
        oneWayToComposeIsInView(size);
        act(() -> ((Button) node("to-compose")).fire());
        theCursorIsIn("compose-title");
      } else {
        assertThat(stage.getScene().lookup("#to-compose")).as("beside the sheet").isNull();
      }
    }
    assertThat(cut).as("some would have been cut").isPositive();
    control(KeyCode.E);
    act(() -> ((TextField) node("compose-cell")).setText("1 4 7"));
    robot.write("Own");
    key(KeyCode.ENTER);
    until(() -> stage.getScene().getFocusOwner() == node("deal"));
    assertThat(text("chosen")).isEqualTo("Own");
    at(SIZES[2]);
    assertThat(bounds(node("chosen")).getMinY()).as("what was composed is seen").isGreaterThan(0);
    aTitleAloneIsComposedAndChosen();
  }

  /** Ana opens the room and leads it. */
  private void enter() {
    act(
        () -> {
          TextField name = (TextField) node("name");
          name.requestFocus();
          name.setText("Ana");
        });
    key(KeyCode.ENTER);
  }

  /** Beside the lessons where the drills' head is further down, else there. */
  private void oneWayToComposeIsInView(int[] size) {
    List<Bounds> ways =
        Stream.of(node("to-compose"), node("compose"))
            .filter(LecternPageTest::seen)
            .map(LecternPageTest::bounds)
            .filter(way -> way.getMaxY() < foot())
            .toList();
    assertThat(ways).as("ways to compose at %d", size[0]).hasSize(1);
  }

  private void aTitleAloneIsComposedAndChosen() {
    control(KeyCode.E);
    write("cell", "");
    write("title", "");
    key(KeyCode.ENTER);
    until(() -> text("compose-wrong").startsWith("Nothing is written yet"));
    write("title", "Bare");
    key(KeyCode.ENTER);
    until(() -> "Bare".equals(session.state().title()));
    until(() -> stage.getScene().getFocusOwner() == node("deal"));
    assertThat(text("compose-wrong")).isEmpty();
    assertThat(text("chosen")).isEqualTo("Bare");
    says("deal \u201cBare\u201d with Ctrl+D");
  }

  private void write(String wish, String says) {
    act(() -> ((TextField) node("compose-" + wish)).setText(says));
  }

  /** The button that composes stays in view, however large the text and low the window. */
  @Test
  void whatComposesStaysInViewAndCoversNoLineThatIsWrittenIn() throws Exception {
    open(2 * Look.USUAL_TEXT);
    enter();
    title("view.lectern");
    for (int[] size : SIZES) {
      at(size);
      control(KeyCode.E);
      theCursorIsIn("compose-title");
      for (String wish :
          List.of("title", "meter", "steps", "cell", "grouping", "period", "entry")) {
        theCursorIsIn("compose-" + wish);
        Bounds makes = bounds(node("compose-make"));
        assertThat(makes.getMaxY()).as("%s at %d", wish, size[0]).isLessThan(foot());
        assertThat(bounds(node("compose-" + wish)).getMaxY())
            .as("%s at %d", wish, size[0])
            .isLessThanOrEqualTo(makes.getMinY());
        key(KeyCode.TAB);
      }
      until(() -> stage.getScene().getFocusOwner() != node("compose-entry"));
      still();
      act(() -> moveTo(1));
      still();
      assertThat(bounds(node("compose-make")).getMinY())
          .as("at its own place below the last line, at %d", size[0])
          .isGreaterThan(bounds(node("compose-deal")).getMaxY());
    }
  }

  /** An example is set in italics, and what is written over it is not. */
  @Test
  void anExampleIsNotTakenForWhatIsWritten() throws Exception {
    open();
    enter();
    title("view.lectern");
    control(KeyCode.E);
    TextField meter = (TextField) node("compose-meter");
    assertThat(meter.getPromptText()).isEqualTo("e.g.\u00a04/4");
    assertThat(on(() -> meter.getFont().getStyle())).contains("Italic");
    write("meter", "3/4");
    at(SIZES[0]);
    assertThat(on(() -> meter.getFont().getStyle())).doesNotContain("Italic");
  }

  private void theCursorIsIn(String id) {
    until(() -> stage.getScene().getFocusOwner() == node(id));
    still();
    assertThat(bounds(node(id)).getMinY()).as(id).isGreaterThan(0);
    assertThat(bounds(node(id)).getMaxY()).as(id).isLessThan(foot());
  }

  private ScrollPane page() {
    Node page = stage.getScene().lookup(".lectern-page");
    return (ScrollPane) page.getParent().getParent().getParent();
  }

  /** As somebody does: a page that was brought to some place is let go by a key. */
  private void moveTo(double down) {
    KeyEvent key =
        new KeyEvent(KeyEvent.KEY_PRESSED, "", "", KeyCode.SHIFT, true, false, false, false);
    Event.fireEvent(page(), key);
    page().setVvalue(down);
  }

  /**
   * However far the page is moved, a button is drawn whole or not at all; says how many are not.
   */
  private int rowsEndWhole() {
    int cut = 0;
    for (double down = 0; down <= 1; down += 1 / 16.0) {
      double to = down;
      act(() -> moveTo(to));
      still();
      cut += on(() -> cutButtons(to));
    }
    return cut;
  }

  /** How many buttons would be cut at the head or foot; on the window's thread. */
  private int cutButtons(double down) {
    int cut = 0;
    double foot = inScene(stage.getScene().lookup(".foot")).getMinY();
    double head = inScene(page()).getMinY();
    for (Node node : page().lookupAll(".button")) {
      Bounds at = inScene(node);
      boolean atFoot = at.getMinY() < foot && at.getMaxY() > foot + 1.5;
      boolean atHead = at.getMinY() < head - 1.5 && at.getMaxY() > head + 1.5 && !node.isFocused();
      boolean isCut = atFoot || atHead;
      if (isCut && seen(node)) {
        cut++;
        assertThat(node.getClip()).as("%s at %.2f", node, down).isNotNull();
      } else if (at.getMaxY() < foot - 80 && at.getMinY() > head + 2) {
        assertThat(node.getClip()).as("%s at %.2f", node, down).isNull();
      }
    }
    return cut;
  }

  /** At one moment, as the page says its own title again with the room's next news. */
  private void aLongTitleStaysOnTheSheet() {
    Label title = (Label) node("chosen");
    List<String> painted = new ArrayList<>();
    List<String> overlaps = new ArrayList<>();
    act(
        () -> {
          String said = title.getText();
          title.setText("Drill 1 of 6: " + "a name that goes on ".repeat(6));
          layOut();
          layOut(); // what is as wide as its words has its height after its width
          painted.addAll(texts(title));
          overlaps.addAll(overlaps());
          title.setText(said);
        });
    assertThat(overlaps).as("a long title").isEmpty();
    assertThat(painted).as("in several lines").isNotEmpty().noneMatch(text -> text.endsWith("..."));
  }

  private void aLongNameMovesNoCommand() {
    List<Bounds> before = commands();
    Button goOn = (Button) node("go-on");
    List<Bounds> named = new ArrayList<>();
    act(
        () -> {
          String said = goOn.getText();
          goOn.setText("Once more: " + "a name that goes on ".repeat(6));
          layOut();
          named.addAll(COMMANDS.stream().map(id -> inScene(node(id))).toList());
          goOn.setText(said);
        });
    assertThat(named).isEqualTo(before);
  }

  @Test
  void theJoinLinkIsSeenWholeAndItsCodeBesideIt() throws Exception {
    open();
    act(() -> desk.begin(new WindowOptions(WindowOptions.Way.DOOR, "", "", "", true, null)));
    enter();
    title("view.lectern");
    act(() -> ((Button) node("show-code")).fire());
    for (int[] size : SIZES) {
      at(size);
      List<String> link = on(() -> lines((Pane) node("join-link")));
      assertThat(String.join("", link)).isEqualTo(on(() -> session.invitation().toString()));
      for (int i = 1; i < link.size(); i++) {
        assertThat(link.get(i - 1).endsWith("/") || link.get(i).startsWith("?"))
            .as("a line of the link ends at %d: %s", size[0], link)
            .isTrue();
      }
      Bounds code = bounds(node("join-code"));
      Bounds sheet = bounds(stage.getScene().lookup(".lectern-right"));
      assertThat(sheet.contains(code)).as("within the empty page at %d", size[0]).isTrue();
      assertThat(code.getMaxY()).as("without moving the page").isLessThan(foot());
      nothingOverlaps("code at " + size[0]);
    }
    act(() -> desk.lecternDesk().lectern().choose(Stock.find("Jigsaw")));
    until(() -> "Jigsaw".equals(session.state().title()));
    at(SIZES[1]);
    assertThat(bounds(stage.getScene().lookup(".lectern-left")).contains(bounds(node("join-code"))))
        .as("once something is chosen it stands with who is here")
        .isTrue();
  }

  /** What is painted, line by line. */
  private static List<String> lines(Pane pane) {
    Map<Double, String> lines = new TreeMap<>();
    for (Node piece : pane.getChildren()) {
      for (String painted : String.join("", texts((Labeled) piece)).split("\n", -1)) {
        lines.merge(piece.getLayoutY(), painted, String::concat);
      }
    }
    return List.copyOf(lines.values());
  }

  /** In a narrow window the drills then stand below: the cursor goes on to what is done next. */
  private void aDrillThatIsChosenComesIntoView() {
    act(() -> node("drills").requestFocus());
    key(KeyCode.ENTER);
    until(() -> stage.getScene().getFocusOwner() == node("deal"));
    at(SIZES[2]);
    assertThat(bounds(node("chosen")).getMinY()).isGreaterThan(0);
    assertThat(bounds(node("deal")).getMaxY()).isLessThan(foot());
  }

  /** Above the first line of a button is the ground, and no second, paler line. */
  private void oneLineIsOneLine() {
    WritableImage[] made = new WritableImage[1];
    act(() -> made[0] = stage.getScene().snapshot(null));
    PixelReader seen = made[0].getPixelReader();
    for (String id : List.of("earlier", "later", "pass", "remove")) {
      Bounds at = bounds(node(id));
      int y = (int) at.getMinY();
      if (y + 1 < foot() && node(id).getClip() == null) {
        for (int x = (int) at.getMinX() + 10; x < at.getMaxX() - 10; x += 20) {
          double ground = seen.getColor(x, y - 4).getBrightness();
          double above = seen.getColor(x, y - 1).getBrightness();
          double line = seen.getColor(x, y).getBrightness();
          assertThat(Math.abs(above - ground))
              .as("%s at %d: %.2f above a line of %.2f", id, x, above, line)
              .isLessThan(Math.abs(line - ground) / 8);
        }
      }
    }
  }

  private double foot() {
    return bounds(stage.getScene().lookup(".foot")).getMinY();
  }

  private static List<String> texts(Labeled labeled) {
    return labeled.getChildrenUnmodifiable().stream()
        .filter(javafx.scene.text.Text.class::isInstance)
        .map(node -> ((javafx.scene.text.Text) node).getText())
        .toList();
  }

  private void at(int[] size) {
    act(
        () -> {
          stage.setWidth(size[0]);
          stage.setHeight(size[1]);
        });
    still();
  }

  /** At once; on the window's thread. */
  private void layOut() {
    stage.getScene().getRoot().applyCss();
    stage.getScene().getRoot().layout();
  }

  private static Bounds bounds(Node node) {
    return on(() -> inScene(node));
  }

  private static Bounds inScene(Node node) {
    return node.localToScene(node.getLayoutBounds());
  }

  /** Nothing of a column reaches into the next, and the page has one margin left and right. */
  private void nothingOverlaps(String when) {
    assertThat(on(this::overlaps)).as(when).isEmpty();
  }

  /** What reaches too far; on the window's thread. */
  private List<String> overlaps() {
    List<String> found = new ArrayList<>();
    for (String column : List.of(".lectern-left", ".lectern-middle", ".lectern-right")) {
      Region region = (Region) stage.getScene().lookup(column);
      double most = inScene(region).getMaxX() + 0.5;
      for (Node node : visibleUnder(region)) {
        if (inScene(node).getMaxX() > most) {
          found.add(node + " reaches out of " + column);
        }
      }
    }
    double left = place(".lectern-left").getMinX() - place(".lectern-page").getMinX();
    double right = stage.getScene().getWidth() - place(".lectern-right").getMaxX();
    if (Math.abs(left - right) > 1.5) {
      found.add("a margin of " + left + " left, of " + right + " right");
    }
    return found;
  }

  private Bounds place(String selector) {
    return inScene(stage.getScene().lookup(selector));
  }

  private static List<Node> visibleUnder(Parent parent) {
    List<Node> found = new ArrayList<>();
    for (Node node : parent.getChildrenUnmodifiable()) {
      if (node.isVisible() && !(node instanceof ListView<?>)) {
        found.add(node);
        if (node instanceof Parent deeper && !(node instanceof javafx.scene.control.Control)) {
          found.addAll(visibleUnder(deeper));
        }
      } else if (node.isVisible()) {
        found.add(node);
      }
    }
    return found;
  }

  /** A line that is ruled between two pixels is two soft ones. */
  private void allStandsOnWholePixels(String when) {
    Region page = (Region) stage.getScene().lookup(".lectern-page");
    ScrollPane pane = on(() -> (ScrollPane) page.getParent().getParent().getParent());
    act(() -> pane.setVvalue(0));
    for (Node node : on(() -> List.copyOf(page.lookupAll(".button")))) {
      if (on(node::isVisible)
          && !node.getStyleClass().contains("increment-button")
          && !node.getStyleClass().contains("decrement-button")) {
        Bounds at = bounds(node);
        assertThat(at.getMinY()).as("%s: %s", when, node).isEqualTo(Math.rint(at.getMinY()));
        assertThat(at.getHeight()).as("%s: %s", when, node).isEqualTo(Math.rint(at.getHeight()));
      }
    }
  }

  /** Every row of commands ends where the sheet's words end, and Stop does not stand alone. */
  private void theCommandsFillTheirRows() {
    Bounds sheet = bounds(stage.getScene().lookup(".lectern-right"));
    double inner = bounds(node("go-on")).getMinX() - sheet.getMinX();
    List<Bounds> commands = commands();
    for (Bounds at : commands) {
      double end =
          commands.stream()
              .filter(other -> other.getMinY() == at.getMinY())
              .mapToDouble(Bounds::getMaxX)
              .max()
              .orElseThrow();
      assertThat(end).isCloseTo(sheet.getMaxX() - inner, within(1.5));
    }
    assertThat(bounds(node("stop")).getMinY()).isEqualTo(bounds(node("pause")).getMinY());
    theCommandsStandUnderEachOther();
  }

  /** All rows stand on one grid of four columns at most. */
  private void theCommandsStandUnderEachOther() {
    Set<Double> lefts = new TreeSet<>();
    Set<Double> rights = new TreeSet<>();
    for (String id : Stream.concat(COMMANDS.stream(), Stream.of("repeat", "next")).toList()) {
      if (on(node(id)::isVisible)) {
        lefts.add(bounds(node(id)).getMinX());
        rights.add(bounds(node(id)).getMaxX());
      }
    }
    assertThat(lefts).hasSizeBetween(1, 4);
    assertThat(rights).hasSameSizeAs(lefts);
  }

  private List<Bounds> commands() {
    return COMMANDS.stream().map(id -> bounds(node(id))).toList();
  }

  /** The rows in view are whole, and so many where a number is given. */
  private void wholeRows(String id, int rows) {
    ListView<?> list = (ListView<?>) node(id);
    Bounds room = bounds(list);
    List<Node> cells = on(() -> List.copyOf(list.lookupAll(".list-cell")));
    int seen = 0;
    for (Node node : cells) {
      if (on(() -> node.isVisible() && node instanceof ListCell<?> cell && !cell.isEmpty())) {
        Bounds cell = bounds(node);
        assertThat(cell.getMaxY()).as("%s: %s", id, node).isLessThanOrEqualTo(room.getMaxY() + 0.5);
        seen++;
      }
    }
    if (rows >= 0) {
      assertThat(seen).as(id).isEqualTo(rows);
    }
    assertThat(room.getMaxY() - room.getMinY())
        .as("no room below the rows of %s", id)
        .isCloseTo(seen * bounds(cells.get(0)).getHeight(), within(2.5));
  }

  private void theHeadsStandOnOneLine() {
    double sheet = bounds(node("chosen")).getMinY();
    Set<Node> heads = on(() -> stage.getScene().lookup(".lectern-left").lookupAll(".heading"));
    double lessons = heads.stream().mapToDouble(head -> bounds(head).getMinY()).min().orElseThrow();
    assertThat(lessons).isEqualTo(sheet);
  }

  private void theRostersHeadsStandOverTheirCells() {
    for (String column : List.of("chair", "name", "does", "clock", "sound")) {
      // At one moment: a line that changes is another cell at the next, and not in its place yet.
      Set<Double> lefts =
          on(
              () -> {
                layOut();
                return stage
                    .getScene()
                    .lookup(".lectern-left")
                    .lookupAll(".roster-" + column)
                    .stream()
                    .filter(cell -> seen(cell) && !((Label) cell).getText().isEmpty())
                    .map(cell -> cell.localToScene(cell.getLayoutBounds()).getMinX())
                    .collect(Collectors.toSet());
              });
      double head = lefts.iterator().next();
      assertThat(lefts).as(column).allMatch(left -> Math.abs(left - head) <= 0.6);
    }
  }

  /** A list keeps cells that it measures by under a parent that is not shown. */
  private static boolean seen(Node node) {
    boolean seen = true;
    for (Node up = node; seen && up != null; up = up.getParent()) {
      seen = up.isVisible();
    }
    return seen;
  }

  private void theListSaysHowManyRowsAreNotInView() {
    ListView<?> drills = (ListView<?>) node("drills");
    Label more = on(() -> (Label) drills.getParent().lookup(".more-below"));
    int all = on(() -> drills.getItems().size());
    int shown = (int) Math.round((bounds(drills).getHeight()) / on(() -> cell(drills).getHeight()));
    until(() -> more.getText().equals((all - shown) + " more below"));
    act(() -> drills.scrollTo(all - 1));
    until(() -> more.getText().equals((all - shown) + " more above"));
  }

  private static ListCell<?> cell(ListView<?> list) {
    return (ListCell<?>) list.lookup(".list-cell");
  }

  private List<String> inUse(String list) {
    return on(
        () ->
            node(list).lookupAll(".list-cell").stream()
                .filter(Node::isVisible)
                .map(Node::getAccessibleText)
                .filter(text -> text != null && text.endsWith(", in use"))
                .toList());
  }
}
