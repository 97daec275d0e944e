package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import java.util.concurrent.Executor;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.InView;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.server.lesson.LessonRun;

/** What is chosen from: the lessons, and either the drills or what is composed. */
final class MaterialView {
  private final LecternModel model;
  private final LessonModel lessonModel;
  private final LessonsView lessons;
  private final DrillsView drills;
  private final ComposeView composing;
  private final Words words;
  private final Label head = styled(new Label(), "heading");
  private final ToggleButton compose;
  private final Ways ways;
  private final VBox root = styled(new VBox(), "lectern-part");
  private String inUse = "";
  private Runnable chosen = () -> {};

  MaterialView(LecternDesk desk, Words words, Executor soon) {
    this.words = words;
    model = desk.lectern();
    lessonModel = desk.lesson();
    lessons = new LessonsView(lessonModel, words, soon);
    drills = new DrillsView(desk, words, soon, () -> chosen.run());
    composing = new ComposeView(model, words);
    composing.onComposed(() -> chosen.run());
    compose = styled(new ToggleButton(), "quiet");
    compose.setId("compose");
    compose.selectedProperty().addListener(any -> turn());
    turn();
    ways = new Ways(words, this::toDrills, this::toCompose);
    HBox heads = styled(new HBox(head, compose), "lectern-heads");
    root.getChildren().setAll(heads, drills.root(), composing.root());
  }

  /** The head names what is in view, and beside it stands the way to the other. */
  private void turn() {
    boolean composes = compose.isSelected();
    Keyed.shown(composing.root(), composes);
    Keyed.shown(drills.root(), !composes);
    head.setText(words.say(composes ? "lectern.compose" : "lectern.material"));
    Keyed.keys(compose, words.keys(composes ? "Ctrl+O" : "Ctrl+E"));
    Keyed.says(compose, words.say(composes ? "lectern.material.all" : "lectern.compose"));
  }

  /** The lessons, which come first. */
  VBox lessons() {
    return lessons.root();
  }

  /** The drills, and what is composed. */
  VBox root() {
    return root;
  }

  /** What stays in view of what is composed. */
  KeptAtFoot kept() {
    return composing.kept();
  }

  /** What is done once a drill was chosen here. */
  void onChosen(Runnable does) {
    chosen = does;
  }

  /** Where one chooses a drill: their list, or what is composed. */
  Node chosenIn() {
    return compose.isSelected() ? composing.root() : drills.list();
  }

  /** The row in which the lessons' head stands. */
  FlowPane lessonHeads() {
    return lessons.heads();
  }

  /** Puts the ways to the drills at the end of a row; nowhere for null. */
  void ways(@Nullable Pane where) {
    ways.stand(where);
  }

  /** Whether those ways are wanted. */
  void waysWanted(boolean now) {
    ways.wanted(now);
  }

  /** How far down the head of the drills ends, pixels from the upper edge of their part. */
  double headEnds() {
    return head.getParent().getBoundsInParent().getMaxY();
  }

  /** Brings the drills into view, where one may choose, and the cursor to where one looks. */
  void toDrills() {
    if (model.canChoose()) {
      compose.setSelected(false);
      InView.keep(root);
      drills.begin();
    }
  }

  /** Brings what is composed into view, where one may choose. */
  void toCompose() {
    if (model.canChoose()) {
      compose.setSelected(true);
      InView.keep(root);
      composing.begin();
    }
  }

  void begin() {
    lessons.begin();
  }

  void show() {
    lessons.show(model.canChoose());
    showInUse();
    drills.list().setDisable(!model.canChoose());
    ways.open(model.canChoose());
    compose.setDisable(!model.canChoose());
  }

  /** How many drills there is room for. */
  void rows(int most) {
    drills.rows(most);
  }

  /** What is in use is marked in its list, and a drill that has just come into use is in view. */
  private void showInUse() {
    LessonRun run = lessonModel.run();
    Drill drill = model.chosen();
    String now =
        (run == null ? "" : run.lesson().title()) + "\n" + (drill == null ? "" : drill.title());
    if (!now.equals(inUse)) {
      inUse = now;
      lessons.refresh();
      drills.refresh();
    }
  }
}
