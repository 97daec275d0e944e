package thinclick.client.window.lectern;

import static thinclick.client.window.lectern.Keyed.styled;

import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.IntStream;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;
import thinclick.client.standin.Manner;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.ServerMessage.Person;

/** The roster's lines, and what the leader can do with who is marked in it. */
final class RosterView {
  private static final int FEWEST_LINES = 3;
  private static final int MOST_LINES = 12;

  private final RosterModel model;
  private final Words words;
  private final ListView<RosterLine> list = new ListView<>();
  private final InviteView invite;
  private final Label none = styled(new Label(), "soft");
  private final CheckBox locked = new CheckBox();
  private final ChoiceBox<Manner> manner = new ChoiceBox<>();
  private final ChoiceBox<Integer> chair = new ChoiceBox<>();
  private final TextField note = new TextField();
  private final Label noteTo = styled(new Label(), "soft");
  private final Button earlier;
  private final Button later;
  private final Button pass;
  private final Button remove;
  private final Button fill;
  private final VBox root = new VBox(8);
  private @Nullable Drill drill;

  RosterView(RosterModel model, Words words) {
    this.model = model;
    this.words = words;
    invite = new InviteView(model.invite(), words);
    earlier = Keyed.button("earlier", words.say("lectern.earlier"), "Alt+\u2191", () -> move(-1));
    later = Keyed.button("later", words.say("lectern.later"), "Alt+\u2193", () -> move(1));
    pass = Keyed.button("pass", words.say("lectern.pass"), "Alt+L", () -> with(model::pass));
    remove =
        Keyed.button(
            "remove", words.say("lectern.remove"), "Alt+Delete", () -> with(model::remove));
    fill = Keyed.button("fill", words.say("lectern.fill"), "Alt+F", this::fill);
    createView();
  }

  VBox root() {
    return root;
  }

  private void createView() {
    list.setId("roster");
    list.setAccessibleText(words.say("lectern.people"));
    list.setCellFactory(any -> new LineCell());
    list.setFixedCellSize(-1);
    list.getSelectionModel().selectedItemProperty().addListener((any, old, now) -> enable());
    list.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
    none.setText(words.say("lectern.people.none"));
    none.setWrapText(true);

    FlowPane seat = new FlowPane(10, 8, earlier, later, pass, remove);
    manner.getItems().setAll(Manner.values());
    manner.setValue(Manner.STEADY);
    manner.setId("manner");
    manner.setConverter(said(one -> words.say(one.key())));
    manner.setAccessibleText(words.say("lectern.fill.manner"));
    chair.setId("fill-chair");
    chair.setConverter(said(this::chairWords));
    chair.setAccessibleText(words.say("lectern.fill.chair"));
    FlowPane bring = new FlowPane(10, 8, fill, manner, chair);

    CheckBox plays = new CheckBox(words.say("lectern.plays"));
    plays.setId("leader-plays");
    plays.selectedProperty().bindBidirectional(model.leaderPlaysProperty());
    plays.setWrapText(true);
    locked.setText(words.say("lectern.lock"));
    locked.setId("lock");
    locked.setWrapText(true);
    locked.setOnAction(done -> model.lock(locked.isSelected()));
    Button newWord =
        styled(Keyed.button("new-word", words.say("lectern.newWord"), "", model::newWord), "quiet");
    FlowPane door = new FlowPane(18, 8, locked, newWord);

    note.setId("note");
    note.setPromptText(words.say("lectern.note"));
    note.setAccessibleText(words.say("lectern.note"));
    note.setOnAction(done -> writeNote());
    noteTo.setWrapText(true);
    Label names = styled(new Label(words.say("care.names")), "soft");
    names.setId("care-names");
    names.setWrapText(true);
    root.getChildren()
        .setAll(
            styled(new Label(words.say("lectern.people")), "heading"),
            heads(),
            list,
            none,
            invite.root(),
            seat,
            bring,
            plays,
            door,
            note,
            noteTo,
            names);
  }

  private Node heads() {
    HBox heads =
        cells(
            List.of(
                words.say("lectern.head.chair"),
                words.say("lectern.head.name"),
                words.say("lectern.head.does"),
                words.say("lectern.head.clock"),
                words.say("lectern.head.sound"),
                ""));
    heads.getChildren().forEach(head -> head.getStyleClass().add("soft"));
    heads.getStyleClass().add("roster-heads");
    return heads;
  }

  private static HBox cells(List<String> texts) {
    List<String> styles =
        List.of(
            "roster-chair",
            "roster-name",
            "roster-does",
            "roster-clock",
            "roster-sound",
            "roster-ready");
    HBox line = styled(new HBox(), "roster-line");
    for (int i = 0; i < texts.size(); i++) {
      Label cell = styled(new Label(texts.get(i)), styles.get(i));
      cell.setWrapText(true);
      line.getChildren().add(cell);
    }
    return line;
  }

  private static <T> StringConverter<T> said(Function<T, String> words) {
    return new StringConverter<>() {
      @Override
      public String toString(@Nullable T value) {
        return value == null ? "" : words.apply(value);
      }

      @Override
      public @Nullable T fromString(String text) {
        return null;
      }
    };
  }

  private String chairWords(Integer number) {
    Drill chosen = drill;
    String role =
        chosen == null || number == 0
            ? null
            : chosen.chairs().get((number - 1) % chosen.chairs().size()).role();
    if (number == 0) {
      return words.say("lectern.fill.next");
    }
    return role == null
        ? words.say("lectern.fill.number", number)
        : words.say("lectern.fill.role", number, words.role(role));
  }

  // ---------------------------------------------------------------- what is done

  private void key(KeyEvent key) {
    if (!key.isAltDown()) {
      return;
    }
    boolean known = true;
    if (key.getCode() == KeyCode.UP) {
      move(-1);
    } else if (key.getCode() == KeyCode.DOWN) {
      move(1);
    } else if (key.getCode() == KeyCode.L) {
      with(model::pass);
    } else if (key.getCode() == KeyCode.DELETE) {
      with(model::remove);
    } else if (key.getCode() == KeyCode.F) {
      fill();
    } else {
      known = false;
    }
    if (known) {
      key.consume();
    }
  }

  private @Nullable Person marked() {
    RosterLine line = list.getSelectionModel().getSelectedItem();
    return line == null ? null : line.person();
  }

  private void with(Consumer<Person> does) {
    Person person = marked();
    if (person != null) {
      does.accept(person);
    }
  }

  private void move(int by) {
    with(person -> model.move(person, by));
  }

  private void fill() {
    Integer place = chair.getValue();
    model.fill(manner.getValue(), marked(), place == null ? 0 : place);
  }

  private void writeNote() {
    model.note(note.getText(), marked());
    note.clear();
  }

  // ---------------------------------------------------------------- what is shown

  void show(RoomState room, @Nullable Drill chosen) {
    drill = chosen;
    List<RosterLine> lines = model.lines(chosen);
    Person marked = marked();
    if (!list.getItems().equals(lines)) {
      list.getItems().setAll(lines);
      for (int i = 0; i < lines.size(); i++) {
        if (marked != null && lines.get(i).person().playerId().equals(marked.playerId())) {
          list.getSelectionModel().select(i);
        }
      }
    }
    list.setMinHeight(Region.USE_PREF_SIZE);
    int shown = Math.max(FEWEST_LINES, Math.min(MOST_LINES, lines.size()));
    list.setStyle("-fx-pref-height: " + (shown * 2.1 + 0.3) + "em;");
    Keyed.shown(none, room.people().size() <= 1);
    invite.show();
    locked.setSelected(room.locked());
    int chairs = Math.max(model.playing().size(), chosen == null ? 1 : chosen.chairs().size());
    List<Integer> places = IntStream.rangeClosed(0, Math.min(24, chairs)).boxed().toList();
    if (!chair.getItems().equals(places)) {
      Integer before = chair.getValue();
      chair.getItems().setAll(places);
      chair.setValue(before != null && places.contains(before) ? before : Integer.valueOf(0));
    }
    enable();
  }

  private void enable() {
    Person person = marked();
    boolean seated = person != null && model.canSeat() && model.playing().contains(person);
    earlier.setDisable(!seated);
    later.setDisable(!seated);
    pass.setDisable(person == null || !model.canLead(person));
    remove.setDisable(person == null || !model.canRemove(person));
    fill.setDisable(!model.canSeat());
    noteTo.setText(
        person == null || person.standIn()
            ? words.say("lectern.note.all")
            : words.say("lectern.note.one", person.name()));
  }

  /** One line of the roster. */
  private static final class LineCell extends ListCell<RosterLine> {
    @Override
    protected void updateItem(@Nullable RosterLine line, boolean empty) {
      super.updateItem(line, empty);
      setText("");
      if (line == null || empty) {
        setGraphic(null);
        setAccessibleText("");
        return;
      }
      setGraphic(
          cells(
              List.of(
                  line.chair(),
                  line.person().name(),
                  line.does(),
                  line.clock(),
                  line.sound(),
                  line.ready())));
      setAccessibleText(line.spoken());
    }
  }
}
