package thinclick.client.window.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.value.ObservableValue;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.check.Verdict;
import thinclick.client.window.check.CheckModel.Phase;
import thinclick.client.window.look.Form;
import thinclick.client.window.look.InView;
import thinclick.client.window.look.PagePane;
import thinclick.client.window.look.Prose;
import thinclick.client.window.look.TwoColumns;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Hearing.Mode;

/**
 * The sound check as four numbered sentences, what it is about beside what it finds, and the ledger
 * of taps.
 */
public final class CheckView {
  /** The share of the page's height in view that the ledger takes: the rest is what it is about. */
  private static final double LEDGER_SHARE = 0.4;

  private final CheckModel model;
  private final CheckSound sound;
  private final Words words;
  private final ChoiceBox<String> output = new ChoiceBox<>();
  private final Button begin = new Button();
  private final Button stop = new Button();
  private final CheckBox microphone;
  private final TapLedger ledger;
  private final Label scale = styled(Prose.of(""), "soft");
  private final VBox inputs = styled(new VBox(), "block");
  private final VBox wholeRoom = styled(new VBox(), "block");

  /** What came of a check, and above it what begins the next: they come into view together. */
  private final VBox outcome = styled(new VBox(), "block");

  /** What begins it, and above it the care to take: nobody sees the one without the other. */
  private final VBox beginning = styled(new VBox(), "block");

  private final PagePane root;

  /** What is left alone while a check runs. */
  private final List<Node> resting = new ArrayList<>();

  private Runnable onBack = () -> {};
  private boolean filling;

  /**
   * @param chairSays what is known of this chair, a sentence
   * @param hearingSays what is heard of the others, a sentence
   * @param hearing how they are heard now, chosen or not
   */
  public CheckView(
      CheckModel model,
      CheckSound sound,
      ReadOnlyStringProperty chairSays,
      ReadOnlyStringProperty hearingSays,
      ReadOnlyObjectProperty<Mode> hearing,
      Words words) {
    this.model = model;
    this.sound = sound;
    this.words = words;
    this.ledger = new TapLedger(words);
    this.microphone = Prose.in(new CheckBox(words.say("check.microphone")));
    this.root = new PagePane(createView(chairSays, hearingSays, hearing));
    root.viewportBoundsProperty()
        .addListener((any, old, now) -> ledger.within(LEDGER_SHARE * now.getHeight()));
    root.setFocusTraversable(false);
    sound.outputs().addListener((ListChangeListener<String>) any -> fillOutputs());
    sound.outputProperty().addListener(any -> fillOutputs());
    fillOutputs();
    model.verdictProperty().addListener((any, old, now) -> show(now));
    model.phaseProperty().addListener((any, old, now) -> follow(old, now));
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** Puts the cursor where one begins, in view; while a check runs, on what stops it. */
  public void begin() {
    Node first = stop.isVisible() ? stop : begin.isDisabled() ? output : begin;
    InView.keep(first == begin ? beginning : first);
    first.requestFocus();
  }

  /**
   * While it listens nothing has the focus, so that a key that is no letter breaks nothing off, and
   * Tab leads to what stops it and nowhere else.
   */
  private void follow(Phase old, Phase now) {
    boolean idle = now == Phase.IDLE;
    boolean here = begin.isFocused() || stop.isFocused() || root.isFocused();
    begin.setVisible(idle);
    stop.setVisible(now == Phase.CLICKING || now == Phase.SILENT);
    resting.forEach(node -> node.setDisable(!idle));
    if (old == Phase.IDLE && here) {
      root.requestFocus();
      InView.keep(stop);
    } else if (idle && here) {
      begin.requestFocus();
    }
  }

  /** What leads back where one came from. */
  public void onBack(Runnable does) {
    onBack = does;
  }

  /** What whoever leads can do for the whole room. */
  public void forWhoLeads(String says, String button, Runnable does) {
    Button deal = new Button(button);
    deal.setId("check-room");
    deal.setOnAction(done -> does.run());
    wholeRoom.getChildren().setAll(Prose.of(says), deal);
  }

  /** Whether that can be done now. */
  public void leads(boolean now) {
    wholeRoom.setVisible(now);
  }

  /** Where further controls about the input have their place. */
  public VBox inputs() {
    return inputs;
  }

  private Node createView(
      ReadOnlyStringProperty chairSays,
      ReadOnlyStringProperty hearingSays,
      ReadOnlyObjectProperty<Mode> hearing) {
    Label title = styled(new Label(words.say("view.check")), "title");
    Label what = Prose.of(words.say("check.what"));
    VBox first = sounding();
    VBox second = numbered(2, words.say("check.input"), inputs);
    VBox others = hearing(hearingSays, hearing);
    resting.addAll(List.of(first, second, others));
    VBox before = styled(styled(new VBox(first, second), "column"), "block");
    outcome.getChildren().addAll(commands(), found(chairSays));
    VBox check = styled(styled(new VBox(tapping(), outcome, others), "column"), "block");
    TwoColumns columns = new TwoColumns(before, check, 0.5, 44);
    VBox care = styled(new VBox(styled(Prose.of(words.say("care.sound")), "soft")), "ruled");
    VBox sheet = styled(new VBox(title, what, columns, care), "sheet");
    sheet.getStyleClass().add("check-sheet");
    VBox page = styled(new VBox(sheet), "page");
    page.setAlignment(Pos.TOP_CENTER);
    return page;
  }

  /** Which output sounds, or that none does. */
  private VBox sounding() {
    output.setId("check-output");
    output.setAccessibleText(words.say("check.output"));
    output.setOnAction(
        done -> {
          if (!filling) {
            int at = output.getSelectionModel().getSelectedIndex();
            sound.outputProperty().set(at <= 0 ? "" : output.getValue());
          }
        });
    Form form = new Form();
    form.line(words.say("check.output"), output);
    RadioButton here = Prose.in(new RadioButton());
    here.setId("check-sounds");
    here.textProperty()
        .bind(
            Bindings.when(model.audibleProperty())
                .then(words.say("check.sounds.here"))
                .otherwise(words.say("check.sounds.here.none")));
    RadioButton silent = Prose.in(new RadioButton(words.say("check.sounds.elsewhere")));
    silent.setId("check-silent");
    ToggleGroup which = new ToggleGroup();
    here.setToggleGroup(which);
    silent.setToggleGroup(which);
    here.setSelected(!sound.mutedProperty().get());
    silent.selectedProperty().bindBidirectional(sound.mutedProperty());
    sound.mutedProperty().addListener((any, old, muted) -> here.setSelected(!muted));
    return numbered(1, words.say("check.sound"), form, here, silent);
  }

  /** What is to be done, and the click that sounds now. */
  private VBox tapping() {
    Label how = Prose.of("");
    how.setId("check-how");
    how.textProperty()
        .bind(
            Bindings.when(model.withMicrophoneProperty())
                .then(words.say("check.how.microphone"))
                .otherwise(words.say("check.how.taps")));
    microphone.setId("check-microphone");
    microphone.selectedProperty().bindBidirectional(model.withMicrophoneProperty());
    microphone.visibleProperty().bind(model.microphoneThereProperty());
    microphone.managedProperty().bind(microphone.visibleProperty());
    Label none = styled(Prose.of(words.say("check.microphone.none")), "soft");
    // Where nothing can sound there is no check to go by anything.
    none.visibleProperty().bind(model.microphoneThereProperty().not().and(model.audibleProperty()));
    none.managedProperty().bind(none.visibleProperty());
    Label silence = styled(Prose.of(words.say("check.silence")), "strong");
    silence.setId("check-silence");
    silence.visibleProperty().bind(model.audibleProperty().not());
    silence.managedProperty().bind(silence.visibleProperty());
    Label count = styled(new Label(), "count");
    count.setId("check-count");
    count
        .textProperty()
        .bind(
            Bindings.when(model.soundedProperty().greaterThan(0))
                .then(model.soundedProperty().asString())
                .otherwise(""));
    Label progress = styled(Prose.of(""), "strong");
    progress.setId("check-progress");
    progress.textProperty().bind(model.progressProperty());
    HBox now = styled(new HBox(count, progress), "check-now");
    now.visibleProperty().bind(model.progressProperty().isNotEmpty());
    now.managedProperty().bind(now.visibleProperty());
    resting.add(microphone);
    return numbered(3, words.say("check.how"), how, microphone, none, silence, now);
  }

  /** How it is begun and stopped, by whoever leads for the whole room as well. */
  private VBox commands() {
    begin.setId("check-begin");
    begin.setText(words.say("check.begin"));
    begin.setOnAction(done -> model.begin(System.nanoTime()));
    begin.disableProperty().bind(model.audibleProperty().not());
    begin.managedProperty().bind(begin.visibleProperty());
    stop.setId("check-stop");
    stop.setText(words.say("check.stop"));
    stop.setOnAction(done -> model.breakOff());
    stop.setVisible(false);
    stop.managedProperty().bind(stop.visibleProperty());
    Button back = styled(new Button(words.say("check.back")), "quiet");
    back.setId("check-back");
    back.setOnAction(done -> onBack.run());
    FlowPane commands = styled(new FlowPane(begin, stop, back), "commands");
    resting.addAll(List.of(back, wholeRoom));
    wholeRoom.managedProperty().bind(wholeRoom.visibleProperty());
    wholeRoom.setVisible(false);
    Label care = Prose.of(words.say("check.care"));
    care.setId("check-care");
    // Whoever has heard the click has read it, and what came of the check needs the room.
    care.visibleProperty().bind(model.verdictProperty().isNull());
    care.managedProperty().bind(care.visibleProperty());
    beginning.getChildren().addAll(care, commands);
    return styled(new VBox(beginning, wholeRoom), "block");
  }

  private VBox found(ReadOnlyStringProperty chairSays) {
    Label says = styled(Prose.of(""), "strong");
    says.setId("check-says");
    says.textProperty().bind(model.saysProperty());
    says.managedProperty().bind(says.textProperty().isNotEmpty());
    scale.managedProperty().bind(scale.textProperty().isNotEmpty());
    scale.setId("check-scale");
    ledger.setId("check-ledger");
    ledger.managedProperty().bind(scale.managedProperty());
    scale.fontProperty().addListener((any, old, now) -> ledger.dress(now));
    Label chair = Prose.of("");
    chair.setId("check-chair");
    chair.textProperty().bind(chairSays);
    ObservableValue<String> asJudged = model.verdictProperty().map(any -> chairSays.get());
    chair
        .visibleProperty()
        .bind(
            Bindings.createBooleanBinding(
                () ->
                    !chairSays.get().equals(asJudged.getValue())
                        || !isSaid(model.verdictProperty().get(), chairSays.get()),
                asJudged,
                chairSays));
    chair.managedProperty().bind(chair.visibleProperty());
    return numbered(4, words.say("check.result"), says, chair, ledger, scale);
  }

  /** What a check came to has just been said, with its figures or its reason; not of others. */
  private boolean isSaid(@Nullable Verdict verdict, String ofChair) {
    boolean unmeasured =
        ofChair.equals(words.say("chair.unmeasured"))
            || ofChair.equals(words.say("chair.unmeasured.room"));
    return (verdict instanceof Verdict.Known) != unmeasured;
  }

  private VBox hearing(ReadOnlyStringProperty hearingSays, ReadOnlyObjectProperty<Mode> hearing) {
    Label head = styled(Prose.of(words.say("hearing.title")), "heading");
    VBox box = styled(styled(new VBox(head), "ruled"), "block");
    ToggleGroup ways = new ToggleGroup();
    for (Mode mode : Mode.values()) {
      RadioButton way = Prose.in(new RadioButton(words.say(key(mode))));
      way.setId("hearing-" + mode.name().toLowerCase(Locale.ROOT).replace('_', '-'));
      way.setToggleGroup(ways);
      way.setSelected(mode == hearing.get());
      hearing.addListener((any, old, now) -> way.setSelected(mode == now));
      way.setOnAction(done -> sound.hearingProperty().set(mode));
      box.getChildren().add(way);
    }
    Label says = Prose.of("");
    says.setId("hearing-says");
    says.textProperty().bind(hearingSays);
    box.getChildren().add(says);
    return box;
  }

  private static String key(Mode mode) {
    return switch (mode) {
      case NOT_AT_ALL -> "hearing.none";
      case AS_IT_ARRIVES -> "hearing.arrives";
      case IN_TIME -> "hearing.time";
    };
  }

  private VBox numbered(int number, String sentence, Node... below) {
    Label head = styled(Prose.of(words.say("check.numbered", number, sentence)), "heading");
    VBox box = styled(styled(new VBox(head), "ruled"), "block");
    box.getChildren().addAll(below);
    return box;
  }

  private void fillOutputs() {
    filling = true;
    String wanted = sound.outputProperty().get();
    output.getItems().setAll(words.say("check.output.system"));
    output.getItems().addAll(sound.outputs());
    if (!wanted.isEmpty() && !sound.outputs().contains(wanted)) {
      output.getItems().add(wanted);
    }
    output.getSelectionModel().select(wanted.isEmpty() ? 0 : output.getItems().indexOf(wanted));
    filling = false;
  }

  private void show(@Nullable Verdict verdict) {
    ledger.show(verdict);
    boolean any = verdict != null && !verdict.offsets().isEmpty();
    boolean known = verdict instanceof Verdict.Known;
    scale.setText(any ? words.say(known ? "check.scale" : "check.scale.refused") : "");
    ledger.setAccessibleText(any ? model.saysProperty().get() : "");
    if (verdict != null) {
      InView.keep(outcome);
    }
  }

  private static <N extends Node> N styled(N node, String style) {
    node.getStyleClass().add(style);
    return node;
  }
}
