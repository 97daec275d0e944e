package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.window.season.StockTakes;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.SeasonFile;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.server.host.ClassBook;
import thinclick.server.material.Demo;
import thinclick.server.season.Pupil;
import thinclick.server.words.Speaker;

/** A class from week to week in the real window: its room, its seats, its deal, its page. */
class SeasonPageTest extends PictureCase {
  private static final String CLASS = "Tuesday class";

  SeasonPageTest() {
    super("desk");
  }

  @Test
  void aClassIsTaughtFromWeekToWeek() throws Exception {
    keep(List.of("Jonas", "Quirin", "Mina"), 2);
    open();
    robot.interact(
        () -> {
          field("name").setText("Mina");
          field("class").setText("tuesday class");
          ((Button) node("open-here")).fire();
        });
    until(() -> session.state().inside());
    until(
        () ->
            session.state().people().stream()
                .anyMatch(one -> one.name().equals("Mina") && "3".equals(one.chair())));

    until(() -> node("fit") instanceof CheckBox fit && fit.getParent().isVisible());
    robot.interact(
        () -> {
          ((CheckBox) node("fit")).setSelected(true);
          field("looking").setText("Ands alone");
          node("drills").requestFocus();
        });
    robot.type(KeyCode.ENTER);
    until(() -> "Ands alone".equals(session.state().title()));
    control(KeyCode.D);
    until(() -> session.state().phase() == Phase.DEALT);
    until(() -> texts("fit-says").stream().anyMatch(says -> says.startsWith("Mina stands at ")));

    control(KeyCode.DIGIT6);
    until(() -> stage.getTitle().equals("Thinclick: Season"));
    until(() -> texts("pupil-says").stream().anyMatch(says -> says.startsWith("Jonas took part")));
    robot.interact(
        () -> {
          field("pupil-name").setText("Jonah");
          ((Button) node("put-name")).fire();
        });
    until(() -> says().equals("Jonas is Jonah now, in three places."));
    until(() -> texts("pupil-says").stream().anyMatch(says -> says.startsWith("Jonah took part")));
    robot.interact(() -> ((Button) node("erase-pupil")).fire());
    until(() -> node("erase-now") != null);
    assertThat(on(() -> node("erase-now").isDisabled())).as("inside a room").isTrue();
    robot.interact(session::leave);
    until(() -> !session.state().inside());
    aPupilIsErased();
  }

  private void aPupilIsErased() throws IOException {
    robot.interact(() -> desk.goTo(View.SEASON));
    until(() -> stage.getScene().lookup("#classes .button") instanceof Button);
    robot.interact(() -> ((Button) stage.getScene().lookup("#classes .button")).fire());
    until(() -> texts("pupil-says").stream().anyMatch(says -> says.startsWith("Jonah took part")));
    robot.interact(
        () -> {
          node("members").requestFocus();
          mark("Quirin");
        });
    until(() -> texts("pupil-says").stream().anyMatch(says -> says.startsWith("Quirin took")));
    robot.interact(() -> ((Button) node("erase-pupil")).fire());
    until(() -> node("erase-now") != null);
    theAnswersAreInViewAtTwiceTheSize();
    assertThat(String.join(" ", texts("erasure")))
        .contains(
            "Erase Quirin from Tuesday class?",
            "In two takes the name becomes \u201cSomebody\u201d: \u2003Sep\u00a08,\u00a02026: ");
    assertThat(holding("Quirin")).isTrue();
    until(
        () ->
            text("sentence")
                .equals("Enter leaves everything as it is; Tab, then Enter, erases for good."));
    assertThat(on(() -> node("erase-not").isFocused())).as("Enter leaves it").isTrue();
    robot.type(KeyCode.TAB).type(KeyCode.ENTER);
    until(() -> node("members").isFocused());
    until(() -> says().startsWith("Erased. In two takes the name is \u201cSomebody\u201d now: "));
    assertThat(holding("Quirin")).isFalse();
    until(
        () ->
            text("sentence")
                .equals("Quirin is erased from Tuesday class; two members and two takes remain."));
  }

  /** There the question is longer than the window: what answers it stands below the page. */
  private void theAnswersAreInViewAtTwiceTheSize() {
    double high = on(stage::getHeight);
    robot.interact(
        () -> {
          stage.setHeight(600);
          desk.looks().grow(15);
        });
    until(() -> aboveTheFoot("erase-not") && aboveTheFoot("erase-now"));
    assertThat(on(() -> node("erase-not").isFocused())).isTrue();
    assertThat(on(() -> aboveTheFoot("erasure"))).as("it has to be moved").isFalse();
    robot.interact(
        () -> {
          stage.setHeight(high);
          desk.looks().grow(-15);
        });
    until(() -> aboveTheFoot("erase-now") && aboveTheFoot("erasure"));
  }

  private boolean aboveTheFoot(String id) {
    Bounds at = node(id).localToScene(node(id).getLayoutBounds());
    Node foot = stage.getScene().lookup(".foot");
    return at.getMinY() > 0 && at.getMaxY() <= foot.localToScene(0, 0).getY();
  }

  @SuppressWarnings("unchecked")
  private void mark(String name) {
    var list = (ListView<Pupil>) node("members");
    list.getItems().stream()
        .filter(pupil -> pupil.name().equals(name))
        .findFirst()
        .ifPresent(pupil -> list.getSelectionModel().select(pupil));
  }

  /**
   * Where there is no room for all columns, they give way as their heads do, beside a scroll bar.
   */
  @Test
  void headsStandOverTheirColumnsInANarrowWindow() throws Exception {
    keep(Demo.TUESDAY_CLASS, 1);
    open();
    robot.interact(
        () -> {
          stage.setWidth(1024);
          stage.setHeight(768);
          desk.goTo(View.SEASON);
        });
    until(() -> stage.getScene().lookup("#classes .button") instanceof Button);
    robot.interact(() -> ((Button) stage.getScene().lookup("#classes .button")).fire());
    until(() -> node("members").lookup(".list-cell .roster-line") != null);
    WaitForAsyncUtils.waitForFxEvents();
    headsStandOverTheirColumns();
    robot.interact(() -> desk.looks().grow(15));
    WaitForAsyncUtils.waitForFxEvents();
    headsStandOverTheirColumns();
  }

  private void headsStandOverTheirColumns() {
    List<Double> heads = on(() -> lefts(node("members").getParent().lookup(".roster-heads")));
    List<Double> cells = on(() -> lefts(node("members").lookup(".list-cell .roster-line")));
    assertThat(cells).hasSameSizeAs(heads);
    Region column = (Region) node("members").getParent().getParent();
    assertThat(on(() -> ((Region) node("members")).getWidth()))
        .as("inside its column")
        .isLessThanOrEqualTo(on(column::getWidth));
    for (int i = 0; i < heads.size(); i++) {
      assertThat(cells.get(i)).as("column %d", i).isCloseTo(heads.get(i), within(1.0));
    }
  }

  private static List<Double> lefts(Node line) {
    return ((HBox) line)
        .getChildren().stream().map(cell -> cell.localToScene(0, 0).getX()).toList();
  }

  /** To be looked at: {@code target/desk/season-*.png}. */
  @Test
  @Tag("long")
  void theSeasonAsItLooks() throws Exception {
    keep(Demo.TUESDAY_CLASS, 4);
    open();
    picture("season-door");
    robot.interact(() -> desk.goTo(View.SEASON));
    until(() -> stage.getScene().lookup("#classes .button") instanceof Button);
    picture("season-none-open");
    robot.interact(() -> ((Button) stage.getScene().lookup("#classes .button")).fire());
    until(() -> !texts("pupil-says").isEmpty());
    picture("season-open");
    pictureTwiceAsLarge("season-open");
    robot.interact(() -> ((Button) node("erase-pupil")).fire());
    until(() -> node("erase-now") != null);
    picture("season-erase");
    pictureTwiceAsLarge("season-erase");
    robot.interact(() -> ((Button) node("erase-now")).fire());
    until(() -> !says().isEmpty());
    picture("season-erased");
    picture("season-picture", this::toTheEnd);
    assertThat(written()).isEqualTo(48);
  }

  private void toTheEnd() {
    page().setVvalue(1);
  }

  private ScrollPane page() {
    Node above = node("class-picture");
    while (!(above instanceof ScrollPane)) {
      above = above.getParent();
    }
    return (ScrollPane) above;
  }

  // ---------------------------------------------------------------- a class that has played

  private void keep(List<String> names, int weeks) {
    List<SeasonFile.KeptTake> takes = new ArrayList<>();
    for (int week = 0; week < weeks; week++) {
      Instant when = Instant.parse("2026-09-01T10:00:00Z").plus(Duration.ofDays(7L * week));
      for (int i = 0; i < (weeks > 2 ? 2 : 1); i++) {
        int missing = week;
        List<String> there =
            weeks == 2
                ? names
                : names.stream().filter(one -> names.indexOf(one) % 7 != missing).toList();
        takes.add(
            new SeasonFile.KeptTake(
                "old-t" + week + "-" + i,
                when.plusSeconds(600L * i).toString(),
                "finished",
                take(there, week),
                null));
      }
    }
    List<SeasonFile.Member> members = new ArrayList<>();
    names.forEach(name -> members.add(new SeasonFile.Member(name, members.size() + 1, null)));
    SeasonFile season = SeasonFile.of(CLASS, null, members, takes);
    try (ClassBook book =
        ClassBook.open(
            folder.resolve("rooms.db"), null, InstantSource.system(), Speaker.english())) {
      book.open(FileCodec.writeSeason(season));
    }
  }

  private static Take take(List<String> names, int week) {
    Random random = new Random(week);
    return StockTakes.played(
        "Ands alone",
        names,
        (part, grid) -> {
          double spread = 12_000 + 3_000 * (names.indexOf(part.player()) % 8) - 2_000 * week;
          List<Attack> attacks = new ArrayList<>();
          for (int step : part.attackSteps()) {
            double off = random.nextGaussian() * spread;
            attacks.add(Attack.tap(part.player(), Math.round(grid.microsAt(step) + off)));
          }
          return attacks;
        });
  }

  // ---------------------------------------------------------------- the window

  private TextField field(String id) {
    return (TextField) node(id);
  }

  private String says() {
    return String.join(" ", texts("season-says"));
  }

  private List<String> texts(String box) {
    return node(box) instanceof VBox found
        ? found.getChildren().stream()
            .filter(Label.class::isInstance)
            .map(label -> ((Label) label).getText())
            .toList()
        : List.of();
  }

  /**
   * Whether any file says it; where one goes meanwhile, what it held may stand in another by now.
   */
  private boolean holding(String name) throws IOException {
    try {
      return read(name);
    } catch (NoSuchFileException gone) { // the database puts its companions away when it likes
      return holding(name);
    }
  }

  private boolean read(String name) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        if (new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1).contains(name)) {
          return true;
        }
      }
      return false;
    }
  }
}
