package thinclick.client.window.look;

import javafx.geometry.Orientation;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;

/**
 * A picture as wide as there is room and as high as it asks for, painted anew whenever its room,
 * its look or what it shows has changed.
 */
public abstract class PaintedStrip extends Region {
  private final Canvas canvas = new Canvas();
  private final double usualEms;
  private Palette palette = Palette.LIGHT;
  private double em = 15;

  /**
   * A strip.
   *
   * @param usualEms its preferred width, in sizes of the text
   */
  protected PaintedStrip(double usualEms) {
    this.usualEms = usualEms;
    getChildren().add(canvas);
    setMinWidth(0);
  }

  /** The colours, and the size of the text in pixels. */
  public final void dress(Palette wanted, double textSize) {
    palette = wanted;
    em = textSize;
    changed();
  }

  /** The height that what is shown needs, in sizes of the text. */
  protected abstract double heightEms();

  /** Paints what is shown on a cleared ground of that size, pixels. */
  protected abstract void paint(GraphicsContext pen, double width, double height);

  /** To be called when what is shown has changed, and with it perhaps the height. */
  protected final void changed() {
    requestLayout();
    repaint();
  }

  protected final Palette palette() {
    return palette;
  }

  protected final double em() {
    return em;
  }

  @Override
  public final Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected final double computePrefHeight(double width) {
    return heightEms() * em;
  }

  @Override
  protected final double computeMinHeight(double width) {
    return heightEms() * em;
  }

  @Override
  protected final double computePrefWidth(double height) {
    return usualEms * em;
  }

  @Override
  protected final void layoutChildren() {
    repaint();
  }

  private void repaint() {
    double width = Math.floor(getWidth());
    double height = heightEms() * em;
    canvas.setWidth(width);
    canvas.setHeight(height);
    GraphicsContext pen = canvas.getGraphicsContext2D();
    pen.clearRect(0, 0, width, height);
    paint(pen, width, height);
  }
}
