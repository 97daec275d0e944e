package thinclick.client.window.review;

import java.util.List;
import java.util.Objects;
import javafx.beans.value.ObservableValue;
import javafx.geometry.HPos;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.words.Words;
import thinclick.server.scoring.Review;
import thinclick.server.words.Spoken;

/** The review's page. */
public final class ReviewView {
  private final ReviewModel model;
  private final Words words;
  private final VBox sheet = new VBox();
  private final ScrollPane root;

  public ReviewView(ReviewModel model, Words words, ObservableValue<RoomState> room) {
    this.model = model;
    this.words = words;
    sheet.getStyleClass().add("sheet");
    sheet.getStyleClass().add("measure");
    VBox page = new VBox(sheet);
    page.getStyleClass().add("page");
    page.setAlignment(Pos.TOP_CENTER);
    root = new ScrollPane(page);
    root.setFitToWidth(true);
    room.addListener(
        (any, old, now) -> {
          if (!Objects.equals(old.review(), now.review())) {
            show(now);
          }
        });
    show(room.getValue());
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** Takes the focus, so that the page can be scrolled by keys. */
  public void begin() {
    root.requestFocus();
  }

  private void show(RoomState room) {
    Spoken spoken = model.read(room);
    sheet.getChildren().clear();
    if (spoken == null) {
      sheet.getChildren().add(styled(new Label(words.say("review.none")), "soft"));
      return;
    }
    Review review = spoken.review();
    sheet.getChildren().add(styled(new Label(review.title()), "title"));
    sheet
        .getChildren()
        .add(
            styled(
                new Label(
                    words.say(
                        "review.what",
                        review.meter().toString(),
                        Math.round(review.tempo()),
                        Math.round(review.toleranceMillis()))),
                "soft"));
    VBox prose = new VBox(7);
    prose.setId("review-prose");
    for (String sentence : model.sentences(spoken)) {
      Label label = new Label(sentence);
      label.setWrapText(true);
      prose.getChildren().add(label);
    }
    sheet.getChildren().add(prose);
    sheet
        .getChildren()
        .add(table(words.say("review.stages"), "stages", model.stageHeads(), model.stages(spoken)));
    sheet
        .getChildren()
        .add(
            table(
                words.say("review.players"),
                "players",
                model.playerHeads(),
                model.players(review)));
  }

  private static Node table(String title, String id, List<String> heads, List<List<String>> lines) {
    GridPane grid = new GridPane();
    grid.setId("review-" + id);
    grid.setHgap(30);
    grid.setVgap(5);
    for (int column = 0; column < heads.size(); column++) {
      Label head = styled(new Label(heads.get(column)), "soft");
      grid.add(head, column, 0);
      GridPane.setHalignment(head, side(id, column));
      for (int line = 0; line < lines.size(); line++) {
        Label cell = new Label(lines.get(line).get(column));
        grid.add(cell, column, line + 1);
        GridPane.setHalignment(cell, side(id, column));
      }
    }
    VBox box = new VBox(8, styled(new Label(title), "heading"), grid);
    box.getStyleClass().add("ruled");
    return box;
  }

  /** Words stand to the left, figures to the right. */
  private static HPos side(String table, int column) {
    boolean words = column == 0 || (table.equals("stages") && column == 1);
    return words ? HPos.LEFT : HPos.RIGHT;
  }

  private static <N extends Node> N styled(N node, String style) {
    node.getStyleClass().add(style);
    return node;
  }
}
