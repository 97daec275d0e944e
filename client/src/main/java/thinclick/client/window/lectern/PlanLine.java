package thinclick.client.window.lectern;

import java.util.List;
import javafx.geometry.Orientation;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Palette;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.ClickPlan;

/**
 * The click plan as one ruled line: bar lines hang below it, a click stands above it, and a double
 * line parts the stages. All clicks are of one height: what thins is how many there are.
 */
final class PlanLine extends Region {
  private static final double HEIGHT_EMS = 2.6;

  private final Canvas canvas = new Canvas();
  private @Nullable Drill drill;
  private Palette palette = Palette.LIGHT;
  private double em = 15;

  PlanLine() {
    getChildren().add(canvas);
    setMinWidth(0);
  }

  void show(@Nullable Drill now, String spoken) {
    drill = now;
    setAccessibleText(spoken);
    paint();
  }

  void dress(Palette wanted, double textSize) {
    palette = wanted;
    em = textSize;
    requestLayout();
    paint();
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected double computePrefHeight(double width) {
    return HEIGHT_EMS * em;
  }

  @Override
  protected double computeMinHeight(double width) {
    return HEIGHT_EMS * em;
  }

  @Override
  protected double computePrefWidth(double height) {
    return 10 * em;
  }

  @Override
  protected void layoutChildren() {
    paint();
  }

  private void paint() {
    double width = Math.floor(getWidth());
    double height = HEIGHT_EMS * em;
    canvas.setWidth(width);
    canvas.setHeight(height);
    GraphicsContext pen = canvas.getGraphicsContext2D();
    pen.clearRect(0, 0, width, height);
    Drill shown = drill;
    if (shown == null || width < 20) {
      return;
    }
    ClickPlan plan = new ClickPlan(shown.stages());
    int perBar = shown.stepsPerBar();
    double left = 1.5;
    double barWidth = (width - left - 4) / plan.bars();
    double middle = Math.round(height * 0.6) + 0.5;
    pen.setStroke(Color.web(Palette.web(palette.rule())));
    pen.setLineWidth(1);
    if (barWidth > 3) {
      for (int bar = 0; bar <= plan.bars(); bar++) {
        double x = at(left + bar * barWidth);
        pen.strokeLine(x, middle, x, middle + em * 0.35);
      }
    }
    pen.setStroke(Color.web(Palette.web(palette.ink())));
    pen.strokeLine(left, middle, left + plan.bars() * barWidth, middle);
    for (int i = 0; i < plan.stages().size(); i++) {
      double from = left + plan.fromBar(i) * barWidth;
      clicks(
          pen,
          plan.stages().get(i).clickedSteps(shown.meter(), shown.stepsPerBeat()),
          from,
          barWidth / perBar,
          middle);
      double x = at(from);
      pen.setLineWidth(1);
      pen.strokeLine(x, middle - em, x, middle + em * 0.7);
      pen.strokeLine(x + 2, middle - em, x + 2, middle + em * 0.7);
    }
  }

  private void clicks(
      GraphicsContext pen, List<Long> steps, double from, double stepWidth, double middle) {
    pen.setLineWidth(Math.max(1, Math.min(2.5, stepWidth * 0.8)));
    for (long step : steps) {
      double x = at(from + 4 + step * stepWidth);
      pen.strokeLine(x, middle - 1, x, middle - em * 0.62);
    }
    pen.setLineWidth(1);
  }

  private static double at(double x) {
    return Math.floor(x) + 0.5;
  }
}
