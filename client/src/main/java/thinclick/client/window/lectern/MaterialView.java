package thinclick.client.window.lectern;

import static thinclick.client.window.lectern.Keyed.styled;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;

/** Lessons and drills to choose from, or what is composed. */
final class MaterialView {
  private static final int MOST_LESSONS = 8;

  private final Words words;
  private final LecternModel model;
  private final DrillSearch search;
  private final LessonModel lessonModel;
  private final ListView<Lesson> lessons = new ListView<>();
  private final ListView<Drill> drills = new ListView<>();
  private final VBox lessonsRoot = new VBox(8);
  private final VBox root = new VBox(8);

  MaterialView(LecternDesk desk, Words words) {
    this.words = words;
    model = desk.lectern();
    lessonModel = desk.lesson();
    search = desk.drills();
    lessons.setId("lessons");
    lessons.setAccessibleText(words.say("lectern.lessons"));
    lessons.getItems().setAll(lessonModel.lessons());
    lessons.setCellFactory(list -> new LessonCell());
    tall();
    onEnter(lessons, this::chooseLesson);

    TextField looking = new TextField();
    looking.setId("looking");
    looking.setPromptText(words.say("lectern.looking"));
    looking.setAccessibleText(words.say("lectern.looking"));
    looking.textProperty().bindBidirectional(search.lookingProperty());
    drills.setId("drills");
    drills.itemsProperty().bind(search.foundProperty());
    looking.textProperty().addListener(any -> drills.getSelectionModel().selectFirst());
    drills.getSelectionModel().selectFirst();
    drills.setStyle("-fx-pref-height: 28em;");
    drills.setAccessibleText(words.say("lectern.material"));
    drills.setCellFactory(list -> new DrillCell());
    onEnter(drills, this::chooseDrill);

    VBox found = new VBox(8, looking, drills);
    VBox composing = new ComposeView(model, words).root();
    ToggleButton compose = styled(new ToggleButton(words.say("lectern.compose")), "tab-word");
    compose.setId("compose");
    Keyed.shown(composing, false);
    compose
        .selectedProperty()
        .addListener(
            (any, was, now) -> {
              Keyed.shown(composing, now);
              Keyed.shown(found, !now);
            });
    Label lessonsHead = styled(new Label(words.say("lectern.lessons")), "heading");
    Label drillsHead = styled(new Label(words.say("lectern.material")), "heading");
    Label how = styled(new Label(words.say("lectern.choose.how")), "soft");
    how.setWrapText(true);
    lessonsRoot.getChildren().setAll(lessonsHead, lessons, how);
    root.getChildren().setAll(drillsHead, compose, found, composing);
  }

  /** The lessons, which come first. */
  VBox lessons() {
    return lessonsRoot;
  }

  /** The drills, and what is composed. */
  VBox root() {
    return root;
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
      tall();
      lessons.getSelectionModel().selectFirst();
    }
    lessons.setDisable(!model.canChoose());
    drills.setDisable(!model.canChoose());
  }

  private void tall() {
    int lines = Math.min(MOST_LESSONS, Math.max(1, lessons.getItems().size()));
    lessons.setStyle("-fx-pref-height: " + (lines * 2 + 0.3) + "em;");
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
    }
  }

  private String line(Lesson lesson) {
    return words.say("lectern.lesson", lesson.title(), lesson.minutes(), lesson.drills().size());
  }

  /** One lesson; a click on it or Enter begins it. */
  private final class LessonCell extends ListCell<Lesson> {
    LessonCell() {
      setOnMouseClicked(done -> chooseLesson());
    }

    @Override
    protected void updateItem(@Nullable Lesson lesson, boolean empty) {
      super.updateItem(lesson, empty);
      setText(lesson == null || empty ? "" : line(lesson));
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
      setText(drill == null || empty ? "" : search.line(drill));
    }
  }
}
