package thinclick.client.window.review;

import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.WidthFirst;
import thinclick.server.picture.Drawing;
import thinclick.server.picture.Easel;

/**
 * A drawing that is made anew for the width it is given, so that its words are as large as those of
 * the page around it: a wider page holds more of it, and larger text makes it higher.
 */
public final class FittedDrawing extends WidthFirst {
  private final DoubleFunction<Drawing> draws;
  private final Palette palette;
  private final double unit;
  private @Nullable Drawing drawn;
  private @Nullable Drawing shown;

  /**
   * Shows a drawing.
   *
   * @param draws makes it for a width in its own units
   * @param textSize of the page's running text, pixels
   */
  public FittedDrawing(DoubleFunction<Drawing> draws, Palette palette, double textSize) {
    this.draws = draws;
    this.palette = palette;
    this.unit = textSize / Easel.BODY;
  }

  private Drawing at(double width) {
    double units = Math.max(1, width / unit);
    Drawing now = drawn;
    if (now == null || now.width() != units) {
      now = draws.apply(units);
      drawn = now;
    }
    return now;
  }

  @Override
  protected double heightAt(double width) {
    return at(width).height() * unit;
  }

  @Override
  protected double computePrefWidth(double height) {
    return drawn == null ? 0 : drawn.width() * unit;
  }

  @Override
  protected void place() {
    Drawing wanted = at(getWidth());
    if (!wanted.equals(shown)) {
      shown = wanted;
      getChildren().setAll(new DrawingNode(wanted, palette));
    }
    getChildren().get(0).resizeRelocate(0, 0, getWidth(), getHeight());
  }
}
