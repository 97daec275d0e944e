package thinclick.server.engraving;

import java.util.List;

/**
 * A page, laid out.
 *
 * @param widthMm its width, millimetres
 * @param heightMm its height, millimetres
 * @param spaceMm how large a staff space is, millimetres
 * @param title what it is called where pages are listed or read aloud
 * @param marks all that is drawn, in staff spaces from its upper left corner
 */
public record Page(
    double widthMm, double heightMm, double spaceMm, String title, List<Mark> marks) {
  public Page {
    marks = List.copyOf(marks);
  }
}
