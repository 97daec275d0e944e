package thinclick.client.window.stand;

import java.util.List;
import thinclick.client.window.look.Look;
import thinclick.server.engraving.Engraver;
import thinclick.server.engraving.Face;
import thinclick.server.engraving.Mark;

/**
 * How large the title of a page is: it grows with all text and not with the music, so that it is
 * the same on every page; the words over the click, which do grow with the music, are no larger.
 */
final class TitleSize {
  /** Ems of running text, as the style sheet has it for every heading. */
  private static final double EMS = 1.25;

  private TitleSize() {}

  /**
   * In pixels.
   *
   * @param textScale of all text, 1 is usual
   */
  static double pixels(double textScale) {
    return EMS * Look.USUAL_TEXT * textScale;
  }

  /**
   * Marks of a line as they are drawn: the words over the click begin or end where they did.
   *
   * @param space a staff space, pixels
   * @param title how large the title is, pixels
   */
  static List<Mark> noLarger(List<Mark> marks, double space, double title) {
    double size = title / space;
    return size >= Engraver.DIRECTION_SIZE
        ? marks
        : marks.stream().map(mark -> noLarger(mark, size)).toList();
  }

  private static Mark noLarger(Mark mark, double size) {
    if (!(mark instanceof Mark.Text text) || text.size() != Engraver.DIRECTION_SIZE) {
      return mark;
    }
    Mark.Text smaller =
        new Mark.Text(text.place(), text.ink(), text.text(), text.face(), size, text.x(), text.y());
    // How often it is played ends with its line.
    boolean atEnd = text.face() == Face.ITALIC;
    return atEnd ? smaller.shifted(text.width() - smaller.width(), 0) : smaller;
  }
}
