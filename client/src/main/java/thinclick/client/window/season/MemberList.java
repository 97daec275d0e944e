package thinclick.client.window.season;

import static thinclick.client.window.look.Styled.styled;
import static thinclick.client.window.season.Controls.heading;
import static thinclick.client.window.season.Controls.wrapped;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;
import thinclick.server.season.OwnRung;
import thinclick.server.season.Pupil;
import thinclick.server.season.Season;
import thinclick.server.season.SeasonWords;

/** Who is in a class: chair, name, weeks, last seen, level, the thinnest click held. */
final class MemberList {
  private static final Duration SAME_YEAR = Duration.ofDays(300);
  private static final int FEWEST_LINES = 3;
  private static final int MOST_LINES = 14;
  private static final String BESIDE_BAR = "member-heads-beside-bar";
  private static final List<String> STYLES =
      List.of(
          "member-chair",
          "member-name",
          "member-weeks",
          "member-last",
          "member-level",
          "member-rung");

  private final ClassDesk desk;
  private DateTimeFormatter day;
  private final ListView<Pupil> list = new ListView<>();
  private final HBox head;
  private final VBox root;
  private @Nullable SeasonWords said;

  MemberList(ClassDesk desk, Words words, Consumer<@Nullable Pupil> marked) {
    this.desk = desk;
    day = desk.speaker().days();
    list.setId("members");
    list.getStyleClass().addAll("rows-list", "season-rows");
    list.setAccessibleText(words.say("season.members"));
    list.setCellFactory(any -> new Line());
    list.setMinHeight(Region.USE_PREF_SIZE);
    list.setPlaceholder(styled(wrapped(words.say("season.members.none")), "soft"));
    list.getSelectionModel()
        .selectedItemProperty()
        .addListener((any, old, now) -> marked.accept(now));
    head = styled(cells(SeasonWords.heads(desk.speaker())), "roster-heads");
    head.getChildren().forEach(cell -> cell.getStyleClass().add("soft"));
    head.setAlignment(Pos.BOTTOM_LEFT); // where one takes two lines, all end above the rows
    Label levels = styled(wrapped(words.say("season.levels")), "soft");
    root = new VBox(8, heading(words.say("season.members")), head, list, levels);
    root.getStyleClass().add("headed");
  }

  VBox root() {
    return root;
  }

  ListView<Pupil> list() {
    return list;
  }

  @Nullable Pupil marked() {
    return list.getSelectionModel().getSelectedItem();
  }

  /** Shows a class; who was marked stays so. */
  void show(@Nullable Season season) {
    Pupil before = marked();
    said = season == null ? null : new SeasonWords(season, ZoneId.systemDefault(), desk.speaker());
    List<Pupil> pupils = season == null ? List.of() : season.pupils();
    boolean year =
        withYear(pupils.stream().flatMap(one -> Stream.ofNullable(one.lastSeen())).toList());
    day =
        (year ? desk.speaker().days() : desk.speaker().daysOfTheYear())
            .withZone(ZoneId.systemDefault());
    list.getItems().setAll(pupils);
    Controls.asHighAsLines(list, FEWEST_LINES, MOST_LINES);
    head.getStyleClass().remove(BESIDE_BAR);
    if (pupils.size() > MOST_LINES) {
      head.getStyleClass().add(BESIDE_BAR);
    }
    Optional<Pupil> again =
        pupils.stream().filter(one -> before != null && one.key().equals(before.key())).findFirst();
    if (again.isPresent()) {
      list.getSelectionModel().select(again.get());
    } else if (!pupils.isEmpty()) {
      list.getSelectionModel().select(0);
    }
  }

  /** A day says its year only where another one of them could be meant. */
  static boolean withYear(List<Instant> days) {
    Optional<Instant> first = days.stream().min(Comparator.naturalOrder());
    Optional<Instant> last = days.stream().max(Comparator.naturalOrder());
    return first.isPresent()
        && last.isPresent()
        && Duration.between(first.get(), last.get()).compareTo(SAME_YEAR) > 0;
  }

  private List<String> texts(Pupil pupil) {
    Instant seen = pupil.lastSeen();
    return List.of(
        pupil.chair() == null ? "-" : Integer.toString(pupil.chair()),
        pupil.name(),
        said == null ? "-" : said.weeksOf(pupil),
        seen == null ? "-" : day.format(seen),
        pupil.standing().map(one -> Integer.toString(one.level())).orElse("-"),
        pupil.rung().map(OwnRung::click).map(click -> desk.speaker().say(click)).orElse("-"));
  }

  private static HBox cells(List<String> texts) {
    HBox line = styled(new HBox(), "roster-line");
    for (int i = 0; i < texts.size(); i++) {
      Label cell = styled(new Label(texts.get(i)), STYLES.get(i));
      cell.setWrapText(true);
      line.getChildren().add(cell);
    }
    return line;
  }

  private final class Line extends ListCell<Pupil> {
    Line() {
      setPrefWidth(0); // as wide as the list, so that columns give way like their heads
    }

    @Override
    protected void updateItem(@Nullable Pupil pupil, boolean empty) {
      super.updateItem(pupil, empty);
      setText("");
      if (pupil == null || empty) {
        setGraphic(null);
      } else {
        HBox line = cells(texts(pupil));
        line.prefWidthProperty()
            .bind(
                Bindings.createDoubleBinding(
                    () -> getWidth() - snappedLeftInset() - snappedRightInset(),
                    widthProperty(),
                    insetsProperty()));
        setGraphic(line);
      }
      setAccessibleText(pupil == null || empty ? "" : String.join(", ", texts(pupil)));
    }
  }
}
