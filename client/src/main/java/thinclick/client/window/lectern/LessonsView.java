package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import java.util.List;
import java.util.concurrent.Executor;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.Prose;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Lesson;
import thinclick.server.lesson.LessonRun;

/** The lessons to choose from, and how one chooses. */
final class LessonsView {
  private static final int MOST_ROWS = 6;

  private final LessonModel model;
  private final Words words;
  private final WholeRows<Lesson> rows;
  private final ListView<Lesson> list;
  private final Label how;
  private final Label not;
  private final FlowPane heads;
  private final VBox root = styled(new VBox(), "lectern-part");

  LessonsView(LessonModel model, Words words, Executor soon) {
    this.model = model;
    this.words = words;
    how = styled(Prose.of(words.say("lectern.choose.how")), "soft");
    not = styled(Prose.of(words.say("lectern.choose.not")), "soft");
    rows = new WholeRows<>(words, soon);
    list = rows.list();
    list.setId("lessons");
    list.setAccessibleText(words.say("lectern.lessons"));
    list.getItems().setAll(model.lessons());
    MaterialCell.in(list, words, this::line, this::inUse, this::choose);
    rows.rows(MOST_ROWS);
    heads =
        styled(
            new FlowPane(styled(new Label(words.say("lectern.lessons")), "heading")),
            "lectern-ways");
    StackPane says = new StackPane(how, not); // of one height, so that nothing below it moves
    says.setAlignment(Pos.TOP_LEFT);
    root.getChildren().setAll(heads, rows.root(), says);
  }

  VBox root() {
    return root;
  }

  /** The row in which their head stands. */
  FlowPane heads() {
    return heads;
  }

  /** Puts the cursor on the one that is marked. */
  void begin() {
    if (list.getSelectionModel().isEmpty()) {
      list.getSelectionModel().selectFirst();
    }
    list.requestFocus();
  }

  /** Shows what there is, and whether one can choose now. */
  void show(boolean canChoose) {
    List<Lesson> ready = model.lessons();
    if (!list.getItems().equals(ready)) {
      list.getItems().setAll(ready);
      rows.rows(MOST_ROWS);
      list.getSelectionModel().selectFirst();
    }
    how.setVisible(canChoose);
    not.setVisible(!canChoose);
    list.setDisable(!canChoose);
  }

  /** Another one is in use now. */
  void refresh() {
    list.refresh();
  }

  private void choose() {
    Lesson selected = list.getSelectionModel().getSelectedItem();
    if (selected != null) {
      model.choose(selected);
    }
  }

  private boolean inUse(Lesson lesson) {
    LessonRun run = model.run();
    return run != null && run.lesson().title().equals(lesson.title());
  }

  private String line(Lesson lesson) {
    int drills = lesson.drills().size();
    return words.say(
        "lectern.lesson", lesson.title(), lesson.minutes(), drills, words.count(drills));
  }
}
