package thinclick.client.window.practice;

import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Example;
import thinclick.client.window.look.InView;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;

/** The drills to choose from, with the line that looks for one; Enter or two presses begin. */
final class DrillPart {
  private static final double USUAL_HEIGHT = 330;

  /** The rules above and below the rows, pixels. */
  private static final double EDGES = 2;

  /** So far it stays from the edge of the window, pixels. */
  private static final double BELOW = 8;

  /** Rows that are in view however low the window is. */
  private static final int FEWEST = 3;

  private final PracticeModel model;
  private final ListView<Drill> drills = new FullRows<>();
  private final VBox root;

  DrillPart(PracticeModel model, Words words) {
    this.model = model;
    TextField looking = new TextField();
    looking.getStyleClass().add("above-list");
    looking.setId("practice-looking");
    Example.in(looking, words.say("lectern.looking"));
    looking.setAccessibleText(words.say("lectern.looking"));
    looking.textProperty().bindBidirectional(model.lookingProperty());
    looking.textProperty().addListener(any -> selectWhatIsLeft());
    looking.setOnAction(done -> drills.requestFocus());
    drills.setId("practice-drills");
    drills.itemsProperty().bind(model.drillsProperty());
    drills.setPrefHeight(USUAL_HEIGHT);
    drills.setAccessibleText(words.say("lectern.material"));
    drills.setCellFactory(list -> new DrillCell());
    drills.getSelectionModel().selectedItemProperty().addListener((any, old, now) -> choose(now));
    drills.addEventFilter(KeyEvent.KEY_PRESSED, this::enter);
    VBox.setVgrow(drills, Priority.ALWAYS);
    root = new VBox(looking, drills);
    root.getStyleClass().addAll("ruled", "block", "column");
  }

  VBox root() {
    return root;
  }

  /** So much is in view from its upper edge on: the list is no higher than that leaves it. */
  void within(double height) {
    double row = drills.getFixedCellSize();
    double head = drills.getLayoutY();
    if (row > 0 && head > 0) {
      double left = Math.min(USUAL_HEIGHT, height - head - BELOW);
      double rows = Math.floor((left - EDGES) / row);
      drills.setPrefHeight(Math.max(FEWEST, rows) * row + EDGES);
      // Beside a column that is higher it ends in view all the same.
      drills.setMaxHeight(Math.max(FEWEST * row + EDGES, height - head - BELOW));
    }
  }

  /** Puts the cursor on the drill that is chosen, and what is chosen from in view. */
  void begin() {
    if (drills.getSelectionModel().isEmpty()) {
      drills.getSelectionModel().selectFirst();
    }
    drills.requestFocus();
    InView.keep(drills);
  }

  private void choose(@Nullable Drill drill) {
    if (drill != null && !drill.equals(model.drillProperty().get())) {
      model.choose(drill);
    }
  }

  private void enter(KeyEvent key) {
    if (key.getCode() == KeyCode.ENTER && !key.isControlDown()) {
      model.begin();
    }
  }

  /** Looking for a drill takes the first that fits where the one taken does not. */
  private void selectWhatIsLeft() {
    if (drills.getItems().contains(model.drillProperty().get())) {
      drills.getSelectionModel().select(model.drillProperty().get());
    } else {
      drills.getSelectionModel().selectFirst();
    }
  }

  private final class DrillCell extends ListCell<Drill> {
    DrillCell() {
      setOnMouseClicked(
          click -> {
            if (click.getClickCount() == 2) {
              model.begin();
            }
          });
    }

    @Override
    protected void updateItem(@Nullable Drill drill, boolean empty) {
      super.updateItem(drill, empty);
      setText(drill == null || empty ? "" : model.line(drill));
    }
  }
}
