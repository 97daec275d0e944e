package thinclick.client.window.stand;

import java.util.List;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.paint.Color;
import javafx.scene.shape.LineTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.Path;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.StrokeLineJoin;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.BarMark;
import thinclick.client.window.session.BarMark.Kind;
import thinclick.server.engraving.StaffSystem;

/**
 * The marks below the ruled beats, each at its true offset in time: a plain tick, a tick with a
 * foot to the left (early) or right (late), an open caret where nothing was played, a hanging dash
 * where nothing was written.
 */
final class MarkShapes {
  private static final double TOP = 0.3;
  private static final double TICK = 1.5;
  private static final double FOOT = 0.75;
  private static final double HEARD = 0.9;
  private static final double WRITTEN = 0.65;
  private static final double FINE = 0.13;

  private MarkShapes() {}

  static Node of(
      List<BarMark> marks, StaffSystem system, Palette palette, double space, DevicePixels pixels) {
    Group group = new Group();
    for (BarMark mark : marks) {
      group.getChildren().add(shape(mark, system, palette, space, pixels));
    }
    return group;
  }

  private static Node shape(
      BarMark mark, StaffSystem system, Palette palette, double space, DevicePixels pixels) {
    double written = system.xOf(mark.step());
    boolean where = mark.kind() == Kind.DROPPED; // nothing was played that could be off
    double x = where ? written : written + mark.offSteps() * system.stepWidth();
    return shape(mark.kind(), x * space, (system.height() + TOP) * space, palette, space, pixels);
  }

  /** A mark by itself, as it stands below the beats, to be explained. */
  static Node alone(Kind kind, Palette palette, double space, DevicePixels pixels) {
    return shape(kind, 0, 0, palette, space, pixels);
  }

  private static Path shape(
      Kind kind, double x, double top, Palette palette, double space, DevicePixels pixels) {
    double width = pixels.nearest(Math.max(2, space * 0.22));
    double at = crisp(x, width, pixels);
    double bottom = crisp(top + TICK * space, width, pixels);
    double foot = FOOT * space;
    Path path = new Path();
    switch (kind) {
      case PLACED -> line(path, at, top, at, bottom);
      case EARLY -> line(path, at, top, at, bottom, at - foot, bottom);
      case LATE -> line(path, at, top, at, bottom, at + foot, bottom);
      case DROPPED ->
          line(path, x - foot * 0.8, bottom, x, bottom - foot * 1.4, x + foot * 0.8, bottom);
      case ADDED -> line(path, x - foot * 0.7, bottom, x + foot * 0.7, bottom);
    }
    int colour =
        switch (kind) {
          case EARLY -> palette.early();
          case LATE -> palette.late();
          case PLACED, DROPPED, ADDED -> palette.ink();
        };
    path.setStroke(Color.web(Palette.web(colour)));
    path.setStrokeWidth(width);
    path.setStrokeLineCap(StrokeLineCap.BUTT);
    path.setStrokeLineJoin(StrokeLineJoin.MITER);
    return path;
  }

  /** What was heard of another player: a plain tick on their line. */
  static Node heard(double x, double y, Palette palette, double space, DevicePixels pixels) {
    Path path = new Path();
    double width = pixels.nearest(Math.max(2, space * 0.18));
    double at = crisp(x * space, width, pixels);
    line(path, at, (y - HEARD) * space, at, (y + HEARD / 2) * space);
    path.setStroke(Color.web(Palette.web(palette.soft())));
    path.setStrokeWidth(width);
    path.setStrokeLineCap(StrokeLineCap.BUTT);
    return path;
  }

  /** What is written for another player: a fine tick that stands on their line. */
  static Node written(double x, double y, Palette palette, double space, DevicePixels pixels) {
    Path path = new Path();
    double width = Math.max(1 / pixels.each(), pixels.nearest(FINE * space));
    double at = crisp(x * space, width, pixels);
    line(path, at, (y - WRITTEN) * space, at, y * space);
    path.setStroke(Color.web(Palette.web(palette.rule())));
    path.setStrokeWidth(width);
    path.setStrokeLineCap(StrokeLineCap.BUTT);
    return path;
  }

  /** The middle of a line of such a width, moved by half a pixel at most so that it is not grey. */
  private static double crisp(double middle, double width, DevicePixels pixels) {
    return pixels.nearest(middle - width / 2) + width / 2;
  }

  /**
   * A bracket that lies under a bar with its ends turned up.
   *
   * @param y its middle
   * @param end how far up they reach
   */
  static void bracket(Path path, double left, double right, double y, double end) {
    path.getElements().clear();
    line(path, left, end, left, y, right, y, right, end);
  }

  private static void line(Path path, double x, double y, double... rest) {
    path.getElements().add(new MoveTo(x, y));
    for (int i = 0; i < rest.length; i += 2) {
      path.getElements().add(new LineTo(rest[i], rest[i + 1]));
    }
  }
}
