package thinclick.client.window.stand;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.StackPane;
import javafx.scene.paint.Color;
import javafx.scene.shape.Line;
import javafx.scene.shape.StrokeLineCap;
import thinclick.client.window.look.Palette;
import thinclick.server.engraving.StaffSystem;

/**
 * One line of music on the page: a staff, or the staves of several parts below each other, joined
 * at the left, each with its players' names before it as in a printed score.
 */
final class ScoreLine {
  private static final double BEFORE_STAFF = 1;
  private static final double NAMES_HIGH = 6;

  /** As large as the music's own words, where the margin holds so many ems of it. */
  private static final double NAME_SIZE = 1.5;

  private static final double LEAST_EMS = 3.5;
  private static final double JOIN = 0.16;

  private final List<SystemView> staves;
  private final List<Double> tops;
  private final List<String> names;
  private final double margin;
  private final double right;
  private final Palette palette;
  private final Group root = new Group();

  /**
   * @param staves from above
   * @param tops where each begins, pixels from the line's own top
   * @param names of those who read each staff; empty where one staff is all
   * @param margin what the names take before the staves, pixels; 0 for one staff alone
   */
  ScoreLine(
      List<SystemView> staves,
      List<Double> tops,
      List<String> names,
      double margin,
      Palette palette) {
    this.staves = staves;
    this.tops = tops;
    this.names = names;
    this.margin = margin;
    this.palette = palette;
    SystemView first = staves.get(0);
    this.right = margin + first.system().width() * first.space();
  }

  /** What is on the page; painted when it is wanted first. */
  Node root() {
    if (root.getChildren().isEmpty()) {
      for (int staff = 0; staff < staves.size(); staff++) {
        Node painted = staves.get(staff).root();
        painted.setLayoutX(margin);
        painted.setLayoutY(tops.get(staff));
        root.getChildren().add(painted);
        if (margin > 0) {
          root.getChildren().add(name(staff));
        }
      }
      if (staves.size() > 1) {
        root.getChildren().add(join());
      }
    }
    return root;
  }

  /** Beside the middle of its staff. */
  private Node name(int staff) {
    SystemView view = staves.get(staff);
    Label label = new Label(names.get(staff));
    label.getStyleClass().add("strong");
    label.setWrapText(true);
    double size = Math.min(NAME_SIZE * view.space(), margin / LEAST_EMS);
    if (size > margin / ScoreSheet.NAME_EMS) {
      label.setStyle("-fx-font-size: " + size + "px;");
    }
    StackPane place = new StackPane(label);
    place.setAlignment(Pos.CENTER_RIGHT);
    double high = NAMES_HIGH * view.space();
    place.setPrefSize(margin - BEFORE_STAFF * view.space(), high);
    place.setMinSize(0, 0);
    place.setLayoutY(staffY(staff) - high / 2);
    place.resize(margin - BEFORE_STAFF * view.space(), high);
    return place;
  }

  /** As sharp as a bar line, from the first staff's upper edge to the last one's lower. */
  private Node join() {
    double device = staves.get(0).pixels().each();
    double wide = new PixelGrid(staves.get(0).space(), device).across(JOIN) / device;
    int last = staves.size() - 1;
    double x = margin + wide / 2;
    Line line =
        new Line(
            x,
            tops.get(0) + staves.get(0).staffTop(),
            x,
            tops.get(last) + staves.get(last).staffBottom());
    line.setStroke(Color.web(Palette.web(palette.ink())));
    line.setStrokeWidth(wide);
    line.setStrokeLineCap(StrokeLineCap.BUTT);
    return line;
  }

  /** Where a staff's middle line stands as it is drawn, pixels from the line's top. */
  double staffY(int staff) {
    SystemView view = staves.get(staff);
    return tops.get(staff) + (view.staffTop() + view.staffBottom()) / 2;
  }

  /** Where its music begins, pixels from the line's top: what is lower than others begins lower. */
  double head() {
    return tops.get(0);
  }

  /** Where the last of what is drawn below its staves may end, pixels from the line's top. */
  double foot() {
    int last = staves.size() - 1;
    return tops.get(last) + staves.get(last).foot();
  }

  /** Where its staves end, pixels from the page's left. */
  double right() {
    return right;
  }

  /** Where its first step stands, pixels from the page's left. */
  double firstX() {
    SystemView first = staves.get(0);
    return margin + first.system().firstX() * first.space();
  }

  List<SystemView> staves() {
    return staves;
  }

  /** Which bars it has. */
  PageTurn.Line bars() {
    StaffSystem system = staves.get(0).system();
    return new PageTurn.Line(system.firstBar(), system.bars());
  }
}
