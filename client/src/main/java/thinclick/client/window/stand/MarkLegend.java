package thinclick.client.window.stand;

import java.util.List;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
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
  private final boolean brief;
  private final FlowPane root = new FlowPane();
  private Palette palette = Palette.LIGHT;
  private double scale = 1;
  private DevicePixels pixels = DevicePixels.primary();

  /**
   * @param brief the shapes alone with a word each, where there is no room for more
   */
  MarkLegend(Words words, boolean brief) {
    this.words = words;
    this.brief = brief;
    when = soft(words.say("stand.legend"));
    over = soft(words.say("stand.legend.over"));
    over.setId("stand-over");
    says = new StackPane(when, over); // as wide as the longer, and last: what is left is not seen
    says.setAlignment(Pos.CENTER_LEFT);
    root.setId(brief ? "stand-legend-brief" : "stand-legend");
    root.getStyleClass().add("stand-legend");
    root.setRowValignment(VPos.CENTER);
    root.setAccessibleRole(AccessibleRole.TEXT);
    takeOver(false);
    DevicePixels.follow(root, this::on);
  }

  private void on(DevicePixels now) {
    if (!now.equals(pixels)) {
      pixels = now;
      draw();
    }
  }

  Node root() {
    return root;
  }

  /** Takes no more width than something else does. */
  void within(Region other) {
    root.prefWrapLengthProperty().bind(other.widthProperty());
  }

  /** Draws the shapes in other colours or another size. */
  void dress(Palette wanted, double textScale) {
    palette = wanted;
    scale = textScale;
    draw();
  }

  private void draw() {
    root.getChildren().clear();
    for (Kind kind : List.of(Kind.values())) {
      Node shape = MarkShapes.alone(kind, palette, SPACE * scale, pixels);
      HBox pair = new HBox(SHAPE_GAP * scale, shape, soft(said(kind)));
      pair.getStyleClass().add("stand-mark");
      root.getChildren().add(pair);
    }
    if (!brief) {
      root.getChildren().add(says);
    }
    if (!root.prefWrapLengthProperty().isBound()) {
      root.setPrefWrapLength(Look.USUAL_TEXT * scale);
    }
  }

  /** Before and in a take it says when marks come, afterwards where the review is. */
  void takeOver(boolean now) {
    when.setVisible(!now);
    over.setVisible(now);
    StringBuilder spoken = new StringBuilder(brief ? "" : (now ? over : when).getText());
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
