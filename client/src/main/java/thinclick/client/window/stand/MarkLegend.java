package thinclick.client.window.stand;

import java.util.List;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.StackPane;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.BarMark.Kind;
import thinclick.client.window.words.Words;

/**
 * What each mark below the beats means, drawn as it is there. It has the same place before a take,
 * in it and after it, so that the music above keeps its own.
 */
final class MarkLegend {
  private static final double SPACE = 9;
  private static final double SHAPE_GAP = 6;

  private final Words words;
  private final Label when;
  private final Label over;
  private final StackPane says;
  private final FlowPane root = new FlowPane();

  MarkLegend(Words words) {
    this.words = words;
    when = soft(words.say("stand.legend"));
    over = soft(words.say("stand.legend.over"));
    over.setId("stand-over");
    says = new StackPane(when, over); // as wide as the longer, and last: what is left is not seen
    says.setAlignment(Pos.CENTER_LEFT);
    root.setId("stand-legend");
    root.getStyleClass().add("stand-legend");
    root.setRowValignment(VPos.CENTER);
    root.setAccessibleRole(AccessibleRole.TEXT);
    takeOver(false);
  }

  Node root() {
    return root;
  }

  /** Draws the shapes in other colours or another size. */
  void dress(Palette palette, double textScale) {
    root.getChildren().clear();
    for (Kind kind : List.of(Kind.values())) {
      Node shape = MarkShapes.alone(kind, palette, SPACE * textScale);
      HBox pair = new HBox(SHAPE_GAP * textScale, shape, soft(said(kind)));
      pair.getStyleClass().add("stand-mark");
      root.getChildren().add(pair);
    }
    root.getChildren().add(says);
    root.setPrefWrapLength(Look.USUAL_TEXT * textScale);
  }

  /** Before and in a take it says when marks come, afterwards where the review is. */
  void takeOver(boolean now) {
    when.setVisible(!now);
    over.setVisible(now);
    StringBuilder spoken = new StringBuilder((now ? over : when).getText());
    for (Kind kind : Kind.values()) {
      spoken.append(' ').append(said(kind));
    }
    root.setAccessibleText(spoken.toString());
  }

  private String said(Kind kind) {
    return words.say(
        switch (kind) {
          case PLACED -> "stand.mark.placed";
          case EARLY -> "stand.mark.early";
          case LATE -> "stand.mark.late";
          case DROPPED -> "stand.mark.dropped";
          case ADDED -> "stand.mark.added";
        });
  }

  private static Label soft(String says) {
    Label label = new Label(says);
    label.getStyleClass().add("soft");
    return label;
  }
}
