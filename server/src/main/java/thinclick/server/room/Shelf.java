package thinclick.server.room;

import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage.LibraryList;

/** The drills and lessons that a room can be asked for: the host's own and the stock. */
public interface Shelf {
  /**
   * The drill of a title, in any case and with hyphens for spaces.
   *
   * @throws BadInput where there is none, with the nearest titles
   */
  Drill drill(String title);

  /**
   * All drills and lessons in lines, the host's own first: the same object as long as nothing has
   * changed, so that what is made of it need not be made for everybody who asks.
   */
  LibraryList list();
}
