package thinclick.client.window.check;

import javafx.beans.binding.Bindings;
import javafx.collections.ListChangeListener;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.Form;
import thinclick.client.window.look.Prose;
import thinclick.client.window.words.Words;

/** Which output sounds the click, or that another computer does. */
final class SoundingPart {
  private final CheckSound sound;
  private final Words words;
  private final ChoiceBox<String> output = new ChoiceBox<>();
  private final VBox root;
  private boolean filling;

  SoundingPart(CheckSound sound, Words words) {
    this.sound = sound;
    this.words = words;
    output.setId("check-output");
    output.setAccessibleText(words.say("check.output"));
    output.setOnAction(done -> choose());
    Form form = new Form();
    form.line(words.say("check.output"), output);
    RadioButton here = Prose.in(new RadioButton());
    RadioButton silent = Prose.in(new RadioButton(words.say("check.sounds.elsewhere")));
    where(here, silent);
    root = Parts.numbered(words, 1, words.say("check.sound"), form, here, silent);
    sound.outputs().addListener((ListChangeListener<String>) any -> fill());
    sound.outputProperty().addListener(any -> fill());
    fill();
  }

  VBox root() {
    return root;
  }

  /** Where one goes on while nothing can sound. */
  ChoiceBox<String> output() {
    return output;
  }

  private void where(RadioButton here, RadioButton silent) {
    here.setId("check-sounds");
    here.textProperty()
        .bind(
            Bindings.when(sound.audibleProperty())
                .then(words.say("check.sounds.here"))
                .otherwise(words.say("check.sounds.here.none")));
    silent.setId("check-silent");
    ToggleGroup which = new ToggleGroup();
    here.setToggleGroup(which);
    silent.setToggleGroup(which);
    here.setSelected(!sound.mutedProperty().get());
    silent.selectedProperty().bindBidirectional(sound.mutedProperty());
    sound.mutedProperty().addListener((any, old, muted) -> here.setSelected(!muted));
  }

  /** What this part fills in itself is no choice of anybody's. */
  private void choose() {
    if (!filling) {
      int at = output.getSelectionModel().getSelectedIndex();
      sound.outputProperty().set(at <= 0 ? "" : output.getValue());
    }
  }

  private void fill() {
    filling = true;
    String wanted = sound.outputProperty().get();
    output.getItems().setAll(Words.begun(words.say("check.output.system")));
    output.getItems().addAll(sound.outputs());
    if (!wanted.isEmpty() && !sound.outputs().contains(wanted)) {
      output.getItems().add(wanted);
    }
    output.getSelectionModel().select(wanted.isEmpty() ? 0 : output.getItems().indexOf(wanted));
    filling = false;
  }
}
