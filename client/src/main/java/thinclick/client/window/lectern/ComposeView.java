package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Example;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.Meter;
import thinclick.server.words.Speaker;
import thinclick.server.words.StageLines;

/**
 * What is composed, wish by wish; Enter in any line makes it the room's material. The button that
 * does the same, and what is wrong, stay in view.
 */
final class ComposeView {
  private static final List<DealKind> KINDS = List.of(DealKind.values());

  private final LecternModel model;
  private final Words words;
  private final Map<String, TextField> fields = new LinkedHashMap<>();
  private final ChoiceBox<String> deal = new ChoiceBox<>();
  private final CheckBox fromChosen = new CheckBox();
  private final Label wrong = styled(new Label(), "wrong");
  private final GridPane grid = new GridPane();
  private final VBox last;
  private final VBox root;
  private Runnable composed = () -> {};

  ComposeView(LecternModel model, Words words) {
    this.model = model;
    this.words = words;
    fromChosen.setText(words.say("compose.from"));
    fromChosen.setId("compose-from");
    fromChosen.setWrapText(true);
    grid.getStyleClass().add("compose-lines");
    grid.setHgap(12);
    grid.setVgap(0);
    ColumnConstraints names = new ColumnConstraints();
    names.setMinWidth(Region.USE_PREF_SIZE);
    ColumnConstraints written = new ColumnConstraints();
    written.setHgrow(Priority.ALWAYS);
    grid.getColumnConstraints().setAll(names, written);
    field("title", words.say("compose.title"), words.say("compose.title.such"));
    field("meter", words.say("compose.meter"), "4/4");
    field("steps", words.say("compose.steps"), words.say("compose.steps.such"));
    field("cell", words.say("compose.cell"), words.say("compose.cell.such"));
    field("grouping", words.say("compose.grouping"), "3");
    field("period", words.say("compose.period"), "4");
    field("entry", words.say("compose.entry"), words.say("compose.entry.such"));
    field("scale", words.say("compose.scale"), "dorian");
    field("progression", words.say("compose.progression"), "Dm7 | G7 | Cmaj7 | %");
    field("key", words.say("compose.key"), "Eb");
    field("chairs", words.say("compose.chairs"), "piano, bass");
    field("feel", words.say("compose.feel"), words.say("compose.feel.such"));
    field("free", words.say("compose.free"), words.say("compose.free.such"));
    field("plan", words.say("compose.plan"), words.say("compose.plan.such"));
    deal.getItems().add(words.say("compose.deal.asDrill"));
    for (DealKind kind : KINDS) {
      deal.getItems().add(words.say("compose.deal." + kind.name()));
    }
    deal.getSelectionModel().selectFirst();
    deal.setMaxWidth(Double.MAX_VALUE); // as wide as the lines above
    deal.setId("compose-deal");
    deal.setAccessibleText(words.say("compose.deal"));
    Label dealName = new Label(words.say("compose.deal"));
    grid.add(dealName, 0, fields.size());
    grid.add(deal, 1, fields.size());
    wrong.setId("compose-wrong");
    wrong.setWrapText(true);
    wrong.visibleProperty().bind(wrong.textProperty().isNotEmpty());
    wrong.managedProperty().bind(wrong.visibleProperty());
    last =
        styled(
            new VBox(
                8,
                wrong,
                Keyed.button("compose-make", words.say("compose.make"), "Enter", this::make)),
            "compose-last");
    root = new VBox(8, fromChosen, grid, last);
  }

  /** What is kept in view where the lines go on below the window. */
  KeptAtFoot kept() {
    return new KeptAtFoot(grid, last);
  }

  VBox root() {
    return root;
  }

  /** Puts the cursor where one begins. */
  void begin() {
    Node title = fields.get("title");
    if (title != null) {
      title.requestFocus();
    }
  }

  /** What is done once a drill was composed. */
  void onComposed(Runnable does) {
    composed = does;
  }

  private void field(String id, String name, String example) {
    TextField field = new TextField();
    field.setId("compose-" + id);
    Example.in(field, words.say("compose.such", example));
    field.setAccessibleText(name);
    field.setOnAction(done -> make());
    Label label = new Label(name);
    label.setLabelFor(field);
    grid.add(label, 0, fields.size());
    grid.add(field, 1, fields.size());
    fields.put(id, field);
  }

  private String text(String id) {
    TextField field = fields.get(id);
    return field == null ? "" : field.getText();
  }

  private @Nullable DealKind kind() {
    int index = deal.getSelectionModel().getSelectedIndex();
    return index <= 0 ? null : KINDS.get(index - 1);
  }

  /** A composed drill never goes by the title of the stock's: it is another one. */
  private String title(@Nullable Drill from) {
    String written = text("title");
    if (!written.isBlank()) {
      return written;
    }
    return from == null ? words.say("compose.own") : words.say("compose.own.from", from.title());
  }

  /** The click plan as it is read in English. */
  private String plan(@Nullable Drill from) {
    String written = text("plan");
    String meter = text("meter");
    if (written.isBlank()) {
      return written;
    }
    Meter in =
        !meter.isBlank()
            ? Meter.parse(meter.strip())
            : from == null ? Meter.FOUR_FOUR : from.meter();
    int steps = in.compound() ? 3 : 2;
    return new StageLines(
            Speaker.of(words.language()), in, steps, from == null ? null : from.groups())
        .rungs(written);
  }

  private boolean nothingIsWritten() {
    return kind() == null && fields.values().stream().allMatch(field -> field.getText().isBlank());
  }

  private void make() {
    Drill from = fromChosen.isSelected() ? model.chosen() : null;
    if (from == null && nothingIsWritten()) {
      wrong.setText(words.say("compose.nothing"));
      return;
    }
    try {
      model.choose(
          new Composing(
                  from,
                  title(from),
                  text("meter"),
                  text("steps"),
                  text("cell"),
                  text("grouping"),
                  text("period"),
                  text("entry"),
                  text("scale"),
                  text("progression"),
                  text("key"),
                  text("chairs"),
                  text("feel"),
                  text("free"),
                  kind(),
                  plan(from))
              .drill());
      wrong.setText("");
      composed.run();
    } catch (BadInput badInput) {
      wrong.setText(Words.sentence(words.say("lectern.plan.wrong", words.say(badInput))));
    }
  }
}
