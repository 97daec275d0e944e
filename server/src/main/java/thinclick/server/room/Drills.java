package thinclick.server.room;

import java.util.List;
import java.util.Optional;
import thinclick.protocol.file.Drill;

/** The drills that a room can be asked for by title. */
public interface Drills {
  /** The drill of a title, in any case and with hyphens for spaces. */
  Optional<Drill> find(String title);

  /** Titles nearest to one that was not found, the nearest first. */
  List<String> near(String title);
}
