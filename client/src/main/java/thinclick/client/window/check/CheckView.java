package thinclick.client.window.check;

import java.util.Locale;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.check.Verdict;
import thinclick.client.window.check.CheckModel.Phase;
import thinclick.client.window.look.InView;
import thinclick.client.window.look.TwoColumns;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Hearing.Mode;

/**
 * The sound check as four numbered sentences, what it is about beside what it finds, and the ledger
 * of taps.
 */
public final class CheckView {
  private final CheckModel model;
  private final CheckSound sound;
  private final Words words;
  private final ChoiceBox<String> output = new ChoiceBox<>();
  private final Button begin = new Button();
  private final TapLedger ledger = new TapLedger();
  private final Label scale = styled(wrapped(new Label()), "soft");
  private final VBox inputs = new VBox(8);
  private final VBox wholeRoom = new VBox(8);
  private final ScrollPane root;
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
    this.root = new ScrollPane(createView(chairSays, hearingSays, hearing));
    root.setFitToWidth(true);
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

  /** Puts the cursor where one begins, in view. */
  public void begin() {
    InView.bring(begin);
    begin.requestFocus();
  }

  /** While it listens nothing has the focus: a key that is no letter breaks nothing off. */
  private void follow(Phase old, Phase now) {
    boolean idle = now == Phase.IDLE;
    if (old == Phase.IDLE && !idle && begin.isFocused()) {
      root.requestFocus();
    }
    begin.setDisable(!idle);
    if (idle && root.isFocused()) {
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
    wholeRoom.getChildren().setAll(wrapped(new Label(says)), deal);
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
    Label what = wrapped(new Label(words.say("check.what")));

    output.setId("check-output");
    output.setAccessibleText(words.say("check.output"));
    output.setOnAction(
        done -> {
          if (!filling) {
            int at = output.getSelectionModel().getSelectedIndex();
            sound.outputProperty().set(at <= 0 ? "" : output.getValue());
          }
        });
    RadioButton here = new RadioButton();
    here.setId("check-sounds");
    here.textProperty()
        .bind(
            Bindings.when(sound.soundingProperty().isEmpty())
                .then(words.say("check.sounds.here.none"))
                .otherwise(words.say("check.sounds.here")));
    RadioButton silent = new RadioButton(words.say("check.sounds.elsewhere"));
    silent.setId("check-silent");
    ToggleGroup which = new ToggleGroup();
    here.setToggleGroup(which);
    silent.setToggleGroup(which);
    here.setWrapText(true);
    silent.setWrapText(true);
    here.setSelected(!sound.mutedProperty().get());
    silent.selectedProperty().bindBidirectional(sound.mutedProperty());
    sound.mutedProperty().addListener((any, old, muted) -> here.setSelected(!muted));
    Label soundSays = wrapped(new Label());
    soundSays.textProperty().bind(sound.saysProperty());
    VBox first =
        numbered(
            1,
            words.say("check.sound"),
            line(labelled(words.say("check.output"), output), output),
            here,
            silent,
            soundSays,
            styled(wrapped(new Label(words.say("care.sound"))), "soft"));

    VBox second = numbered(2, words.say("check.input"), inputs);

    CheckBox microphone = new CheckBox(words.say("check.microphone"));
    microphone.setId("check-microphone");
    microphone.setWrapText(true);
    microphone.selectedProperty().bindBidirectional(model.withMicrophoneProperty());
    microphone.visibleProperty().bind(model.microphoneThereProperty());
    microphone.managedProperty().bind(microphone.visibleProperty());
    Label none = styled(wrapped(new Label(words.say("check.microphone.none"))), "soft");
    none.visibleProperty().bind(model.microphoneThereProperty().not());
    none.managedProperty().bind(none.visibleProperty());
    begin.setId("check-begin");
    begin.setText(words.say("check.begin"));
    begin.setOnAction(done -> model.begin(System.nanoTime()));
    Button back = styled(new Button(words.say("check.back")), "quiet");
    back.setId("check-back");
    back.setOnAction(done -> onBack.run());
    FlowPane commands = new FlowPane(20, 10, begin, back);
    commands.setRowValignment(VPos.CENTER);
    VBox third = numbered(3, words.say("check.how"), microphone, none, commands, wholeRoom);
    wholeRoom.managedProperty().bind(wholeRoom.visibleProperty());
    wholeRoom.setVisible(false);

    Label says = styled(wrapped(new Label()), "strong");
    says.setId("check-says");
    says.textProperty().bind(model.saysProperty());
    says.managedProperty().bind(says.textProperty().isNotEmpty());
    scale.managedProperty().bind(scale.textProperty().isNotEmpty());
    ledger.managedProperty().bind(scale.managedProperty());
    Label chair = wrapped(new Label());
    chair.setId("check-chair");
    chair.textProperty().bind(chairSays);
    VBox fourth = numbered(4, words.say("check.result"), says, ledger, scale, chair);

    VBox before = styled(new VBox(11, first, second), "column");
    VBox check = styled(new VBox(11, third, fourth, hearing(hearingSays, hearing)), "column");
    TwoColumns columns = new TwoColumns(before, check, 0.5, 44);
    VBox sheet = styled(new VBox(title, what, columns), "sheet");
    sheet.getStyleClass().add("check-sheet");
    VBox page = styled(new VBox(sheet), "page");
    page.setAlignment(Pos.TOP_CENTER);
    return page;
  }

  private VBox hearing(ReadOnlyStringProperty hearingSays, ReadOnlyObjectProperty<Mode> hearing) {
    Label head = styled(wrapped(new Label(words.say("hearing.title"))), "heading");
    VBox box = styled(new VBox(8, head), "ruled");
    ToggleGroup ways = new ToggleGroup();
    for (Mode mode : Mode.values()) {
      RadioButton way = new RadioButton(words.say(key(mode)));
      way.setId("hearing-" + mode.name().toLowerCase(Locale.ROOT).replace('_', '-'));
      way.setToggleGroup(ways);
      way.setWrapText(true);
      way.setSelected(mode == hearing.get());
      hearing.addListener((any, old, now) -> way.setSelected(mode == now));
      way.setOnAction(done -> sound.hearingProperty().set(mode));
      box.getChildren().add(way);
    }
    Label says = wrapped(new Label());
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
    Label head =
        styled(wrapped(new Label(words.say("check.numbered", number, sentence))), "heading");
    VBox box = styled(new VBox(8, head), "ruled");
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
    scale.setText(any ? words.say("check.scale") : "");
    ledger.setAccessibleText(any ? model.saysProperty().get() : "");
    InView.bring(scale);
  }

  private static Label labelled(String said, Node field) {
    Label label = new Label(said);
    label.setLabelFor(field);
    return label;
  }

  private static FlowPane line(Node... parts) {
    FlowPane line = new FlowPane(10, 4, parts);
    line.setRowValignment(VPos.BASELINE);
    return line;
  }

  private static Label wrapped(Label label) {
    label.setWrapText(true);
    return label;
  }

  private static <N extends Node> N styled(N node, String style) {
    node.getStyleClass().add(style);
    return node;
  }
}
