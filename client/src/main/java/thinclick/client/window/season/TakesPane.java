package thinclick.client.window.season;

import static thinclick.client.window.look.Styled.styled;
import static thinclick.client.window.season.Controls.button;
import static thinclick.client.window.season.Controls.heading;
import static thinclick.client.window.season.Controls.wrapped;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.control.Button;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;
import thinclick.server.season.ClassTake;
import thinclick.server.season.Season;

/** The takes of a class, the newest first: a spoilt one is dropped, swapped seats are put right. */
final class TakesPane {
  private static final int MOST_LINES = 7;

  private final ClassDesk desk;
  private final Words words;
  private final DateTimeFormatter when;
  private final ListView<ClassTake> list = new ListView<>();
  private final ChoiceBox<String> one = new ChoiceBox<>();
  private final ChoiceBox<String> other = new ChoiceBox<>();
  private final Button drop;
  private final Button swap;
  private final VBox root;

  TakesPane(ClassDesk desk, Words words) {
    this.desk = desk;
    this.words = words;
    when =
        DateTimeFormatter.ofLocalizedDateTime(FormatStyle.MEDIUM, FormatStyle.SHORT)
            .withLocale(words.locale())
            .withZone(ZoneId.systemDefault());
    list.setId("class-takes");
    list.getStyleClass().addAll("rows-list", "season-rows");
    list.setAccessibleText(words.say("season.takes"));
    list.setCellFactory(any -> new Line());
    list.setMinHeight(Region.USE_PREF_SIZE);
    Label none = styled(wrapped(words.say("season.takes.none")), "soft");
    list.setPlaceholder(none);
    list.getSelectionModel().selectedItemProperty().addListener((any, old, now) -> marked(now));
    drop = button("drop-take", words.say("season.drop"), this::drop);
    swap = button("swap-seats", words.say("season.swap"), this::swap);
    one.setId("swap-one");
    other.setId("swap-other");
    one.setAccessibleText(words.say("season.swap.one"));
    other.setAccessibleText(words.say("season.swap.other"));
    FlowPane swapping =
        new FlowPane(10, 6, one, new Label(words.say("season.swap.and")), other, swap);
    swapping.setRowValignment(VPos.BASELINE);
    root = new VBox(8, heading(words.say("season.takes")), list, drop, swapping);
    root.getStyleClass().add("headed");
    marked(null);
  }

  VBox root() {
    return root;
  }

  void show(@Nullable Season season) {
    List<ClassTake> takes = season == null ? List.of() : new ArrayList<>(season.takes());
    Collections.reverse(takes);
    ClassTake before = list.getSelectionModel().getSelectedItem();
    list.getItems().setAll(takes);
    Controls.asHighAsLines(list, 2, MOST_LINES);
    takes.stream()
        .filter(take -> before != null && take.entry().id().equals(before.entry().id()))
        .findFirst()
        .ifPresent(take -> list.getSelectionModel().select(take));
  }

  private void marked(@Nullable ClassTake take) {
    List<String> names =
        take == null
            ? List.of()
            : take.seats().stream()
                .filter(seat -> !seat.standIn())
                .map(ClassTake.Seat::player)
                .toList();
    for (ChoiceBox<String> choice : List.of(one, other)) {
      choice.getItems().setAll(names);
      choice.setDisable(names.size() < 2);
    }
    if (names.size() > 1) {
      one.setValue(names.get(0));
      other.setValue(names.get(1));
    }
    drop.setDisable(take == null);
    swap.setDisable(names.size() < 2);
  }

  private void drop() {
    ClassTake take = list.getSelectionModel().getSelectedItem();
    if (take != null) {
      String title = desk.openProperty().get();
      desk.change(
          book -> {
            book.drop(title, take.entry().id());
            return words.say("season.dropped", line(take));
          });
    }
  }

  private void swap() {
    ClassTake take = list.getSelectionModel().getSelectedItem();
    String first = one.getValue();
    String second = other.getValue();
    if (take != null && first != null && second != null && !first.equals(second)) {
      String title = desk.openProperty().get();
      desk.change(
          book -> {
            book.swap(title, take.entry().id(), first, second);
            return words.say("season.swapped", first, second, line(take));
          });
    }
  }

  private String line(ClassTake take) {
    return words.say(
        "season.take",
        when.format(take.entry().begunAt()),
        take.entry().key().title(),
        take.entry().key().tempo(),
        take.seats().size());
  }

  private final class Line extends ListCell<ClassTake> {
    @Override
    protected void updateItem(@Nullable ClassTake take, boolean empty) {
      super.updateItem(take, empty);
      setText(take == null || empty ? "" : line(take));
    }
  }
}
