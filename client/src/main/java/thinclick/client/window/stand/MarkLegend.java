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
  private final Label later;
  private final Label over;
  private final StackPane says;
  private final boolean brief;
  private final FlowPane marks = new FlowPane();
  private final StackPane root;
  private Palette palette = Palette.LIGHT;
  private double scale = 1;
  private DevicePixels pixels = DevicePixels.primary();
  private boolean takeOver;
  private boolean atOnce = true;
  private boolean others;
  private boolean othersDrawn;

  /**
   * @param brief the shapes alone with a word each, where there is no room for more
   */
  MarkLegend(Words words, boolean brief) {
    this.words = words;
    this.brief = brief;
    when = soft(words.say("stand.legend"));
    later = soft(words.say("stand.legend.later"));
    over = soft(words.say("stand.legend.over"));
    over.setId("stand-over");
    // As wide as the longer one, and last but for what is not always there.
    says = new StackPane(when, over);
    says.setAlignment(Pos.CENTER_LEFT);
    later.setVisible(false);
    root = new StackPane(marks, later);
    root.setAlignment(Pos.CENTER_LEFT);
    root.setId(brief ? "stand-legend-brief" : "stand-legend");
    marks.getStyleClass().add("stand-legend");
    marks.setRowValignment(VPos.CENTER);
    root.setAccessibleRole(AccessibleRole.TEXT);
    tell();
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

  /** Takes as much width as something else does. */
  void within(Region other) {
    marks.prefWrapLengthProperty().bind(other.widthProperty());
  }

  /** Draws the shapes in other colours or another size. */
  void dress(Palette wanted, double textScale) {
    palette = wanted;
    scale = textScale;
    draw();
  }

  private void draw() {
    marks.getChildren().clear();
    for (Kind kind : List.of(Kind.values())) {
      Node shape = MarkShapes.alone(kind, palette, SPACE * scale, pixels);
      marks.getChildren().add(pair(shape, said(kind)));
    }
    if (!brief) {
      // What is in view stands together: a place kept for what is not is at the end.
      marks.getChildren().addAll(othersDrawn ? ofOthers() : List.of());
      marks.getChildren().add(says);
      marks.getChildren().addAll(othersDrawn ? List.of() : ofOthers());
    }
    if (!marks.prefWrapLengthProperty().isBound()) {
      marks.setPrefWrapLength(Look.USUAL_TEXT * scale);
    }
  }

  private List<HBox> ofOthers() {
    if (!others) {
      return List.of();
    }
    double space = SPACE * scale;
    Node written = MarkShapes.written(palette, space, pixels);
    Node heard = MarkShapes.heard(palette, space, pixels);
    List<HBox> both =
        List.of(
            pair(written, words.say("stand.others.written")),
            pair(heard, words.say("stand.others.heard")));
    both.forEach(one -> one.setVisible(othersDrawn));
    return both;
  }

  private HBox pair(Node shape, String said) {
    HBox pair = new HBox(SHAPE_GAP * scale, shape, soft(said));
    pair.getStyleClass().add("stand-mark");
    return pair;
  }

  /** Before and in a take it says when marks come, afterwards that it is over. */
  void takeOver(boolean now) {
    takeOver = now;
    tell();
  }

  /**
   * Says where marks are seen during a take.
   *
   * @param now whether a bar that is over stays in view; where it does not, its marks are read in
   *     the review
   */
  void atOnce(boolean now) {
    atOnce = now;
    tell();
  }

  /**
   * Lines for other players below the part have ticks of their own.
   *
   * @param now whether such lines are wanted, so that their ticks have a place here
   * @param drawn whether they stand there, at this size of page
   */
  void others(boolean now, boolean drawn) {
    if (now != others || drawn != othersDrawn) {
      others = now;
      othersDrawn = drawn;
      draw();
      tell();
    }
  }

  private void tell() {
    Label tells = takeOver ? over : atOnce ? when : later;
    boolean unseen = tells == later && !brief;
    when.setVisible(tells == when);
    over.setVisible(tells == over);
    later.setVisible(unseen);
    marks.setVisible(!unseen);
    StringBuilder spoken = new StringBuilder(brief ? "" : tells.getText());
    for (Kind kind : unseen ? new Kind[0] : Kind.values()) {
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
