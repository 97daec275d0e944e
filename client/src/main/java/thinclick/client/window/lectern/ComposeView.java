package thinclick.client.window.lectern;

import static thinclick.client.window.lectern.Keyed.styled;

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
import thinclick.client.window.words.Words;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.Meter;
import thinclick.server.words.Speaker;
import thinclick.server.words.StageLines;

/** What is composed, wish by wish; Enter in any line makes it the room's material. */
final class ComposeView {
  private static final List<DealKind> KINDS = List.of(DealKind.values());

  private final LecternModel model;
  private final Words words;
  private final Map<String, TextField> fields = new LinkedHashMap<>();
  private final ChoiceBox<String> deal = new ChoiceBox<>();
  private final CheckBox fromChosen = new CheckBox();
  private final Label wrong = styled(new Label(), "wrong");
  private final VBox root = new VBox(8);
  private Runnable composed = () -> {};

  ComposeView(LecternModel model, Words words) {
    this.model = model;
    this.words = words;
    fromChosen.setText(words.say("compose.from"));
    fromChosen.setId("compose-from");
    fromChosen.setWrapText(true);
    GridPane grid = new GridPane();
    grid.setHgap(12);
    grid.setVgap(2);
    ColumnConstraints names = new ColumnConstraints();
    names.setMinWidth(Region.USE_PREF_SIZE);
    ColumnConstraints written = new ColumnConstraints();
    written.setHgrow(Priority.ALWAYS);
    grid.getColumnConstraints().setAll(names, written);
    field(grid, "title", words.say("compose.title"), "");
    field(grid, "meter", words.say("compose.meter"), "4/4");
    field(grid, "steps", words.say("compose.steps"), "2");
    field(grid, "cell", words.say("compose.cell"), "0 3 6");
    field(grid, "grouping", words.say("compose.grouping"), "3");
    field(grid, "period", words.say("compose.period"), "4");
    field(grid, "entry", words.say("compose.entry"), "1");
    field(grid, "scale", words.say("compose.scale"), "dorian");
    field(grid, "progression", words.say("compose.progression"), "Dm7 | G7 | Cmaj7 | %");
    field(grid, "key", words.say("compose.key"), "Eb");
    field(grid, "chairs", words.say("compose.chairs"), "piano, bass");
    field(grid, "feel", words.say("compose.feel"), words.say("compose.feel.such"));
    field(grid, "free", words.say("compose.free"), words.say("compose.free.such"));
    field(grid, "plan", words.say("compose.plan"), words.say("compose.plan.such"));
    deal.getItems().add(words.say("compose.deal.asDrill"));
    for (DealKind kind : KINDS) {
      deal.getItems().add(words.say("compose.deal." + kind.name()));
    }
    deal.getSelectionModel().selectFirst();
    deal.setId("compose-deal");
    deal.setAccessibleText(words.say("compose.deal"));
    Label dealName = new Label(words.say("compose.deal"));
    grid.add(dealName, 0, fields.size());
    grid.add(deal, 1, fields.size());
    wrong.setId("compose-wrong");
    wrong.setWrapText(true);
    wrong.visibleProperty().bind(wrong.textProperty().isNotEmpty());
    wrong.managedProperty().bind(wrong.visibleProperty());
    root.getChildren()
        .setAll(
            fromChosen,
            grid,
            wrong,
            Keyed.button("compose-make", words.say("compose.make"), "Enter", this::make));
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

  private void field(GridPane grid, String id, String name, String example) {
    TextField field = new TextField();
    field.setId("compose-" + id);
    field.setPromptText(example);
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

  private void make() {
    try {
      Drill from = fromChosen.isSelected() ? model.chosen() : null;
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
