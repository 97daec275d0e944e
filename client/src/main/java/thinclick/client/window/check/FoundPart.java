package thinclick.client.window.check;

import static thinclick.client.window.look.Styled.styled;

import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.value.ObservableValue;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.check.Verdict;
import thinclick.client.window.check.CheckModel.Phase;
import thinclick.client.window.look.Prose;
import thinclick.client.window.words.Words;

/** What came of a check: a sentence, what is known of the chair, the ledger of taps. */
final class FoundPart {
  /** The share of the page's height in view that the ledger takes: the rest is what it is about. */
  private static final double LEDGER_SHARE = 0.38;

  private final CheckModel model;
  private final Words words;
  private final TapLedger ledger;
  private final Label scale = styled(Prose.of(""), "soft");
  private final VBox root;

  /**
   * @param chairSays what is known of this chair, a sentence
   */
  FoundPart(CheckModel model, ReadOnlyStringProperty chairSays, Words words) {
    this.model = model;
    this.words = words;
    Label says = styled(Prose.of(""), "strong");
    says.setId("check-says");
    says.textProperty().bind(model.saysProperty());
    says.managedProperty().bind(says.textProperty().isNotEmpty());
    scale.setId("check-scale");
    scale.managedProperty().bind(scale.textProperty().isNotEmpty());
    ledger = new TapLedger(words);
    ledger.setId("check-ledger");
    ledger.managedProperty().bind(scale.managedProperty());
    scale.fontProperty().addListener((any, old, now) -> ledger.dress(now));
    root =
        Parts.numbered(words, 4, words.say("check.result"), says, chair(chairSays), ledger, scale);
  }

  VBox root() {
    return root;
  }

  /** So much of the page is in view. */
  void within(double height) {
    ledger.within(LEDGER_SHARE * height);
  }

  /** What is known of the chair, where no check runs and none has just said it. */
  private Label chair(ReadOnlyStringProperty chairSays) {
    Label chair = Parts.givingWay(Prose.of(""));
    chair.setId("check-chair");
    BooleanBinding rests = model.phaseProperty().isEqualTo(Phase.IDLE);
    chair
        .textProperty()
        .bind(Bindings.when(rests).then(chairSays).otherwise(words.say("check.result.will")));
    ObservableValue<String> asJudged = model.verdictProperty().map(any -> chairSays.get());
    chair
        .visibleProperty()
        .bind(
            Bindings.createBooleanBinding(
                () ->
                    !rests.get()
                        || !chairSays.get().equals(asJudged.getValue())
                        || !isSaid(model.verdictProperty().get(), chairSays.get()),
                rests,
                asJudged,
                chairSays));
    return chair;
  }

  /** What a check came to has just been said, with its figures or its reason; not of others. */
  private boolean isSaid(@Nullable Verdict verdict, String ofChair) {
    boolean unmeasured =
        ofChair.equals(words.say("chair.unmeasured"))
            || ofChair.equals(words.say("chair.unmeasured.room"));
    return (verdict instanceof Verdict.Known) != unmeasured;
  }

  void show(@Nullable Verdict verdict) {
    ledger.show(verdict);
    boolean any = verdict != null && !verdict.offsets().isEmpty();
    boolean known = verdict instanceof Verdict.Known;
    scale.setText(any ? words.say(known ? "check.scale" : "check.scale.refused") : "");
    ledger.setAccessibleText(any ? model.saysProperty().get() : "");
  }
}
