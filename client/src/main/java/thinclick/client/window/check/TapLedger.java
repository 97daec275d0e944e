package thinclick.client.window.check;

import java.util.List;
import javafx.scene.Group;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.shape.Line;
import javafx.scene.shape.Rectangle;
import org.jspecify.annotations.Nullable;
import thinclick.client.check.Verdict;
import thinclick.client.check.Verdict.Known;

/**
 * The taps of a check, a line each from the first down to the last: a tick where it fell, to the
 * right where it came late; behind them the band in which the delay lies.
 */
final class TapLedger extends Pane {
  private static final double ROW = 5;
  private static final double TICK = 4;

  /** A thin rule stands above every so many taps. */
  private static final int RULED = 4;

  private static final double MARGIN_MILLIS = 25;

  private @Nullable Verdict verdict;

  TapLedger() {
    getStyleClass().add("ledger");
    setMinHeight(Region.USE_PREF_SIZE);
    widthProperty().addListener(any -> draw());
  }

  void show(@Nullable Verdict shown) {
    verdict = shown;
    setPrefHeight(shown == null ? 0 : shown.offsets().size() * ROW + 2 * ROW);
    draw();
  }

  private void draw() {
    getChildren().clear();
    Verdict shown = verdict;
    if (shown == null || shown.offsets().isEmpty() || getWidth() <= 0) {
      return;
    }
    List<Double> offsets = shown.offsets();
    double low = Math.min(0, offsets.stream().mapToDouble(v -> v).min().orElse(0)) - MARGIN_MILLIS;
    double high = Math.max(0, offsets.stream().mapToDouble(v -> v).max().orElse(0)) + MARGIN_MILLIS;
    double scale = getWidth() / (high - low);
    double height = offsets.size() * ROW + 2 * ROW;
    Group marks = new Group();
    if (shown instanceof Known known) {
      double from = known.latencyMillis() - known.uncertaintyMillis();
      Rectangle band =
          new Rectangle((from - low) * scale, 0, 2 * known.uncertaintyMillis() * scale, height);
      band.getStyleClass().add("ledger-band");
      marks.getChildren().add(band);
    }
    marks.getChildren().add(line((0 - low) * scale, 0, height, "ledger-zero"));
    for (int i = 0; i < offsets.size(); i += RULED) {
      double y = ROW + i * ROW - 0.5;
      Line rule = new Line(0, y, getWidth(), y);
      rule.getStyleClass().add("ledger-rule");
      marks.getChildren().add(rule);
    }
    for (int i = 0; i < offsets.size(); i++) {
      double y = ROW + i * ROW;
      marks.getChildren().add(line((offsets.get(i) - low) * scale, y, y + TICK, "ledger-tick"));
    }
    getChildren().add(marks);
  }

  private static Line line(double x, double fromY, double toY, String style) {
    Line line = new Line(x, fromY, x, toY);
    line.getStyleClass().add(style);
    return line;
  }
}
