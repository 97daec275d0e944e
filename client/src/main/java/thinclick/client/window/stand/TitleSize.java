package thinclick.client.window.stand;

import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import thinclick.client.window.look.Look;
import thinclick.server.engraving.Engraver;

/**
 * How large the title of a page is: never smaller than the words over the click, which grow with
 * the music.
 */
final class TitleSize {
  /** Where the music is not large, ems of running text. */
  private static final double USUAL_EMS = 1.25;

  /** Where a title stands: there it becomes no smaller, or it could move the music for ever. */
  private record Place(String title, double width, double height, double scale) {}

  private Place place = new Place("", 0, 0, 0);
  private double pixels;

  /**
   * Sets the size. Where another title or another page is looked at for the first time, the music
   * below may still be that of before: the size is the usual one until the next time.
   *
   * @param page on which the title stands
   * @param scale of all text, 1 is usual
   * @param space a staff space of the music below, pixels; 0 where there is none
   * @param turned whether one of several parts is in view that has been turned to: whichever is,
   *     the title stays as it was
   */
  void fit(Label title, Region page, double scale, double space, boolean turned) {
    Place now = new Place(title.getText(), page.getWidth(), page.getHeight(), scale);
    if (turned && now.equals(place)) {
      return;
    }
    double words = Math.ceil(Engraver.DIRECTION_SIZE * space);
    pixels = now.equals(place) ? Math.max(pixels, words) : 0;
    place = now;
    boolean larger = pixels > USUAL_EMS * Look.USUAL_TEXT * scale;
    title.setStyle(larger ? "-fx-font-size: " + pixels + "px;" : "");
  }
}
