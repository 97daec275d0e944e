package thinclick.client.window.check;

import java.util.Locale;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.Choices;
import thinclick.client.window.look.Prose;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Hearing.Mode;

/** How the others are heard here: chosen, and said. */
final class HearingPart {
  private final VBox root;

  /**
   * @param says what is heard of the others, a sentence
   * @param now how they are heard now, chosen or not
   */
  HearingPart(
      CheckSound sound,
      ReadOnlyStringProperty says,
      ReadOnlyObjectProperty<Mode> now,
      Words words) {
    root = Parts.headed(words.say("hearing.title"));
    ToggleGroup ways = new ToggleGroup();
    for (Mode mode : Mode.values()) {
      RadioButton way = Prose.in(new RadioButton(Words.begun(words.say(key(mode)))));
      way.setId("hearing-" + mode.name().toLowerCase(Locale.ROOT).replace('_', '-'));
      way.setToggleGroup(ways);
      way.setSelected(mode == now.get());
      now.addListener((any, old, heard) -> way.setSelected(mode == heard));
      Choices.onChosen(way, () -> mode == now.get(), () -> sound.hearingProperty().set(mode));
      root.getChildren().add(way);
    }
    Label said = Prose.of("");
    said.setId("hearing-says");
    said.textProperty().bind(says);
    root.getChildren().add(said);
  }

  VBox root() {
    return root;
  }

  private static String key(Mode mode) {
    return switch (mode) {
      case NOT_AT_ALL -> "hearing.none";
      case AS_IT_ARRIVES -> "hearing.arrives";
      case IN_TIME -> "hearing.time";
    };
  }
}
