package thinclick.client.window.check;

import static thinclick.client.window.check.Parts.givingWay;
import static thinclick.client.window.look.Styled.styled;

import javafx.beans.binding.Bindings;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.Prose;
import thinclick.client.window.words.Words;

/** What is to be done in a check, by what it goes, and the click that sounds now. */
final class TappingPart {
  private final CheckModel model;
  private final Words words;
  private final CheckBox microphone;
  private final VBox root;

  TappingPart(CheckModel model, Words words) {
    this.model = model;
    this.words = words;
    microphone = givingWay(Prose.in(new CheckBox(words.say("check.microphone"))));
    microphone.setId("check-microphone");
    microphone.selectedProperty().bindBidirectional(model.withMicrophoneProperty());
    microphone.visibleProperty().bind(model.microphoneThereProperty());
    Label none = givingWay(styled(Prose.of(words.say("check.microphone.none")), "soft"));
    // Where nothing can sound there is no check to go by anything.
    none.visibleProperty().bind(model.microphoneThereProperty().not().and(model.audibleProperty()));
    Label silence = givingWay(styled(Prose.of(words.say("check.silence")), "strong"));
    silence.setId("check-silence");
    silence.visibleProperty().bind(model.audibleProperty().not());
    root =
        Parts.numbered(
            words, 3, words.say("check.how"), how(), microphone, none, silence, progress());
  }

  VBox root() {
    return root;
  }

  /** Left alone while a check runs. */
  CheckBox microphone() {
    return microphone;
  }

  private Label how() {
    Label how = Prose.of("");
    how.setId("check-how");
    how.textProperty()
        .bind(
            Bindings.when(model.withMicrophoneProperty())
                .then(words.say("check.how.microphone"))
                .otherwise(words.say("check.how.taps")));
    return how;
  }

  private HBox progress() {
    Label count = styled(new Label(), "count");
    count.setId("check-count");
    count
        .textProperty()
        .bind(
            Bindings.when(model.soundedProperty().greaterThan(0))
                .then(model.soundedProperty().asString())
                .otherwise(""));
    Label says = styled(Prose.of(""), "strong");
    says.setId("check-progress");
    says.textProperty().bind(model.progressProperty());
    HBox now = givingWay(styled(new HBox(count, says), "check-now"));
    now.visibleProperty().bind(model.progressProperty().isNotEmpty());
    return now;
  }
}
