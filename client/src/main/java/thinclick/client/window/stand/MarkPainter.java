package thinclick.client.window.stand;

import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.shape.StrokeLineCap;
import thinclick.client.window.look.Faces;
import thinclick.client.window.look.Palette;
import thinclick.server.engraving.Face;
import thinclick.server.engraving.Ink;
import thinclick.server.engraving.Mark;

/** Draws what the layout gives on the pixels of the screen, mark by mark; in staff spaces. */
public final class MarkPainter {
  private final GraphicsContext canvas;
  private final Palette palette;
  private final double space;
  private final DevicePixels pixels;
  private final PixelGrid grid;

  /**
   * @param space pixels of one staff space
   * @param pixels of the screen on which the canvas is seen
   */
  public MarkPainter(GraphicsContext canvas, Palette palette, double space, DevicePixels pixels) {
    this.canvas = canvas;
    this.palette = palette;
    this.space = space;
    this.pixels = pixels;
    this.grid = new PixelGrid(space, pixels.each());
    canvas.setTextBaseline(VPos.BASELINE);
    canvas.setLineCap(StrokeLineCap.BUTT);
  }

  /** Draws marks where they stand; those of a staff together. */
  public void draw(List<Mark> marks) {
    grid.fit(marks).forEach(this::draw);
  }

  private void draw(Mark mark) {
    Color colour = colour(mark.ink());
    canvas.setFill(colour);
    canvas.setStroke(colour);
    if (mark instanceof Mark.Sign sign) {
      canvas.setFont(Faces.MUSIC.at(4 * sign.scale() * space));
      canvas.fillText(sign.glyph().text(), sign.x() * space, sign.y() * space);
    } else if (mark instanceof Mark.Line line) {
      line(line);
    } else if (mark instanceof Mark.Shape shape) {
      shape(shape);
    } else if (mark instanceof Mark.Text text) {
      canvas.setFont(face(text.face()).at(text.size() * space));
      canvas.fillText(text.text(), text.x() * space, text.y() * space);
    }
  }

  private void line(Mark.Line line) {
    canvas.setLineWidth(line.thickness() * space);
    if (line.dotted()) {
      double dot = line.thickness() * space;
      double period = pixels.nearest(Mark.Line.DOT_PERIOD * space);
      canvas.setLineDashes(dot, Math.max(dot, period - dot));
    } else {
      canvas.setLineDashes((double[]) null);
    }
    canvas.strokeLine(line.x1() * space, line.y1() * space, line.x2() * space, line.y2() * space);
  }

  private void shape(Mark.Shape shape) {
    canvas.beginPath();
    canvas.moveTo(shape.x() * space, shape.y() * space);
    for (Mark.Curve curve : shape.curves()) {
      canvas.bezierCurveTo(
          curve.x1() * space,
          curve.y1() * space,
          curve.x2() * space,
          curve.y2() * space,
          curve.x() * space,
          curve.y() * space);
    }
    canvas.closePath();
    canvas.fill();
  }

  private Color colour(Ink ink) {
    int colour =
        switch (ink) {
          case FULL -> palette.ink();
          case SOFT -> palette.soft();
          case RULE -> palette.rule();
        };
    return Color.web(Palette.web(colour));
  }

  private static Faces face(Face face) {
    return switch (face) {
      case REGULAR -> Faces.TEXT;
      case ITALIC -> Faces.ITALIC;
      case SEMIBOLD -> Faces.SEMIBOLD;
    };
  }
}
