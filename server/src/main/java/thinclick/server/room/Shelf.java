package thinclick.server.room;

import java.util.List;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.json.BadInput;

/** The drills and lessons that a room can be asked for: the host's own and the stock. */
public interface Shelf {
  /**
   * The drill of a title, in any case and with hyphens for spaces.
   *
   * @throws BadInput where there is none, with the nearest titles
   */
  Drill drill(String title);

  /** All drills, the host's own first. */
  List<Drill> drills();

  /** True where a drill is the host's own and not of the stock. */
  boolean own(Drill drill);

  /** All lessons, the host's own first. */
  List<Lesson> lessons();
}
