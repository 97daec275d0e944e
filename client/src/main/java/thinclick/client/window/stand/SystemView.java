package thinclick.client.window.stand;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.paint.Color;
import javafx.scene.shape.Path;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.StrokeLineJoin;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.BarMark;
import thinclick.server.engraving.StaffSystem;

/** One line of music, painted once; the marks of its bars and the bracket lie over it. */
final class SystemView {
  /** The lane of the marks below the counted beats, staff spaces. */
  private static final double LANE = 2.6;

  private final StaffSystem system;
  private final int stepsPerBar;
  private final Palette palette;
  private final double space;
  private final Group root = new Group();
  private final Canvas canvas;
  private final Group laid = new Group();
  private final Path bracket = new Path();
  private final Map<Integer, Node> markNodes = new HashMap<>();
  private boolean painted;

  SystemView(StaffSystem system, int stepsPerBar, Palette palette, double space) {
    this.system = system;
    this.stepsPerBar = stepsPerBar;
    this.palette = palette;
    this.space = space;
    canvas = new Canvas(Math.ceil(system.width() * space), Math.ceil(height()));
    bracket.setStroke(Color.web(Palette.web(palette.ink())));
    bracket.setStrokeWidth(Math.max(2, space * 0.28));
    bracket.setStrokeLineCap(StrokeLineCap.BUTT);
    bracket.setStrokeLineJoin(StrokeLineJoin.MITER);
    bracket.setVisible(false);
    root.getChildren().addAll(canvas, laid, bracket);
  }

  Node root() {
    if (!painted) {
      painted = true;
      new MarkPainter(canvas.getGraphicsContext2D(), palette, space).draw(system.marks());
    }
    return root;
  }

  double space() {
    return space;
  }

  /** How high a line is with the lane of its marks, staff spaces. */
  static double spaces(StaffSystem system) {
    return system.height() + LANE + 0.4;
  }

  double height() {
    return spaces(system) * space;
  }

  boolean has(int bar) {
    return bar >= system.firstBar() && bar < system.firstBar() + system.bars();
  }

  /** Sets the bracket over the bar that sounds, or takes it away. */
  void bar(int bar) {
    bracket.setVisible(has(bar));
    if (has(bar)) {
      double left = (system.xOf((double) bar * stepsPerBar) - 1) * space;
      double right = (system.xOf((bar + 1.0) * stepsPerBar) - 1.6) * space;
      double y = (system.height() + LANE) * space;
      MarkShapes.bracket(bracket, left, right, y, space);
    }
  }

  void marks(int bar, List<BarMark> marks) {
    Node made = MarkShapes.of(marks, system, palette, space);
    made.setAccessibleText(spoken(bar, marks));
    Node before = markNodes.put(bar, made);
    if (before != null) {
      laid.getChildren().remove(before);
    }
    laid.getChildren().add(made);
  }

  void clearMarks() {
    markNodes.clear();
    laid.getChildren().clear();
  }

  private static String spoken(int bar, List<BarMark> marks) {
    StringBuilder said = new StringBuilder("bar " + (bar + 1));
    for (BarMark mark : marks) {
      said.append(", ").append(mark.kind().name().toLowerCase(Locale.ROOT));
      if (mark.kind() == BarMark.Kind.EARLY || mark.kind() == BarMark.Kind.LATE) {
        said.append(' ').append(Math.round(Math.abs(mark.offMillis()))).append(" ms");
      }
    }
    return said.toString();
  }
}
