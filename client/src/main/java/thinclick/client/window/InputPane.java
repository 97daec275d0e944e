package thinclick.client.window;

import java.text.Normalizer;
import java.util.Locale;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import thinclick.client.input.KeyHalf;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;

/** What is tapped on and by whom: letters, a learned pad, a second player at this computer. */
final class InputPane {
  private final Session session;
  private final Taps taps;
  private final Words words;
  private final TextField name = new TextField();
  private final Label guestSays = wrapped(new Label());

  InputPane(Session session, Taps taps, Words words) {
    this.session = session;
    this.taps = taps;
    this.words = words;
  }

  /** Puts the controls into their place. */
  void into(VBox box) {
    ToggleGroup letters = new ToggleGroup();
    for (KeyHalf half : KeyHalf.values()) {
      RadioButton one = new RadioButton(words.say(key(half)));
      one.setId("keys-" + half.name().toLowerCase(Locale.ROOT));
      one.setToggleGroup(letters);
      one.setSelected(half == taps.halfProperty().get());
      one.disableProperty().bind(taps.twoChairsProperty());
      one.setOnAction(done -> taps.halfProperty().set(half));
      box.getChildren().add(one);
    }
    Button learn = new Button(words.say("taps.learn"));
    learn.setId("pad-learn");
    learn.setOnAction(done -> taps.learn());
    Button forget = new Button(words.say("taps.learn.forget"));
    forget.setId("pad-forget");
    forget.getStyleClass().add("quiet");
    forget.setOnAction(done -> taps.forget());
    Label learnSays = wrapped(new Label());
    learnSays.setId("pad-says");
    learnSays.textProperty().bind(taps.learnSaysProperty());
    hideEmpty(learnSays);

    CheckBox two = new CheckBox(words.say("taps.second"));
    two.setId("second-chair");
    two.setWrapText(true);
    two.selectedProperty().bindBidirectional(taps.twoChairsProperty());
    name.setId("second-name");
    name.setAccessibleText(words.say("taps.second.name"));
    name.setPrefWidth(180);
    Button in = new Button(words.say("taps.second.in"));
    in.setId("second-in");
    in.setOnAction(done -> letIn());
    name.setOnAction(done -> letIn());
    Label nameLabel = new Label(words.say("taps.second.name"));
    nameLabel.setLabelFor(name);
    FlowPane who = line(nameLabel, name, in);
    who.visibleProperty().bind(two.selectedProperty());
    who.managedProperty().bind(two.selectedProperty());
    guestSays.setId("second-says");
    hideEmpty(guestSays);
    two.selectedProperty()
        .addListener(
            (any, old, wanted) -> {
              if (!wanted) {
                session.removeGuest();
                guestSays.setText("");
              }
            });
    box.getChildren().addAll(line(learn, forget), learnSays, two, who, guestSays);
  }

  private void letIn() {
    String written = Normalizer.normalize(name.getText().strip(), Normalizer.Form.NFC);
    if (written.isEmpty()) {
      guestSays.setText(words.say("door.name.missing"));
    } else if (!session.state().inside()) {
      guestSays.setText(words.say("taps.second.outside"));
    } else {
      guestSays.setText(words.say("taps.second.here", written));
      session.addGuest(written, guestSays::setText);
    }
  }

  private static String key(KeyHalf half) {
    return switch (half) {
      case ALL -> "taps.half.all";
      case LEFT -> "taps.half.left";
      case RIGHT -> "taps.half.right";
    };
  }

  private static void hideEmpty(Label label) {
    label.visibleProperty().bind(label.textProperty().isNotEmpty());
    label.managedProperty().bind(label.visibleProperty());
  }

  private static FlowPane line(Node... parts) {
    FlowPane line = new FlowPane(12, 6, parts);
    line.setRowValignment(VPos.BASELINE);
    return line;
  }

  private static Label wrapped(Label label) {
    label.setWrapText(true);
    return label;
  }
}
