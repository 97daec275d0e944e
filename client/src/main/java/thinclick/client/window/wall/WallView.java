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

  private static final double LARGE = 0.34;
  private static final double LARGEST = 0.4;
  static final double MARGIN = 0.06;

  /** Closer than this, a share of the height, a line and an outline run into each other. */
  private static final double LEAST_GAP = 0.012;

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
      root.setAccessibleText(now.spoken());
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
    if (!page.ribbon().isEmpty()) {
      line(pen, page.above(), 0.18, 0.15, palette.ink());
      line(pen, page.below(), 0.93, 0.1, palette.ink());
      ribbon(pen);
      return;
    }
    // Words alone stand in the middle of the page, however many lines they are.
    boolean over = !page.above().isEmpty();
    boolean under = !page.below().isEmpty();
    line(pen, page.above(), under ? 0.21 : 0.3, 0.1, palette.ink());
    double large = over == under ? 0.61 : over ? 0.72 : 0.53;
    line(pen, page.large(), large, under && !over ? LARGEST : LARGE, palette.ink());
    line(pen, page.below(), over ? 0.88 : 0.77, over ? SMALL : 0.1, palette.ink());
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
    pen.setFill(colour(ink));
    pen.setFont(Faces.SEMIBOLD.at(fitting * height));
    pen.fillText(text, root.getWidth() / 2, baseline * height);
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
    RibbonPlaces places =
        RibbonPlaces.on(page, width, height, MARGIN, text -> width(text, LEAST * height));
    pen.setLineCap(StrokeLineCap.BUTT);
    whole(pen, places);
    for (int i = 0; i < places.stages().size(); i++) {
      stretch(pen, page.ribbon().get(i), places.stages().get(i), places);
    }
    pen.setStroke(colour(palette.ink()));
    pen.setLineWidth(outline(height));
    pen.strokeLine(width * MARGIN, places.floor(), width * (1 - MARGIN), places.floor());
    if (page.held() >= 0 && page.held() < places.stages().size()) {
      RibbonPlaces.Span held = places.held(page);
      bracket(pen, held.left(), held.right(), places.bracket());
    }
    captions(pen, places);
  }

  /** What was held whole would reach up to here, one line over all; none where all all but do. */
  private void whole(GraphicsContext pen, RibbonPlaces places) {
    double height = root.getHeight();
    double least = page.ribbon().stream().mapToDouble(WallPage.Stretch::holdShare).min().orElse(1);
    double missing = (places.floor() - places.top()) * (1 - Math.max(0, least));
    if (missing < height * LEAST_GAP) {
      return;
    }
    double edge = outline(height) / 2; // as wide as the stretches with their outlines
    RibbonPlaces.Span first = places.stages().get(0);
    RibbonPlaces.Span last = places.stages().get(places.stages().size() - 1);
    double right = last.left() + last.width() + edge;
    pen.setStroke(colour(palette.rule()));
    pen.setLineWidth(Math.max(1, height * 0.003));
    pen.strokeLine(first.left() - edge, places.top(), right, places.top());
  }

  private static double outline(double height) {
    return Math.max(2, height * 0.005);
  }

  /** A stretch of paper as high as it was held, hatched as densely as it clicked. */
  private void stretch(
      GraphicsContext pen, WallPage.Stretch stretch, RibbonPlaces.Span span, RibbonPlaces places) {
    double height = root.getHeight();
    double held = (places.floor() - places.top()) * Math.max(0, Math.min(1, stretch.holdShare()));
    if (held <= 0) {
      return;
    }
    double x = span.left();
    double roof = places.floor() - held;
    pen.setFill(colour(palette.band()));
    pen.fillRect(x, roof, span.width(), held);
    pen.save();
    pen.beginPath();
    pen.rect(x, roof, span.width(), held);
    pen.clip();
    pen.setStroke(colour(palette.soft()));
    pen.setLineWidth(Math.max(1, height * 0.003));
    double distance = height * (0.02 + 0.12 / (1 + stretch.clicksPerBar()));
    for (double at = x - held; at < x + span.width(); at += distance) {
      pen.strokeLine(at, places.floor(), at + held, roof);
    }
    pen.restore();
    pen.setStroke(colour(palette.ink()));
    pen.setLineWidth(outline(height));
    pen.strokeRect(x, roof, span.width(), held);
  }

  private void bracket(GraphicsContext pen, double left, double right, double top) {
    double height = root.getHeight();
    double foot = top + height * RibbonPlaces.BRACKET;
    pen.setStroke(colour(palette.ink()));
    pen.setLineWidth(Math.max(2, height * 0.006));
    pen.strokePolyline(
        new double[] {left, left, right, right}, new double[] {top, foot, foot, top}, 4);
  }

  /** How well each stage was held and what clicked in it, under its middle; or the key. */
  private void captions(GraphicsContext pen, RibbonPlaces places) {
    Captions captions = places.captions();
    double size = LEAST * captions.size() * root.getHeight();
    pen.setFill(colour(palette.ink()));
    pen.setFont(Faces.SEMIBOLD.at(size));
    for (int i = 0; i < captions.figures().size(); i++) {
      pen.fillText(captions.figures().get(i), places.stages().get(i).middle(), places.figures());
    }
    for (int i = 0; i < captions.clicks().size(); i++) {
      lines(pen, captions.clicks().get(i), places.stages().get(i).middle(), places);
    }
    if (!captions.key().isEmpty()) {
      double widest =
          captions.key().stream().mapToDouble(text -> width(text, size)).max().orElse(0);
      double left = (root.getWidth() - places.toKey() - widest) / 2;
      fits &= left >= 0;
      double foot = places.words() - size * CAPITAL_EMS * 0.25;
      double top = foot - root.getHeight() * RibbonPlaces.BRACKET;
      bracket(pen, left, left + places.sign(), top);
      lines(pen, captions.key(), left + places.toKey() + widest / 2, places);
    }
  }

  private static void lines(
      GraphicsContext pen, List<String> lines, double middle, RibbonPlaces places) {
    for (int i = 0; i < lines.size(); i++) {
      pen.fillText(lines.get(i), middle, places.words() + i * places.line());
    }
  }

  private static Color colour(int colour) {
    return Color.web(Palette.web(colour));
  }
}
