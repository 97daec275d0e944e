package thinclick.client.window.review;

import java.util.List;
import javafx.geometry.Orientation;
import javafx.scene.AccessibleRole;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import javafx.scene.shape.Rectangle;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.text.Text;
import javafx.scene.transform.Scale;
import thinclick.client.window.look.Faces;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.PictureParts;
import thinclick.server.engraving.Face;
import thinclick.server.picture.Drawing;
import thinclick.server.picture.Tint;

/**
 * A drawing on the page: as wide as the page lets it be, in the colours of the window. The page is
 * its ground.
 */
public final class DrawingNode extends Pane implements PictureParts {
  private final Drawing drawing;
  private final List<Part> parts;
  private final Group items = new Group();
  private final Scale scale = new Scale(1, 1);

  /** Shows a drawing. */
  public DrawingNode(Drawing drawing, Palette palette) {
    this.drawing = drawing;
    parts = DrawnParts.of(drawing);
    items.setManaged(false);
    items.getTransforms().add(scale);
    for (Drawing.Item item : drawing.items()) {
      boolean ground =
          item instanceof Drawing.Box box
              && box.width() >= drawing.width()
              && box.height() >= drawing.height();
      if (!ground) {
        items.getChildren().add(node(item, palette));
      }
    }
    getChildren().add(items);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    setAccessibleText(drawing.says());
    setMinWidth(0);
  }

  @Override
  public List<Part> parts() {
    double fit = fit(getWidth());
    return parts.stream().map(part -> new Part(part.top() * fit, part.foot() * fit)).toList();
  }

  private double fit(double width) {
    return width / drawing.width();
  }

  @Override
  protected double computePrefWidth(double height) {
    return drawing.width();
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected double computePrefHeight(double width) {
    return drawing.height() * fit(width < 0 ? drawing.width() : width);
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  @Override
  protected void layoutChildren() {
    double fit = fit(getWidth());
    scale.setX(fit);
    scale.setY(fit);
  }

  private static Node node(Drawing.Item item, Palette palette) {
    Color color = color(item.tint(), palette);
    if (item instanceof Drawing.Line line) {
      Line node = new Line(line.x1(), line.y1(), line.x2(), line.y2());
      node.setStroke(color);
      node.setStrokeWidth(line.thickness());
      node.setStrokeLineCap(StrokeLineCap.BUTT);
      if (line.dashed()) {
        node.getStrokeDashArray().setAll(4.0, 3.0);
      }
      return node;
    }
    if (item instanceof Drawing.Box box) {
      Rectangle node = new Rectangle(box.x(), box.y(), box.width(), box.height());
      node.setFill(color);
      return node;
    }
    if (item instanceof Drawing.Disc disc) {
      return new Circle(disc.x(), disc.y(), disc.radius(), color);
    }
    Drawing.Words words = (Drawing.Words) item;
    Text node = new Text(words.left(), words.y(), words.text());
    node.setFont(face(words.face()).at(words.size()));
    node.setFill(color);
    return node;
  }

  private static Faces face(Face face) {
    return switch (face) {
      case REGULAR -> Faces.TEXT;
      case ITALIC -> Faces.ITALIC;
      case SEMIBOLD -> Faces.SEMIBOLD;
    };
  }

  private static Color color(Tint tint, Palette palette) {
    int colour =
        switch (tint) {
          case PAPER -> palette.sheet();
          case SHEET -> palette.paper();
          case BAND -> palette.band();
          case INK -> palette.ink();
          case SOFT -> palette.soft();
          case EARLY -> palette.early();
          case LATE -> palette.late();
          case RULE -> palette.rule();
        };
    return Color.web(Palette.web(colour));
  }
}
