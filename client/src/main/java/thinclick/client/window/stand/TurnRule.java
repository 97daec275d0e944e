package thinclick.client.window.stand;

import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.paint.Color;
import javafx.scene.shape.Line;
import javafx.scene.shape.Rectangle;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.text.Text;
import thinclick.client.window.look.Faces;
import thinclick.client.window.look.Palette;

/**
 * The band between the two halves of a page that is being turned: at its end words that say where
 * the reading goes on, or what is over; at its beginning what clicks below it, where the words that
 * say so have been turned away.
 */
final class TurnRule {
  private static final double SIZE = 1.45;
  private static final double HIGH = 1.8;

  /** Where there is room: the deepest letters stand clear of the lower line in small music too. */
  private static final double HIGHEST = 2.3;

  /** What stays free above it and below it together before it is any higher. */
  private static final double AROUND = 1.5;

  private static final double THICK = 0.13;

  /** From the middle of the tallest and the deepest letters down to their foot, of the size. */
  private static final double MIDDLE_TO_FOOT = 0.25;

  private final Text words = new Text();
  private final Text reminder = new Text();
  private final Rectangle band = new Rectangle();
  private final Line upper = new Line();
  private final Line lower = new Line();
  private final Group root = new Group(band, upper, lower, reminder, words);

  TurnRule() {
    root.setVisible(false);
    root.setAccessibleRole(AccessibleRole.TEXT);
    words.setTextOrigin(VPos.BASELINE);
    words.setId("turn-says");
    reminder.setTextOrigin(VPos.BASELINE);
    reminder.setId("turn-reminds");
  }

  Node root() {
    return root;
  }

  void hide() {
    root.setVisible(false);
  }

  /**
   * What stands on it.
   *
   * @param end where the reading goes on, or what is over
   * @param reminds what clicks below it; empty where that is said there
   * @param left where these words begin, pixels
   */
  record Said(String end, String reminds, double left) {}

  /**
   * Where it stands, pixels.
   *
   * @param from where the music above it ends
   * @param to where the music below it begins
   * @param least how far these are apart at the least on any page: it is as high on all of them
   * @param wide the page
   */
  record Gap(double from, double to, double least, double wide) {}

  /**
   * Stands across the page, as far from the music above it as from that below it.
   *
   * @param space a staff space, pixels
   * @param pixels of the screen on which it is seen
   */
  void show(Said said, Gap gap, double space, Palette palette, DevicePixels pixels) {
    Color ink = Color.web(Palette.web(palette.ink()));
    double thick = Math.max(1 / pixels.each(), pixels.nearest(THICK * space));
    double y = (gap.from() + gap.to()) / 2;
    double high = Math.max(HIGH * space, Math.min(HIGHEST * space, gap.least() - AROUND * space));
    double top = pixels.nearest(y - high / 2);
    double bottom = pixels.nearest(y + high / 2);
    band.setY(top);
    band.setWidth(gap.wide());
    band.setHeight(bottom - top);
    band.setFill(Color.web(Palette.web(palette.band())));
    words.setText(said.end());
    words.setFont(Faces.SEMIBOLD.at(SIZE * space));
    words.setFill(ink);
    words.setY((top + bottom) / 2 + MIDDLE_TO_FOOT * SIZE * space);
    words.setX(gap.wide() - words.getLayoutBounds().getWidth() - space);
    reminder.setText(said.reminds());
    reminder.setFont(words.getFont());
    reminder.setFill(ink);
    reminder.setY(words.getY());
    reminder.setX(said.left());
    double end = said.left() + reminder.getLayoutBounds().getWidth();
    reminder.setVisible(end < words.getX() - space);
    line(upper, top + thick / 2, gap.wide(), thick, ink);
    line(lower, bottom - thick / 2, gap.wide(), thick, ink);
    root.setAccessibleText((said.reminds() + " " + said.end()).strip());
    root.setVisible(true);
  }

  private static void line(Line line, double y, double wide, double thick, Color ink) {
    line.setStartY(y);
    line.setEndY(y);
    line.setEndX(wide);
    line.setStroke(ink);
    line.setStrokeWidth(thick);
    line.setStrokeLineCap(StrokeLineCap.BUTT);
  }
}
