package thinclick.client.window.wall;

import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;
import thinclick.client.window.look.Faces;
import thinclick.client.window.look.Palette;

/**
 * The wall as it is painted: letters that can be read across a room, and the ribbon. All sizes are
 * shares of the height; no capital is lower than {@value #LEAST_CAPITAL} of it.
 */
public final class WallView {
  /** The lowest capital, as a share of the height: legible from eight metres on a usual screen. */
  public static final double LEAST_CAPITAL = 0.045;

  /** How high a capital of the text face is, in ems. */
  private static final double CAPITAL_EMS = 0.66;

  private static final double SMALL = LEAST_CAPITAL / CAPITAL_EMS * 1.12;

  /** The smallest size of a line, in ems of the height. */
  static final double LEAST = LEAST_CAPITAL / CAPITAL_EMS;

  private static final double LARGE = 0.42;
  private static final double MARGIN = 0.06;

  private final Canvas canvas = new Canvas();
  private final Region root =
      new Region() {
        {
          getChildren().add(canvas);
        }

        @Override
        protected void layoutChildren() {
          paint();
        }
      };

  private WallPage page = WallPage.saying("", "", "");
  private Palette palette = Palette.LIGHT;
  private boolean fits = true;

  /** The page. */
  public Node root() {
    return root;
  }

  /** Shows what hangs there now. */
  public void show(WallPage now) {
    if (!now.equals(page)) {
      page = now;
      root.setAccessibleText(
          String.join(" ", now.above(), now.large(), now.below(), now.heldSays()));
      paint();
    }
  }

  /** Changes the colours. */
  public void dress(Palette wanted) {
    palette = wanted;
    paint();
  }

  /** True where all words stood within the page at a size that can be read. */
  public boolean fits() {
    return fits;
  }

  private void paint() {
    double width = root.getWidth();
    double height = root.getHeight();
    if (width < 10 || height < 10) {
      return;
    }
    fits = true;
    canvas.setWidth(width);
    canvas.setHeight(height);
    GraphicsContext pen = canvas.getGraphicsContext2D();
    pen.setFill(colour(palette.paper()));
    pen.fillRect(0, 0, width, height);
    pen.setTextAlign(TextAlignment.CENTER);
    pen.setTextBaseline(VPos.BASELINE);
    pen.setFill(colour(palette.ink()));
    boolean ribbon = !page.ribbon().isEmpty();
    line(pen, page.above(), ribbon ? 0.2 : 0.19, ribbon ? 0.15 : SMALL, palette.ink());
    if (!page.large().isEmpty()) {
      line(pen, page.large(), 0.64, LARGE, palette.ink());
    }
    line(pen, page.below(), 0.9, ribbon ? 0.1 : SMALL, palette.ink());
    if (ribbon) {
      ribbon(pen);
    }
  }

  /** One line, centred, made smaller where it would not fit, but never too small to be read. */
  private void line(GraphicsContext pen, String text, double baseline, double size, int ink) {
    if (text.isEmpty()) {
      return;
    }
    double height = root.getHeight();
    double most = root.getWidth() * (1 - 2 * MARGIN);
    double wide = width(text, size * height);
    double fitting = wide <= most ? size : Math.max(LEAST, size * most / wide);
    fits &= width(text, fitting * height) <= root.getWidth();
    double drop = (size - fitting) * CAPITAL_EMS / 2;
    pen.setFill(colour(ink));
    pen.setFont(Faces.SEMIBOLD.at(fitting * height));
    pen.fillText(text, root.getWidth() / 2, (baseline - drop) * height);
  }

  private static double width(String text, double size) {
    Text measured = new Text(text);
    Font font = Faces.SEMIBOLD.at(size);
    measured.setFont(font);
    return measured.getLayoutBounds().getWidth();
  }

  private void ribbon(GraphicsContext pen) {
    double width = root.getWidth();
    double height = root.getHeight();
    double left = width * MARGIN;
    double whole = width * (1 - 2 * MARGIN);
    int bars = page.ribbon().stream().mapToInt(WallPage.Stretch::bars).sum();
    double top = height * 0.3;
    double floor = height * 0.62;
    double x = left;
    List<WallPage.Stretch> stretches = page.ribbon();
    for (int i = 0; i < stretches.size(); i++) {
      WallPage.Stretch stretch = stretches.get(i);
      double wide = whole * stretch.bars() / bars;
      double gap = i + 1 == stretches.size() ? 0 : Math.min(height * 0.012, wide * 0.1);
      stretch(pen, stretch, x, wide - gap, top, floor);
      if (i == page.held()) {
        held(pen, x, wide - gap, floor);
      }
      x += wide;
    }
  }

  /** A stretch of paper as high as it was held, hatched as densely as it clicked. */
  private void stretch(
      GraphicsContext pen,
      WallPage.Stretch stretch,
      double x,
      double width,
      double top,
      double floor) {
    double height = root.getHeight();
    pen.setLineCap(StrokeLineCap.BUTT);
    pen.setStroke(colour(palette.rule()));
    pen.setLineWidth(Math.max(1, height * 0.002));
    pen.strokeRect(x, top, width, floor - top);
    if (stretch.holdShare() < 0) {
      return;
    }
    double held = (floor - top) * Math.min(1, stretch.holdShare());
    pen.setFill(colour(palette.band()));
    pen.fillRect(x, floor - held, width, held);
    pen.save();
    pen.beginPath();
    pen.rect(x, floor - held, width, held);
    pen.clip();
    pen.setStroke(colour(palette.soft()));
    pen.setLineWidth(Math.max(1, height * 0.003));
    double distance = height * (0.02 + 0.12 / (1 + stretch.clicksPerBar()));
    for (double at = x - held; at < x + width; at += distance) {
      pen.strokeLine(at, floor, at + held, floor - held);
    }
    pen.restore();
    pen.setStroke(colour(palette.ink()));
    pen.setLineWidth(Math.max(2, height * 0.005));
    pen.strokeRect(x, floor - held, width, held);
  }

  /** The bracket under the thinnest stage that was held, and what clicked in it. */
  private void held(GraphicsContext pen, double x, double width, double floor) {
    double height = root.getHeight();
    double y = floor + height * 0.025;
    pen.setStroke(colour(palette.ink()));
    pen.setLineWidth(Math.max(2, height * 0.006));
    pen.strokePolyline(
        new double[] {x, x, x + width, x + width},
        new double[] {y, y + height * 0.015, y + height * 0.015, y},
        4);
    String says = page.heldSays();
    if (says.isEmpty()) {
      return;
    }
    double size = SMALL * height;
    double most = root.getWidth() * (1 - 2 * MARGIN);
    double wide = width(says, size);
    if (wide > most) {
      size = Math.max(LEAST * height, size * most / wide);
      wide = width(says, size);
    }
    fits &= wide <= root.getWidth();
    double middle =
        Math.max(
            root.getWidth() * MARGIN + wide / 2,
            Math.min(root.getWidth() * (1 - MARGIN) - wide / 2, x + width / 2));
    if (wide > most) {
      middle = root.getWidth() / 2;
    }
    pen.setFill(colour(palette.ink()));
    pen.setFont(Faces.SEMIBOLD.at(size));
    pen.fillText(says, middle, y + height * 0.03 + size * 0.8);
  }

  private static Color colour(int colour) {
    return Color.web(Palette.web(colour));
  }
}
