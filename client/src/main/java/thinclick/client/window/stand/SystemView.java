package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.scene.AccessibleRole;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.paint.Color;
import javafx.scene.shape.Path;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.StrokeLineJoin;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.BarMark;
import thinclick.server.engraving.Engraver;
import thinclick.server.engraving.Face;
import thinclick.server.engraving.Ink;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Place;
import thinclick.server.engraving.StaffSystem;
import thinclick.server.material.WrittenPart;
import thinclick.server.picture.Easel;
import thinclick.server.words.SheetWords;

/**
 * One line of music, painted once; over it lie the marks of its bars, in a lane for each player who
 * reads it, the bracket at the bar that sounds, and what was heard of the others, each on a line of
 * their own below.
 */
final class SystemView {
  /** The lane of the marks below the counted beats, staff spaces. */
  private static final double LANE = 2.45;

  /** Where a lane has a line of its own: below the ticks and the feet that stand there. */
  private static final double LANE_RULE = 2.3;

  /** So that the ends of the bracket keep below the last of several lanes' lines. */
  private static final double BELOW_LANES = 0.8;

  private static final double BELOW_BRACKET = 0.5;
  private static final double OTHER = 1.7;

  /** Below the last of the others' lines, so that it does not stand on the frame. */
  private static final double BELOW_OTHERS = 0.8;

  private static final double NAME_SIZE = 1.4;

  /** From a line down to its name's base line: small letters stand across it. */
  private static final double NAME_DROP = 0.3;

  private static final double RULE = 0.13;
  private static final double STAFF_LINE = 0.13;
  private static final double SAME = 1e-6;

  /** Half a line higher is not between two pixels by a hair. */
  private static final double INTO_PIXEL = 0.25;

  private final StaffSystem system;
  private final double lowered;
  private final List<String> readers;
  private final List<OtherLine> others;
  private final SheetWords said;
  private final Palette palette;
  private final double space;
  private final double title;
  private final DevicePixels pixels;
  private final Group root = new Group();
  private final Canvas canvas;
  private final Group laid = new Group();
  private final Path bracket = new Path();
  private final Map<LaneBar, Node> markNodes = new HashMap<>();
  private final Map<Integer, Node> heardNodes = new HashMap<>();
  private boolean painted;

  private record LaneBar(int lane, int bar) {}

  /**
   * @param readers whose marks it takes, in a lane each
   * @param title how large the page's is, pixels: no words over the click are larger
   */
  SystemView(
      StaffSystem system,
      WrittenPart part,
      List<String> readers,
      List<OtherLine> others,
      Palette palette,
      double space,
      double title,
      DevicePixels pixels) {
    this.title = title;
    this.readers = readers;
    this.others = others;
    this.said = SheetWords.in(part.heading().language());
    this.palette = palette;
    this.space = space;
    this.pixels = pixels;
    lowered = lowered(system.staffY());
    this.system = system.lowered(lowered / space);
    canvas = new Canvas(Math.ceil(system.width() * space), Math.ceil(lowered + height()));
    bracket.setStroke(Color.web(Palette.web(palette.ink())));
    bracket.setStrokeWidth(pixels.nearest(Math.max(2, space * 0.28)));
    bracket.setStrokeLineCap(StrokeLineCap.BUTT);
    bracket.setStrokeLineJoin(StrokeLineJoin.MITER);
    bracket.setVisible(false);
    root.setAccessibleRole(AccessibleRole.TEXT);
    root.setAccessibleText(SpokenLine.of(system, said));
    root.getChildren().addAll(canvas, laid, bracket);
    // Painted for whole pixels: between two of them every line would be grey.
    root.layoutXProperty().addListener((any, old, x) -> root.setTranslateX(offPixel(x)));
    root.layoutYProperty().addListener((any, old, y) -> root.setTranslateY(offPixel(y)));
  }

  /**
   * How far down it is moved, less than a pixel of the screen, so that in every line the same part
   * of a pixel is between the staff and where pixels begin: what stands as far above it or below it
   * is drawn as many pixels from it.
   */
  private double lowered(double staffY) {
    double at = staffY * space * pixels.each();
    double into = at - Math.floor(at);
    return (into <= INTO_PIXEL ? INTO_PIXEL - into : 1 + INTO_PIXEL - into) / pixels.each();
  }

  /** How far below its own top its music begins, pixels. */
  double lowered() {
    return lowered;
  }

  private double offPixel(Number at) {
    return pixels.nearest(at.doubleValue()) - at.doubleValue();
  }

  Node root() {
    if (!painted) {
      painted = true;
      MarkPainter painter = new MarkPainter(canvas.getGraphicsContext2D(), palette, space, pixels);
      painter.draw(TitleSize.noLarger(system.marks(), space, title));
      painter.draw(lanes());
      painter.draw(otherLines());
    }
    return root;
  }

  StaffSystem system() {
    return system;
  }

  double space() {
    return space;
  }

  /** What it is painted on. */
  DevicePixels pixels() {
    return pixels;
  }

  /** Where the first line of its staff begins as it is drawn, pixels from its own top. */
  double staffTop() {
    return drawnStaff().top() / pixels.each();
  }

  /** Where the last line of its staff ends as it is drawn, pixels from its top. */
  double staffBottom() {
    return drawnStaff().bottom() / pixels.each();
  }

  private PixelGrid.Edges drawnStaff() {
    return new PixelGrid(space, pixels.each()).staff(system.staffY(), STAFF_LINE);
  }

  /**
   * How high a line is with the lanes of its marks and the lines of the others, staff spaces.
   *
   * @param high how high its staff is with all that is engraved around it
   */
  static double spaces(double high, int lanes, int others) {
    double below = others > 0 ? BELOW_BRACKET + others * OTHER + BELOW_OTHERS : 0;
    return high + lanes(lanes) + below;
  }

  private static double lanes(int lanes) {
    return lanes * LANE + (lanes > 1 ? BELOW_LANES : 0);
  }

  /** How high its music is, pixels. */
  double height() {
    return spaces(system.height(), readers.size(), others.size()) * space - lowered;
  }

  /** Where the last of what is drawn below it may end, pixels from its top; below that is air. */
  double foot() {
    double last = others.isEmpty() ? 0 : otherY(others.size() - 1) + MarkShapes.WRITTEN;
    return Math.max(underLanes(), last) * space;
  }

  /** Whether words above it say what clicks. */
  boolean headed() {
    return system.marks().stream()
        .anyMatch(mark -> mark instanceof Mark.Text text && text.size() == Engraver.DIRECTION_SIZE);
  }

  boolean has(int bar) {
    return bar >= system.firstBar() && bar < system.firstBar() + system.bars();
  }

  /** On whole pixels, as far from each other, so that the ticks of all lines are of one height. */
  private double otherY(int line) {
    return onPixel(underLanes() + BELOW_BRACKET + 0.8 * OTHER) + line * step(OTHER);
  }

  /** A little below where a pixel begins. */
  private double onPixel(double y) {
    return (pixels.nearest(y * space) + INTO_PIXEL / pixels.each()) / space;
  }

  /** Whole pixels, from row to row. */
  private double step(double distance) {
    return pixels.nearest(distance * space) / space;
  }

  private double underLanes() {
    return system.height() + lanes(readers.size());
  }

  /** Whose marks stand over which line, where several read this staff. */
  List<Mark> lanes() {
    List<Mark> marks = new ArrayList<>();
    for (int lane = 0; readers.size() > 1 && lane < readers.size(); lane++) {
      named(marks, readers.get(lane), onPixel(system.height() + LANE_RULE) + lane * step(LANE));
    }
    return marks;
  }

  /** A ruled line from the first step to the last, its player's name before it. */
  private void named(List<Mark> marks, String name, double y) {
    double left = system.xOf(system.firstStep());
    double right = system.xOf(system.firstStep() + system.steps() - 1.0);
    marks.add(name(name, y + NAME_DROP));
    marks.add(new Mark.Line(Place.saying(name), Ink.RULE, left, y, right, y, RULE, false));
  }

  private Mark name(String said, double y) {
    double right = system.nameRight();
    String name = Easel.cut(said, NAME_SIZE, right - 0.5);
    double x = right - Face.ITALIC.width(name, NAME_SIZE);
    return new Mark.Text(Place.saying(said), Ink.SOFT, name, Face.ITALIC, NAME_SIZE, x, y);
  }

  /**
   * A ruled line for each of the others, with a tick below it where something is written for them.
   */
  private List<Mark> otherLines() {
    List<Mark> marks = new ArrayList<>();
    for (int line = 0; line < others.size(); line++) {
      OtherLine other = others.get(line);
      double y = otherY(line);
      Place place = Place.saying(other.name());
      named(marks, other.name(), y);
      for (int i = 0; i < system.steps(); i++) {
        int step = system.firstStep() + i;
        if (other.steps().contains(step)) {
          double x = system.xOf(step);
          double end = y + MarkShapes.WRITTEN;
          marks.add(new Mark.Line(place, Ink.RULE, x, y, x, end, RULE, false));
        }
      }
    }
    return marks;
  }

  /** Sets the bracket under the bar that sounds, or takes it away. */
  void bar(int bar) {
    bracket.setVisible(has(bar));
    if (has(bar)) {
      int inLine = bar - system.firstBar();
      double half = bracket.getStrokeWidth() / 2;
      double left = edge(inLine, false) + half;
      double right = edge(inLine + 1, true) - half;
      double y = pixels.nearest(underLanes() * space - half) + half;
      MarkShapes.bracket(bracket, left, right, y, pixels.nearest(y - 0.7 * space));
    }
  }

  /**
   * The outer edge of a bar line as it is drawn, pixels.
   *
   * @param line counted from 0, where the first bar begins
   * @param right true for its right edge
   */
  private double edge(int line, boolean right) {
    double device = pixels.each();
    PixelGrid grid = new PixelGrid(space, device);
    double x = system.barLines().get(line);
    for (Mark mark : system.marks()) {
      if (mark instanceof Mark.Line one && one.x1() == one.x2() && stands(one, x)) {
        long from = grid.left(one.x1(), one.thickness());
        return (right ? from + grid.across(one.thickness()) : from) / device;
      }
    }
    return pixels.nearest(x * space);
  }

  private static boolean stands(Mark.Line line, double x) {
    return Math.abs(line.x1() - x) < SAME || Math.abs(line.box().right() - x) < SAME;
  }

  /** The marks of a bar that is over, in the lane of the player whose they are. */
  void marks(int lane, int bar, List<BarMark> marks) {
    Node made = MarkShapes.of(marks, system, palette, space, pixels);
    made.setTranslateY(lane * pixels.nearest(LANE * space));
    made.setAccessibleRole(AccessibleRole.TEXT);
    String spoken = SpokenLine.of(bar, marks, said);
    made.setAccessibleText(readers.size() > 1 ? readers.get(lane) + ": " + spoken : spoken);
    replace(markNodes, new LaneBar(lane, bar), made);
  }

  /** What the others were heard to play in a bar, by their names. */
  void heard(int bar, Map<String, List<BarMark>> played) {
    Group group = new Group();
    for (int line = 0; line < others.size(); line++) {
      String name = others.get(line).name();
      List<BarMark> theirs = played.getOrDefault(name, List.of());
      if (!theirs.isEmpty()) {
        Node made = MarkShapes.heard(theirs, system, otherY(line), palette, space, pixels);
        made.setAccessibleRole(AccessibleRole.TEXT);
        made.setAccessibleText(name + ": " + SpokenLine.of(bar, theirs, said));
        group.getChildren().add(made);
      }
    }
    replace(heardNodes, bar, group);
  }

  private <K> void replace(Map<K, Node> nodes, K place, Node made) {
    Node before = nodes.put(place, made);
    if (before != null) {
      laid.getChildren().remove(before);
    }
    laid.getChildren().add(made);
  }

  /**
   * Takes a player's marks away.
   *
   * @param andHeard whether what was heard of the others goes with them
   */
  void clearMarks(int lane, boolean andHeard) {
    markNodes
        .entrySet()
        .removeIf(one -> one.getKey().lane() == lane && laid.getChildren().remove(one.getValue()));
    if (andHeard) {
      laid.getChildren().removeAll(heardNodes.values());
      heardNodes.clear();
    }
  }
}
