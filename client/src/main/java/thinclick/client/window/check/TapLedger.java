package thinclick.client.window.check;

import static thinclick.client.window.look.Styled.styled;

import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.Group;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.shape.Line;
import javafx.scene.shape.Rectangle;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import org.jspecify.annotations.Nullable;
import thinclick.client.check.Verdict;
import thinclick.client.check.Verdict.Known;
import thinclick.client.window.words.Words;

/**
 * The taps of a check, a line each from the first down to the last: a tick where it fell, to the
 * right where it came late; behind them the band in which the delay lies, below them the
 * milliseconds.
 */
final class TapLedger extends Pane {
  /** Its figures beside running text. */
  private static final double FIGURE_SIZE = 0.85;

  private static final double ROW_EMS = 0.4;

  /** Two pixels wide beside text of the usual size, and never as wide as it is high. */
  private static final double TICK_EMS = 0.155;

  private static final double WIDEST_TICK = 0.8;

  /** A tick is seen at this height still, pixels. */
  private static final double LEAST_ROW = 4;

  /** A thin rule stands above every so many taps. */
  private static final int RULED = 4;

  private static final double MARGIN_MILLIS = 25;

  /** What the scale may count by, milliseconds. */
  private static final List<Integer> COUNTS = List.of(10, 20, 50, 100, 200, 500);

  /** So far apart its figures stand at least, and so high is its line. */
  private static final double FIGURE_EMS = 5;

  private static final double SCALE_EMS = 1.6;

  private static final String MINUS = "\u2212";

  private final Words words;
  private Font font = Font.getDefault();
  private double room = Double.MAX_VALUE;
  private @Nullable Verdict verdict;

  TapLedger(Words words) {
    this.words = words;
    getStyleClass().add("ledger");
    setMinHeight(Region.USE_PREF_SIZE);
    widthProperty().addListener(any -> draw());
  }

  void show(@Nullable Verdict shown) {
    verdict = shown;
    draw();
  }

  /** In which letters its figures stand. */
  void dress(Font figures) {
    font = Font.font(figures.getName(), figures.getSize() * FIGURE_SIZE);
    draw();
  }

  /** How high it is to be at most, pixels, as long as its ticks can be seen. */
  void within(double height) {
    if (height > 0 && height != room) {
      room = height;
      draw();
    }
  }

  private double row() {
    Verdict shown = verdict;
    int rows = shown == null ? 1 : shown.offsets().size() + 2;
    double fits = Math.floor((room - SCALE_EMS * font.getSize()) / rows);
    return Math.max(LEAST_ROW, Math.min(Math.rint(ROW_EMS * font.getSize()), fits));
  }

  private void draw() {
    getChildren().clear();
    Verdict shown = verdict;
    List<Double> offsets = shown == null ? List.of() : shown.offsets();
    double height = (offsets.size() + 2) * row();
    setPrefHeight(offsets.isEmpty() ? 0 : height + SCALE_EMS * font.getSize());
    if (offsets.isEmpty() || getWidth() <= 0) {
      return;
    }
    double low = Math.min(0, offsets.stream().mapToDouble(v -> v).min().orElse(0)) - MARGIN_MILLIS;
    double high = Math.max(0, offsets.stream().mapToDouble(v -> v).max().orElse(0)) + MARGIN_MILLIS;
    double across = getWidth() / (high - low);
    Group marks = new Group();
    if (shown instanceof Known known) {
      double from = known.latencyMillis() - known.uncertaintyMillis();
      Rectangle band =
          new Rectangle((from - low) * across, 0, 2 * known.uncertaintyMillis() * across, height);
      marks.getChildren().add(styled(band, "ledger-band"));
    }
    for (int i = 0; i < offsets.size(); i += RULED) {
      double y = row() + i * row() - 0.5;
      marks.getChildren().add(styled(new Line(0, y, getWidth(), y), "ledger-rule"));
    }
    marks.getChildren().add(line(-low * across, 0, height, "ledger-zero"));
    for (int i = 0; i < offsets.size(); i++) {
      double y = row() + i * row();
      double x = (offsets.get(i) - low) * across;
      Line tick = line(x, y, y + row() - 1, "ledger-tick");
      tick.setStrokeWidth(Math.min(TICK_EMS * font.getSize(), WIDEST_TICK * (row() - 1)));
      marks.getChildren().add(tick);
    }
    scale(marks, low, high, across, height);
    getChildren().add(marks);
  }

  /** Milliseconds from the click, as far apart as they are read well. */
  private void scale(Group marks, double low, double high, double across, double top) {
    int by =
        COUNTS.stream()
            .filter(count -> count * across >= FIGURE_EMS * font.getSize())
            .findFirst()
            .orElse(COUNTS.get(COUNTS.size() - 1));
    double y = Math.round(top) + 0.5;
    marks.getChildren().add(styled(new Line(0, y, getWidth(), y), "ledger-zero"));
    for (int millis = (int) Math.ceil(low / by) * by; millis <= high; millis += by) {
      double x = (millis - low) * across;
      marks.getChildren().add(line(x, y, y + row(), "ledger-zero"));
      Text figure =
          styled(
              new Text(words.say("figure.millis", (millis < 0 ? MINUS : "") + Math.abs(millis))),
              "ledger-figure");
      figure.getStyleClass().add("ledger-figure-" + millis);
      figure.setFont(font);
      figure.setTextOrigin(VPos.TOP);
      double width = figure.getLayoutBounds().getWidth();
      figure.setX(Math.max(0, Math.min(getWidth() - width, x - width / 2)));
      figure.setY(y + row());
      marks.getChildren().add(figure);
    }
  }

  private static Line line(double x, double fromY, double toY, String style) {
    Line line = styled(new Line(x, fromY, x, toY), style);
    line.setStrokeLineCap(StrokeLineCap.BUTT); // a tick is no higher than its row
    return line;
  }
}
