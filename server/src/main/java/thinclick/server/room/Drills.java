package thinclick.server.room;

import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;

/** The drills that a room can be asked for by title. */
@FunctionalInterface
public interface Drills {
  /**
   * The drill of a title, in any case and with hyphens for spaces.
   *
   * @throws BadInput where there is none, with the nearest titles
   */
  Drill find(String title);
}
