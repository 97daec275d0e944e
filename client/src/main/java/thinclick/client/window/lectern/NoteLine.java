package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import java.util.function.Supplier;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Example;
import thinclick.client.window.look.Prose;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Person;

/** A note to everybody, or to who is marked; it stands on their stands between takes. */
final class NoteLine {
  private final RosterModel model;
  private final Words words;
  private final Supplier<@Nullable Person> marked;
  private final TextField note = new TextField();
  private final Label to = styled(new Label(), "soft");
  private final VBox root = new VBox(8, note, to);

  NoteLine(RosterModel model, Words words, Supplier<@Nullable Person> marked) {
    this.model = model;
    this.words = words;
    this.marked = marked;
    note.setId("note");
    Example.in(note, words.say("lectern.note"));
    note.setAccessibleText(words.say("lectern.note"));
    note.setOnAction(done -> write());
    Prose.in(to);
  }

  VBox root() {
    return root;
  }

  /** Puts the cursor into the note. */
  void begin() {
    note.requestFocus();
  }

  private void write() {
    model.note(note.getText(), marked.get());
    note.clear();
  }

  /** Says whom the note goes to. */
  void show() {
    Person person = marked.get();
    to.setText(
        person == null || person.standIn()
            ? words.say("lectern.note.all")
            : words.say("lectern.note.one", person.name()));
  }
}
