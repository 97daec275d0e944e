package thinclick.client.window.lectern;

import java.util.List;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.PaintedStrip;
import thinclick.client.window.look.Palette;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.ClickPlan;

/**
 * The click plan as one ruled line: bar lines hang below it, a click stands above it, and a double
 * line parts the stages. All clicks are of one height: what thins is how many there are.
 */
final class PlanLine extends PaintedStrip {
  private static final double HEIGHT_EMS = 2.6;

  private @Nullable Drill drill;

  PlanLine() {
    super(10);
  }

  void show(@Nullable Drill now, String spoken) {
    drill = now;
    setAccessibleText(spoken);
    changed();
  }

  @Override
  protected double heightEms() {
    return HEIGHT_EMS;
  }

  @Override
  protected void paint(GraphicsContext pen, double width, double height) {
    Drill shown = drill;
    if (shown == null || width < 20) {
      return;
    }
    ClickPlan plan = new ClickPlan(shown.stages());
    int perBar = shown.stepsPerBar();
    double left = 1.5;
    double barWidth = (width - left - 4) / plan.bars();
    double middle = Math.round(height * 0.6) + 0.5;
    pen.setStroke(Color.web(Palette.web(palette().rule())));
    pen.setLineWidth(1);
    if (barWidth > 3) {
      for (int bar = 0; bar <= plan.bars(); bar++) {
        double x = at(left + bar * barWidth);
        pen.strokeLine(x, middle, x, middle + em() * 0.35);
      }
    }
    pen.setStroke(Color.web(Palette.web(palette().ink())));
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
      pen.strokeLine(x, middle - em(), x, middle + em() * 0.7);
      pen.strokeLine(x + 2, middle - em(), x + 2, middle + em() * 0.7);
    }
  }

  private void clicks(
      GraphicsContext pen, List<Long> steps, double from, double stepWidth, double middle) {
    pen.setLineWidth(Math.max(1, Math.min(2.5, stepWidth * 0.8)));
    for (long step : steps) {
      double x = at(from + 4 + step * stepWidth);
      pen.strokeLine(x, middle - 1, x, middle - em() * 0.62);
    }
    pen.setLineWidth(1);
  }

  private static double at(double x) {
    return Math.floor(x) + 0.5;
  }
}
