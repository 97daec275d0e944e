package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Prose;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.ServerMessage.Person;

/** Who is here, and what the leader can do with who is marked. */
final class RosterView {
  private final RosterModel model;
  private final Words words;
  private final RosterList people;
  private final FillLine fill;
  private final NoteLine note;
  private final InviteView invite;
  private final Label none = styled(new Label(), "soft");
  private final CheckBox locked = new CheckBox();
  private final Button earlier;
  private final Button later;
  private final Button pass;
  private final Button remove;
  private final Label readiness = styled(new Label(), "soft");
  private final VBox way = new VBox();
  private final VBox root = styled(new VBox(), "lectern-part");

  RosterView(RosterModel model, Words words, Executor soon) {
    this.model = model;
    this.words = words;
    invite = new InviteView(model.invite(), words);
    people = new RosterList(words, soon, this::enable);
    fill = new FillLine(model, words, people::marked);
    note = new NoteLine(model, words, people::marked);
    earlier =
        Keyed.button("earlier", words.say("lectern.earlier"), words.say("key.up"), () -> move(-1));
    later = Keyed.button("later", words.say("lectern.later"), words.say("key.down"), () -> move(1));
    pass = Keyed.button("pass", words.say("lectern.pass"), "Alt+L", () -> with(model::pass));
    remove =
        Keyed.button(
            "remove",
            words.say("lectern.remove"),
            words.say("key.delete"),
            () -> with(model::remove));
    people.list().addEventFilter(KeyEvent.KEY_PRESSED, this::key);
    createView();
    wayIn(null);
  }

  VBox root() {
    return root;
  }

  private void createView() {
    readiness.setId("readiness");
    none.setId("people-none");
    Prose.in(none);
    CheckBox plays = new CheckBox(words.say("lectern.plays"));
    plays.setId("leader-plays");
    plays.selectedProperty().bindBidirectional(model.leaderPlaysProperty());
    Prose.in(plays);
    locked.setText(words.say("lectern.lock"));
    locked.setId("lock");
    Prose.in(locked);
    locked.setOnAction(done -> model.lock(locked.isSelected()));
    CheckBox shared = new CheckBox(words.say("lectern.share"));
    shared.setId("share");
    Prose.in(shared);
    shared.setAllowIndeterminate(false);
    shared.setIndeterminate(true); // a duo shares by itself, a larger band does not
    shared.setOnAction(done -> model.share(shared.isSelected()));
    Button newWord =
        styled(Keyed.button("new-word", words.say("lectern.newWord"), "", model::newWord), "quiet");
    Label names = styled(new Label(words.say("care.names")), "soft");
    names.setId("care-names");
    Prose.in(names);
    root.getChildren()
        .setAll(
            new FlowPane(
                12, 0, styled(new Label(words.say("lectern.people")), "heading"), readiness),
            people.root(),
            none,
            way,
            seats(),
            plays,
            new FlowPane(18, 8, locked, newWord),
            shared,
            note.root(),
            names);
  }

  /** Two columns whose edges meet those of the list above: no button stands alone in a row. */
  private VBox seats() {
    return styled(
        new VBox(
            row(earlier, later),
            row(pass, remove),
            row(fill.button(), fill.chair()),
            asTheyAre(fill.manner())),
        "lectern-seats");
  }

  /** Controls of one width that fill a row. */
  private static HBox row(Control... controls) {
    for (Control control : controls) {
      control.setPrefWidth(0);
      control.setMinWidth(0);
    }
    return asTheyAre(controls);
  }

  /** Controls that fill a row, each as much wider than it has to be as the others. */
  private static HBox asTheyAre(Control... controls) {
    for (Control control : controls) {
      HBox.setHgrow(control, Priority.ALWAYS);
      control.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
    }
    return styled(new HBox(controls), "lectern-seats-row");
  }

  /** How others come in; it stands here unless the page has a better place for it. */
  void wayIn(@Nullable VBox elsewhere) {
    Keyed.shown(way, elsewhere == null);
    VBox place = elsewhere == null ? way : elsewhere;
    if (invite.root().getParent() != place) {
      place.getChildren().add(invite.root());
    }
  }

  /** True where somebody at another computer could come in. */
  boolean open() {
    return model.invite().link() != null;
  }

  // ---------------------------------------------------------------- what is done

  private void key(KeyEvent key) {
    if (!key.isAltDown()) {
      return;
    }
    switch (key.getCode()) {
      case UP -> move(-1);
      case DOWN -> move(1);
      case L -> with(model::pass);
      case DELETE -> with(model::remove);
      case F -> fill.fill();
      case N -> note.begin();
      default -> {
        return;
      }
    }
    key.consume();
  }

  private void with(Consumer<Person> does) {
    Person person = people.marked();
    if (person != null) {
      does.accept(person);
    }
  }

  private void move(int by) {
    with(person -> model.move(person, by));
  }

  // ---------------------------------------------------------------- what is shown

  void show(RoomState room, @Nullable Drill chosen) {
    people.show(model.lines(chosen));
    readiness.setText(model.readiness());
    boolean others = room.people().size() > 1;
    none.setText(words.say(others ? "lectern.people.mark" : "lectern.people.none"));
    invite.show();
    locked.setSelected(room.locked());
    fill.show(chosen);
    enable();
  }

  private void enable() {
    Person person = people.marked();
    boolean seated = person != null && model.canSeat() && model.playing().contains(person);
    earlier.setDisable(!seated);
    later.setDisable(!seated);
    pass.setDisable(person == null || !model.canLead(person));
    remove.setDisable(person == null || !model.canRemove(person));
    none.setVisible(person == null && model.canSeat()); // why they are grey; it keeps its place
    fill.enable();
    note.show();
  }
}
