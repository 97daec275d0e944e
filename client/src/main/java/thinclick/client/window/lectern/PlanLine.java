package thinclick.client.window.lectern;

import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.PaintedStrip;
import thinclick.client.window.look.Palette;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.ClickPlan;

/**
 * The click plan as one ruled line: bar lines hang below it, a click stands above it, and a double
 * line parts the stages and closes the last. All clicks are of one height: what thins is how many
 * there are.
 */
final class PlanLine extends PaintedStrip {
  private static final double HEIGHT_EMS = 2.6;

  private @Nullable Drill drill;
  private int sounding = -1;

  PlanLine() {
    super(10);
  }

  void show(@Nullable Drill now, String spoken) {
    drill = now;
    setAccessibleText(spoken);
    changed();
  }

  /** Sets off the stage that sounds, for a page whose lines are not all in view; none for -1. */
  void look(int stage) {
    sounding = stage;
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
    PlanPlaces places = PlanPlaces.within(plan, width, em());
    double middle = Math.round(height * 0.6) + 0.5;
    Color rule = Color.web(Palette.web(palette().rule()));
    Color ink = Color.web(Palette.web(palette().ink()));
    if (sounding >= 0 && sounding < plan.stages().size()) {
      boolean last = sounding == plan.stages().size() - 1;
      double from = places.stage(sounding); // from one double line to the next
      double to = last ? places.end() : places.stage(sounding + 1);
      pen.setFill(Color.web(Palette.web(palette().band())));
      pen.fillRect(from, middle - em(), to - from, em() * 1.7);
    }
    for (int i = 0; i < plan.stages().size(); i++) {
      pen.setLineWidth(1);
      pen.setStroke(rule);
      if (places.barWidth() > 3) {
        for (double line : places.barLines(i)) {
          pen.strokeLine(at(line), middle, at(line), middle + em() * 0.35);
        }
      }
      pen.setStroke(ink);
      double x = at(places.stage(i));
      stroke(pen, x, middle);
      if (i > 0) {
        stroke(pen, x + 2, middle);
      }
      clicks(pen, shown, places, i, middle);
    }
    pen.setLineWidth(1);
    pen.strokeLine(places.left(), middle, places.end(), middle);
    double end = at(places.end()) - 1;
    stroke(pen, end - 2, middle);
    stroke(pen, end, middle);
  }

  private void stroke(GraphicsContext pen, double x, double middle) {
    pen.strokeLine(x, middle - em(), x, middle + em() * 0.7);
  }

  private void clicks(
      GraphicsContext pen, Drill shown, PlanPlaces places, int stage, double middle) {
    int perBar = shown.stepsPerBar();
    pen.setLineWidth(places.clickWidth(perBar));
    for (long step : shown.stages().get(stage).clickedSteps(shown.meter(), shown.stepsPerBeat())) {
      double x = at(places.bar(stage, (double) step / perBar));
      pen.strokeLine(x, middle - 1, x, middle - em() * 0.62);
    }
  }

  private static double at(double x) {
    return Math.floor(x) + 0.5;
  }
}
