package thinclick.client.window.lectern;

import static thinclick.client.window.lectern.Keyed.styled;

import java.util.List;
import java.util.concurrent.Executor;
import javafx.beans.InvalidationListener;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.InView;
import thinclick.client.window.look.Prose;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;
import thinclick.server.lesson.LessonRun;

/** Lessons and drills to choose from, or what is composed. */
final class MaterialView {
  private static final int MOST_LESSONS = 6;
  private static final PseudoClass IN_USE = PseudoClass.getPseudoClass("in-use");

  private final Words words;
  private final LecternModel model;
  private final DrillSearch search;
  private final LessonModel lessonModel;
  private final WholeRows<Lesson> lessonRows;
  private final WholeRows<Drill> drillRows;
  private final ListView<Lesson> lessons;
  private final ListView<Drill> drills;
  private final Label how;
  private final Label not;
  private final TextField looking = new TextField();
  private final ComposeView composing;
  private final ToggleButton compose;
  private final Ways ways;
  private final FlowPane lessonHeads;
  private final VBox lessonsRoot = styled(new VBox(), "lectern-part");
  private final VBox root = styled(new VBox(), "lectern-part");
  private int mostDrills = 12;
  private String inUse = "";
  private Runnable chosen = () -> {};

  MaterialView(LecternDesk desk, Words words, Executor soon) {
    this.words = words;
    model = desk.lectern();
    lessonModel = desk.lesson();
    search = desk.drills();
    how = styled(Prose.of(words.say("lectern.choose.how")), "soft");
    not = styled(Prose.of(words.say("lectern.choose.not")), "soft");
    lessonRows = new WholeRows<>(words, soon);
    drillRows = new WholeRows<>(words, soon);
    lessons = lessonRows.list();
    drills = drillRows.list();
    lessons.setId("lessons");
    lessons.setAccessibleText(words.say("lectern.lessons"));
    lessons.getItems().setAll(lessonModel.lessons());
    lessons.setCellFactory(list -> new LessonCell());
    lessonRows.rows(MOST_LESSONS);
    onEnter(lessons, this::chooseLesson);

    looking.setId("looking");
    looking.getStyleClass().add("above-list"); // its words begin where those of the list do
    looking.setPromptText(words.say("lectern.looking.how"));
    looking.setAccessibleText(words.say("lectern.looking"));
    looking.textProperty().bindBidirectional(search.lookingProperty());
    drills.setId("drills");
    drills.itemsProperty().bind(search.foundProperty());
    looking.textProperty().addListener(any -> drills.getSelectionModel().selectFirst());
    drills.getSelectionModel().selectFirst();
    search.foundProperty().addListener((InvalidationListener) any -> drillRows.rows(mostDrills));
    drills.setAccessibleText(words.say("lectern.material"));
    drills.setCellFactory(list -> new DrillCell());
    onEnter(drills, this::chooseDrill);

    VBox found = new VBox(8, looking, drillRows.root());
    composing = new ComposeView(model, words);
    composing.onComposed(() -> chosen.run());
    compose = styled(new ToggleButton(words.say("lectern.compose")), "tab-word");
    compose.setId("compose");
    Keyed.keys(compose, words.keys("Ctrl+E"));
    Keyed.says(compose, words.say("lectern.compose"));
    Keyed.shown(composing.root(), false);
    compose
        .selectedProperty()
        .addListener(
            (any, was, now) -> {
              Keyed.shown(composing.root(), now);
              Keyed.shown(found, !now);
            });
    Label lessonsHead = styled(new Label(words.say("lectern.lessons")), "heading");
    Label drillsHead = styled(new Label(words.say("lectern.material")), "heading");
    StackPane says = new StackPane(how, not); // of one height, so that nothing below it moves
    says.setAlignment(Pos.TOP_LEFT);
    ways = new Ways(words, this::toDrills, this::toCompose);
    lessonHeads = styled(new FlowPane(lessonsHead), "lectern-ways");
    lessonsRoot.getChildren().setAll(lessonHeads, lessonRows.root(), says);
    HBox heads = styled(new HBox(drillsHead, compose), "lectern-heads");
    root.getChildren().setAll(heads, found, composing.root());
  }

  /** The lessons, which come first. */
  VBox lessons() {
    return lessonsRoot;
  }

  /** The drills, and what is composed. */
  VBox root() {
    return root;
  }

  /** What is done once a drill was chosen here. */
  void onChosen(Runnable does) {
    chosen = does;
  }

  /** Where one chooses a drill: their list, or what is composed. */
  Node chosenIn() {
    return compose.isSelected() ? composing.root() : drills;
  }

  /** The row in which the lessons' head stands. */
  FlowPane lessonHeads() {
    return lessonHeads;
  }

  /** Puts the ways to the drills at the end of a row; nowhere for null. */
  void ways(@Nullable Pane where) {
    ways.stand(where);
  }

  /** Brings the drills into view, where one may choose, and the cursor to where one looks. */
  void toDrills() {
    if (model.canChoose()) {
      compose.setSelected(false);
      InView.bring(root);
      looking.requestFocus();
    }
  }

  /** Brings what is composed into view, where one may choose. */
  void toCompose() {
    if (model.canChoose()) {
      compose.setSelected(true);
      InView.bring(root);
      composing.begin();
    }
  }

  void begin() {
    if (lessons.getSelectionModel().isEmpty()) {
      lessons.getSelectionModel().selectFirst();
    }
    lessons.requestFocus();
  }

  void show() {
    List<Lesson> ready = lessonModel.lessons();
    if (!lessons.getItems().equals(ready)) {
      lessons.getItems().setAll(ready);
      lessonRows.rows(MOST_LESSONS);
      lessons.getSelectionModel().selectFirst();
    }
    showInUse();
    how.setVisible(model.canChoose());
    not.setVisible(!model.canChoose());
    lessons.setDisable(!model.canChoose());
    drills.setDisable(!model.canChoose());
    ways.open(model.canChoose());
  }

  /** How many drills there is room for. */
  void rows(int most) {
    mostDrills = most;
    drillRows.rows(most);
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
      int at = drills.getItems().stream().map(search::inUse).toList().indexOf(true);
      if (at >= 0) {
        drills.getSelectionModel().select(at);
        drills.scrollTo(at);
      }
    }
  }

  private static void onEnter(Node node, Runnable does) {
    node.addEventFilter(
        KeyEvent.KEY_PRESSED,
        key -> {
          if (key.getCode() == KeyCode.ENTER && !key.isControlDown()) {
            does.run();
          }
        });
  }

  private void chooseLesson() {
    Lesson selected = lessons.getSelectionModel().getSelectedItem();
    if (selected != null) {
      lessonModel.choose(selected);
    }
  }

  private void chooseDrill() {
    Drill selected = drills.getSelectionModel().getSelectedItem();
    if (selected != null) {
      lessonModel.leave();
      model.choose(selected);
      chosen.run();
    }
  }

  private String line(Lesson lesson) {
    return words.say("lectern.lesson", lesson.title(), lesson.minutes(), lesson.drills().size());
  }

  /** A double rule before the line, and a word for those who hear it. */
  private void inUse(ListCell<?> cell, String line, boolean used) {
    cell.setText(line);
    cell.setAccessibleText(used ? words.say("lectern.list.inUse", line) : line);
    cell.pseudoClassStateChanged(IN_USE, used);
  }

  /** One lesson; a click on it or Enter begins it. */
  private final class LessonCell extends ListCell<Lesson> {
    LessonCell() {
      setOnMouseClicked(done -> chooseLesson());
    }

    @Override
    protected void updateItem(@Nullable Lesson lesson, boolean empty) {
      super.updateItem(lesson, empty);
      LessonRun run = lessonModel.run();
      boolean used =
          lesson != null && !empty && run != null && run.lesson().title().equals(lesson.title());
      inUse(this, lesson == null || empty ? "" : line(lesson), used);
    }
  }

  /** One drill; a click on it or Enter chooses it. */
  private final class DrillCell extends ListCell<Drill> {
    DrillCell() {
      setOnMouseClicked(done -> chooseDrill());
    }

    @Override
    protected void updateItem(@Nullable Drill drill, boolean empty) {
      super.updateItem(drill, empty);
      boolean used = drill != null && !empty && search.inUse(drill);
      inUse(this, drill == null || empty ? "" : search.line(drill), used);
    }
  }
}
