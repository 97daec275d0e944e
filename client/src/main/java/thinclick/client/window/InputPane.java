package thinclick.client.window;

import static thinclick.client.window.look.Styled.styled;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.beans.binding.Bindings;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import thinclick.client.input.KeyHalf;
import thinclick.client.window.look.Choices;
import thinclick.client.window.look.Form;
import thinclick.client.window.look.Prose;
import thinclick.client.window.session.FurtherSeat;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.FromAfar;
import thinclick.client.window.words.Words;

/** What is tapped on and by whom: letters, a learned pad, further players at this computer. */
final class InputPane {
  /** Pads may have long names, which go on in another line. */
  private static final double WIDEST_EMS = 20;

  private final Session session;
  private final Chairs chairs;
  private final Taps taps;
  private final Words words;
  private final VBox halves = styled(new VBox(), "block");
  private final VBox sitting = styled(new VBox(), "block");
  private final Form who = new Form();
  private final TextField name = new TextField();
  private final Label outside;
  private final Label says = Prose.of("");

  InputPane(Session session, Chairs chairs, Taps taps, Words words) {
    this.session = session;
    this.chairs = chairs;
    this.taps = taps;
    this.words = words;
    name.setId("further-name");
    name.setAccessibleText(words.say("taps.further.name"));
    name.getStyleClass().add("name-field");
    Button in = new Button(words.say("taps.further.in"));
    in.setId("further-in");
    in.setOnAction(done -> letIn());
    name.setOnAction(done -> letIn());
    who.line(words.say("taps.further.name"), line(name, in));
    hideUnless(who);
    outside = styled(Prose.of(words.say("taps.further.outside")), "soft");
    outside.setId("further-outside");
    hideUnless(outside);
  }

  /** Puts the controls into their place. */
  void into(VBox box) {
    ToggleGroup letters = new ToggleGroup();
    for (KeyHalf half : KeyHalf.values()) {
      RadioButton one = new RadioButton(Words.begun(words.say(key(half))));
      one.setId("keys-" + half.name().toLowerCase(Locale.ROOT));
      one.setToggleGroup(letters);
      one.setSelected(half == taps.settingsProperty().get().half());
      Choices.onChosen(
          one, () -> half == taps.settingsProperty().get().half(), () -> taps.half(half));
      halves.getChildren().add(one);
    }
    Button learn = new Button(words.say("taps.learn"));
    learn.setId("pad-learn");
    learn.setOnAction(done -> taps.learn());
    Button forget = new Button(words.say("taps.learn.forget"));
    forget.setId("pad-forget");
    forget.getStyleClass().add("quiet");
    forget.setOnAction(done -> taps.forget());
    forget.visibleProperty().bind(taps.settingsProperty().map(kept -> !kept.learned().isEmpty()));
    hideUnless(forget);
    Label learnSays = Prose.of("");
    learnSays.setId("pad-says");
    learnSays.textProperty().bind(taps.learnSaysProperty());
    hideEmpty(learnSays);
    says.setId("further-says");
    hideEmpty(says);
    hideUnless(halves);
    hideUnless(sitting);
    box.getChildren()
        .addAll(
            halves,
            line(learn, forget),
            howToLearn(),
            learnSays,
            Prose.of(words.say("taps.further")),
            sitting,
            who,
            outside,
            says);
    chairs.all().addListener((ListChangeListener<Chair>) any -> list());
    taps.settingsProperty().addListener(any -> list());
    session
        .stateProperty()
        .addListener(
            (any, old, now) -> {
              if (old.inside() != now.inside()) {
                says.setText("");
                list();
              }
            });
    list();
  }

  /** What is to be struck, as long as nothing is said of what was. */
  private Label howToLearn() {
    Label how = styled(Prose.of(""), "soft");
    how.setId("pad-how");
    how.textProperty()
        .bind(
            Bindings.when(Bindings.size(chairs.all()).greaterThan(1))
                .then(words.say("taps.learn.how.several"))
                .otherwise(words.say("taps.learn.how")));
    how.visibleProperty().bind(taps.learnSaysProperty().isEmpty());
    hideUnless(how);
    return how;
  }

  private static void hideUnless(Node node) {
    node.managedProperty().bind(node.visibleProperty());
  }

  /** A line for each chair, where there is more than one. */
  private void list() {
    sitting.getChildren().clear();
    int count = chairs.all().size();
    halves.setVisible(count == 1);
    boolean full = count > Session.MOST_FURTHER;
    boolean inside = session.state().inside();
    who.setVisible(inside && !full);
    outside.setVisible(!inside && !full);
    List<Label> played = new ArrayList<>();
    List<Button> pads = new ArrayList<>();
    for (int i = 0; count > 1 && i < count; i++) {
      sitting.getChildren().add(line(chairs.get(i), i, played, pads));
    }
    inColumn(played);
    inColumn(pads);
    if (full) {
      sitting.getChildren().add(styled(Prose.of(words.say("taps.further.full")), "soft"));
    }
    sitting.setVisible(!sitting.getChildren().isEmpty());
  }

  /** All as wide as the widest, so that what follows begins at one place. */
  private static void inColumn(List<? extends Labeled> column) {
    for (Labeled one : column) {
      one.prefWidthProperty()
          .bind(
              Bindings.createDoubleBinding(
                  () ->
                      Math.min(
                          column.stream().mapToDouble(InputPane::written).max().orElse(0),
                          WIDEST_EMS * one.getFont().getSize()),
                  one.fontProperty()));
    }
  }

  private static double written(Labeled one) {
    Text text = new Text(one.getText());
    text.setFont(one.getFont());
    return Math.ceil(text.getLayoutBounds().getWidth()) + 1;
  }

  private FlowPane line(Chair chair, int at, List<Label> played, List<Button> pads) {
    String letters = words.say("taps.chair", chair.name(), taps.letters(at));
    String named = String.join(", ", taps.pads(chair));
    Label keys =
        Prose.of(named.isEmpty() ? letters : letters + " " + words.say("taps.chair.pads", named));
    Button pad = new Button(words.say("taps.show", chair.name()));
    pad.setId("pad-of-" + at);
    pad.getStyleClass().add("quiet");
    pad.setOnAction(done -> taps.show(chair));
    Label delay = Prose.of("");
    delay.getStyleClass().add("soft");
    delay.textProperty().bind(chair.delay().saysProperty());
    // What is true of all and said once beside the check is not said beside each.
    delay.visibleProperty().bind(delay.textProperty().isNotEqualTo(words.say("chair.unmeasured")));
    hideUnless(delay);
    played.add(keys);
    pad.setAlignment(Pos.BASELINE_LEFT);
    pads.add(pad);
    FlowPane line = styled(new FlowPane(keys, pad), "options");
    FurtherSeat further = chair.further();
    if (further != null) {
      Button out = new Button(words.say("taps.further.out", chair.name()));
      out.setId("further-out-" + at);
      out.getStyleClass().add("quiet");
      out.setOnAction(done -> session.removeSeat(further));
      line.getChildren().add(out);
    }
    line.getChildren().add(delay);
    return line;
  }

  private void letIn() {
    String written = Normalizer.normalize(name.getText().strip(), Normalizer.Form.NFC);
    if (written.isEmpty()) {
      says.setText(words.say("door.name.missing"));
    } else {
      says.setText(words.say("taps.further.here", written));
      session.addSeat(written, why -> says.setText(Words.sentence(new FromAfar(words).say(why))));
      name.clear();
    }
  }

  /** What letters of one chair are called. */
  static String key(KeyHalf half) {
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
    return styled(new FlowPane(parts), "with-unit");
  }
}
