package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import java.util.List;
import java.util.concurrent.Executor;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Person;

/** The roster's lines under their heads, one of which can be marked. */
final class RosterList {
  private static final int MOST_LINES = 12;

  private final Words words;
  private final WholeRows<RosterLine> rows;
  private final ListView<RosterLine> list;
  private final Label readyHead;
  private final VBox root;

  /**
   * @param marked what is done when another line is marked
   */
  RosterList(Words words, Executor soon, Runnable marked) {
    this.words = words;
    rows = new WholeRows<>(words, soon);
    list = rows.list();
    list.setId("roster");
    list.setAccessibleText(words.say("lectern.people"));
    list.setCellFactory(any -> new LineCell());
    list.getSelectionModel().selectedItemProperty().addListener((any, old, now) -> marked.run());
    HBox heads = heads(words);
    readyHead = (Label) heads.getChildren().get(heads.getChildren().size() - 1);
    root = new VBox(4, heads, rows.root());
  }

  VBox root() {
    return root;
  }

  /** The list itself, which hears the keys. */
  ListView<RosterLine> list() {
    return list;
  }

  /** Who is marked; null for nobody. */
  @Nullable Person marked() {
    RosterLine line = list.getSelectionModel().getSelectedItem();
    return line == null ? null : line.person();
  }

  /** Shows the lines; who was marked stays so. */
  void show(List<RosterLine> lines) {
    Person marked = marked();
    if (!list.getItems().equals(lines)) {
      list.getItems().setAll(lines);
      for (int i = 0; i < lines.size(); i++) {
        if (marked != null && lines.get(i).person().playerId().equals(marked.playerId())) {
          list.getSelectionModel().select(i);
        }
      }
    }
    boolean dealt = lines.stream().anyMatch(line -> !line.ready().isEmpty());
    readyHead.setText(dealt ? words.say("lectern.head.ready") : "");
    rows.rows(MOST_LINES);
  }

  private static HBox heads(Words words) {
    HBox heads =
        cells(
            List.of(
                words.say("lectern.head.chair"),
                words.say("lectern.head.name"),
                words.say("lectern.head.does"),
                words.say("lectern.head.clock"),
                words.say("lectern.head.sound"),
                ""));
    heads.getChildren().forEach(head -> head.getStyleClass().add("soft"));
    heads.getStyleClass().add("roster-heads");
    return heads;
  }

  private static HBox cells(List<String> texts) {
    List<String> styles =
        List.of(
            "roster-chair",
            "roster-name",
            "roster-does",
            "roster-clock",
            "roster-sound",
            "roster-ready");
    HBox line = styled(new HBox(), "roster-line");
    for (int i = 0; i < texts.size(); i++) {
      Label cell = styled(new Label(texts.get(i)), styles.get(i));
      cell.setWrapText(true);
      line.getChildren().add(cell);
    }
    return line;
  }

  /** One line of the roster. */
  private static final class LineCell extends ListCell<RosterLine> {
    LineCell() {
      setPrefWidth(0); // as wide as the list, so that cells shrink as their heads do
    }

    @Override
    protected void updateItem(@Nullable RosterLine line, boolean empty) {
      super.updateItem(line, empty);
      setText("");
      if (line == null || empty) {
        setGraphic(null);
        setAccessibleText("");
        return;
      }
      HBox cells =
          cells(
              List.of(
                  line.chair(),
                  line.person().name(),
                  line.does(),
                  line.clock(),
                  line.sound(),
                  line.ready()));
      // As wide as the list, so that columns give way like their heads and none is cut off.
      setPrefWidth(0);
      cells
          .prefWidthProperty()
          .bind(
              Bindings.createDoubleBinding(
                  () -> getWidth() - getInsets().getLeft() - getInsets().getRight(),
                  widthProperty(),
                  insetsProperty()));
      setGraphic(cells);
      setAccessibleText(line.spoken());
    }
  }
}
