package thinclick.client.window.lectern;

import java.util.concurrent.Executor;
import javafx.beans.InvalidationListener;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.Example;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;

/** The drills to choose from, all of them or those that are looked for. */
final class DrillsView {
  private static final int ROWS_AT_FIRST = 12;

  private final LecternModel model;
  private final LessonModel lesson;
  private final DrillSearch search;
  private final WholeRows<Drill> rows;
  private final ListView<Drill> list;
  private final TextField looking = new TextField();
  private final VBox root;
  private final Runnable chosen;
  private int most = ROWS_AT_FIRST;

  /**
   * @param chosen what is done once one was chosen
   */
  DrillsView(LecternDesk desk, Words words, Executor soon, Runnable chosen) {
    model = desk.lectern();
    lesson = desk.lesson();
    search = desk.drills();
    this.chosen = chosen;
    rows = new WholeRows<>(words, soon);
    list = rows.list();
    list.setId("drills");
    list.itemsProperty().bind(search.foundProperty());
    list.setAccessibleText(words.say("lectern.material"));
    list.getSelectionModel().selectFirst();
    MaterialCell.in(list, words, search::line, search::inUse, this::choose);
    search.foundProperty().addListener((InvalidationListener) any -> rows.rows(most));

    looking.setId("looking");
    looking.getStyleClass().add("above-list"); // its words begin where those of the list do
    Example.in(looking, words.say("lectern.looking.how"));
    looking.setAccessibleText(words.say("lectern.looking"));
    looking.textProperty().bindBidirectional(search.lookingProperty());
    looking.textProperty().addListener(any -> list.getSelectionModel().selectFirst());
    root = new VBox(8, looking, rows.root());
  }

  VBox root() {
    return root;
  }

  /** The list itself. */
  ListView<Drill> list() {
    return list;
  }

  /** Puts the cursor where one looks for a drill. */
  void begin() {
    looking.requestFocus();
  }

  /** How many rows there is room for. */
  void rows(int room) {
    most = room;
    rows.rows(room);
  }

  /** Another one is in use now: it is marked and in view. */
  void refresh() {
    list.refresh();
    int at = list.getItems().stream().map(search::inUse).toList().indexOf(true);
    if (at >= 0) {
      list.getSelectionModel().select(at);
      list.scrollTo(at);
    }
  }

  private void choose() {
    Drill selected = list.getSelectionModel().getSelectedItem();
    if (selected != null) {
      lesson.leave();
      model.choose(selected);
      chosen.run();
    }
  }
}
