package thinclick.client.window.stand;

import java.util.List;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.paint.Color;
import javafx.scene.shape.LineTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.Path;
import javafx.scene.shape.Rectangle;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.StrokeLineJoin;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.BarMark;
import thinclick.client.window.session.BarMark.Kind;
import thinclick.server.engraving.StaffSystem;

/**
 * The marks below the ruled beats, each at its true offset in time: a plain tick, a tick with a
 * foot to the left (early) or right (late), an open caret where nothing was played, a dash where
 * nothing was written. A dash hangs at the upper end of the ticks, so that it is clear of a caret
 * beside it and of the line below.
 */
final class MarkShapes {
  private static final double TOP = 0.5;
  private static final double TICK = 1.5;
  private static final double FOOT = 0.75;
  private static final double HEARD = 1;
  private static final double HEARD_FOOT = 0.42;

  /** Nearer to their line than to the one above it. */
  private static final double HUNG = 0.85;

  /** From another player's line up to the foot of what was heard above it. */
  private static final double ABOVE = 0.2;

  /** How far what is written for another player hangs below their line. */
  static final double WRITTEN = 0.45;

  private static final double FINE = 0.13;

  /** Half a piece of another player's line. */
  private static final double PIECE = 0.9;

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
    double x = place(mark, system) * space;
    return shape(mark.kind(), x, (system.height() + TOP) * space, palette, space, pixels);
  }

  private static double place(BarMark mark, StaffSystem system) {
    double written = system.xOf(mark.step());
    boolean where = mark.kind() == Kind.DROPPED; // nothing was played that could be off
    return where ? written : written + mark.offSteps() * system.stepWidth();
  }

  /** A mark by itself, as it stands below the beats and as high as a tick, to be explained. */
  static Node alone(Kind kind, Palette palette, double space, DevicePixels pixels) {
    Rectangle high = new Rectangle(1, TICK * space, Color.TRANSPARENT);
    return new Group(high, shape(kind, 0, 0, palette, space, pixels));
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
      case ADDED -> {
        double hung = crisp(top + width / 2, width, pixels);
        line(path, x - foot * 0.7, hung, x + foot * 0.7, hung);
      }
    }
    int colour =
        switch (kind) {
          case EARLY -> palette.early();
          case LATE -> palette.late();
          case PLACED, DROPPED, ADDED -> palette.ink();
        };
    return drawn(path, colour, width);
  }

  /**
   * What was heard of another player in a bar, above their line so that it never runs into what is
   * written below it: a plain tick where it answers that, a caret where nothing was heard, a dash
   * where nothing was written.
   */
  static Node heard(
      List<BarMark> marks,
      StaffSystem system,
      double y,
      Palette palette,
      double space,
      DevicePixels pixels) {
    Group group = new Group();
    for (BarMark mark : marks) {
      double x = place(mark, system) * space;
      group.getChildren().add(heard(mark.kind(), x, y * space, palette, space, pixels));
    }
    return group;
  }

  /** The tick of what was heard of another player, on a piece of their line, to be explained. */
  static Node heard(Palette palette, double space, DevicePixels pixels) {
    return onLine(heard(Kind.PLACED, 0, 0, palette, space, pixels), palette, space, pixels);
  }

  /** The tick of what is written for another player, on a piece of their line, to be explained. */
  static Node written(Palette palette, double space, DevicePixels pixels) {
    double width = Math.max(1 / pixels.each(), pixels.nearest(FINE * space));
    double at = crisp(0, width, pixels);
    Path path = new Path();
    line(path, at, 0, at, WRITTEN * space);
    return onLine(drawn(path, palette.rule(), width), palette, space, pixels);
  }

  private static Node onLine(Node tick, Palette palette, double space, DevicePixels pixels) {
    double width = Math.max(1 / pixels.each(), pixels.nearest(FINE * space));
    double y = crisp(0, width, pixels);
    Path path = new Path();
    line(path, -PIECE * space, y, PIECE * space, y);
    return new Group(drawn(path, palette.rule(), width), tick);
  }

  private static Path heard(
      Kind kind, double x, double y, Palette palette, double space, DevicePixels pixels) {
    double width = pixels.nearest(Math.max(2, space * 0.18));
    double at = crisp(x, width, pixels);
    double bottom = crisp(y - ABOVE * space - width / 2, width, pixels);
    double half = HEARD_FOOT * space;
    Path path = new Path();
    switch (kind) {
      case PLACED, EARLY, LATE -> line(path, at, y - HEARD * space, at, bottom + width / 2);
      case DROPPED -> line(path, x - half, bottom, x, bottom - half * 1.1, x + half, bottom);
      case ADDED -> {
        double hung = crisp(y - HUNG * space + width / 2, width, pixels);
        line(path, x - half, hung, x + half, hung);
      }
    }
    return drawn(path, palette.soft(), width);
  }

  private static Path drawn(Path path, int colour, double width) {
    path.setStroke(Color.web(Palette.web(colour)));
    path.setStrokeWidth(width);
    path.setStrokeLineCap(StrokeLineCap.BUTT);
    path.setStrokeLineJoin(StrokeLineJoin.MITER);
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
