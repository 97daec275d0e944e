package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import java.util.ArrayList;
import java.util.List;
import javafx.css.PseudoClass;
import javafx.geometry.VPos;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Example;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.Prose;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;

/** What is chosen, its tempo, and the click plan: one ruled line, one sentence a stage. */
final class PlanView {
  private final LecternDesk desk;
  private final LecternModel lectern;
  private final PlanModel model;
  private final Words words;
  private static final PseudoClass NOW = PseudoClass.getPseudoClass("now");

  private final Label title = styled(new Label(), "heading");
  private final TextField tempo = new TextField();
  private final Label wrong = styled(new Label(), "wrong");
  private final FlowPane tempoLine;
  private final Label click = styled(new Label(), "soft");
  private final PlanLine line = new PlanLine();
  private final VBox sentences = new VBox(2);
  private final List<TextField> fields = new ArrayList<>();
  private final VBox root = styled(new VBox(8), "plan");
  private int sounding = -1;

  PlanView(LecternDesk desk, Words words) {
    this.desk = desk;
    lectern = desk.lectern();
    model = desk.plan();
    this.words = words;
    title.setId("chosen");
    Prose.in(title);
    tempo.setId("tempo");
    tempo.setPrefColumnCount(4);
    tempo.setAccessibleText(words.say("lectern.tempo"));
    tempo.setOnAction(done -> wrong.setText(model.tempo(tempo.getText())));
    tempoLine =
        new FlowPane(
            10,
            4,
            new Label(words.say("lectern.tempo")),
            tempo,
            new Label(words.say("lectern.tempo.unit")));
    tempoLine.setRowValignment(VPos.BASELINE);
    click.setText(words.say("lectern.plan.how"));
    Prose.in(click);
    wrong.setId("plan-wrong");
    Prose.in(wrong);
    wrong.visibleProperty().bind(wrong.textProperty().isNotEmpty());
    wrong.managedProperty().bind(wrong.visibleProperty());
    root.getChildren().setAll(tempoLine, line, sentences, click, wrong);
  }

  VBox root() {
    return root;
  }

  /** What is chosen, the page's own title. */
  Label title() {
    return title;
  }

  void dress(Palette palette, double textSize) {
    line.dress(palette, textSize);
  }

  /** Sets off the line of the stage that sounds; none for -1. */
  void look(int stage) {
    if (stage != sounding) {
      sounding = stage;
      line.look(stage);
      mark();
    }
  }

  private void mark() {
    for (int i = 0; i < fields.size(); i++) {
      fields.get(i).pseudoClassStateChanged(NOW, i == sounding);
    }
  }

  void show() {
    Drill drill = lectern.chosen();
    title.setText(title(drill));
    List.of(tempoLine, line, sentences, click).forEach(node -> Keyed.shown(node, drill != null));
    if (!tempo.isFocused()) {
      tempo.setText(drill == null ? "" : Long.toString(Math.round(lectern.tempo())));
    }
    tempo.setDisable(!lectern.canChoose());
    Keyed.shown(click, drill != null && lectern.canChoose()); // nothing to explain in locked lines
    List<String> plan = model.lines();
    line.show(lectern.inPlay(), String.join("; ", plan));
    showLines(drill, plan);
  }

  /** A lesson says which drill and which take it is at; a drill has its own title. */
  private String title(@Nullable Drill drill) {
    String place = desk.prompt().place();
    if (!place.isEmpty()) {
      return place;
    }
    return drill == null ? words.say("lectern.choose") : words.say("lectern.chosen", drill.title());
  }

  private void showLines(@Nullable Drill drill, List<String> plan) {
    int more = lectern.canChoose() ? 1 : 0; // no line waits for a stage that cannot be written
    int wanted = drill == null ? 0 : plan.size() + more;
    while (fields.size() < wanted) {
      fields.add(field(fields.size()));
    }
    while (fields.size() > wanted) {
      fields.remove(fields.size() - 1);
    }
    for (int i = 0; i < fields.size(); i++) {
      TextField field = fields.get(i);
      if (!field.isFocused() || wrong.getText().isEmpty()) {
        field.setText(i < plan.size() ? plan.get(i) : "");
      }
      field.setDisable(!lectern.canChoose());
      field.setAccessibleText(words.say("lectern.plan.line", i + 1));
    }
    if (!sentences.getChildren().equals(fields)) {
      sentences.getChildren().setAll(fields);
    }
    mark();
  }

  private TextField field(int index) {
    TextField field = styled(new TextField(), "plan-line");
    field.setId("plan-" + (index + 1));
    Example.in(field, words.say("lectern.plan.more"));
    Runnable write =
        () -> {
          List<String> plan = model.lines();
          String had = index < plan.size() ? plan.get(index) : "";
          if (!field.getText().strip().equals(had)) {
            wrong.setText(model.line(index, field.getText()));
            show();
          } else {
            wrong.setText("");
          }
        };
    field.setOnAction(done -> write.run());
    field
        .focusedProperty()
        .addListener(
            (any, was, now) -> {
              if (was && !now) {
                write.run();
              }
            });
    return field;
  }
}
