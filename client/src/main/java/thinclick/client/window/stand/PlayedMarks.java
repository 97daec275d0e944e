package thinclick.client.window.stand;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import thinclick.client.window.session.BarMark;

/** What was played in the bars that are over, kept so that lines laid out anew show it as well. */
final class PlayedMarks {
  /** Of one staff and one of its readers, in a bar. */
  private record Place(int staff, int lane, int bar) {}

  private final Map<Place, List<BarMark>> marks = new HashMap<>();
  private final Map<Integer, Map<String, List<BarMark>>> heard = new HashMap<>();

  /** A player's marks of a bar. */
  void mark(int staff, int lane, int bar, List<BarMark> made) {
    marks.put(new Place(staff, lane, bar), made);
  }

  /** What was heard of the others in a bar, by their names; false where that was known. */
  boolean hear(int bar, Map<String, List<BarMark>> played) {
    return !played.equals(heard.put(bar, played));
  }

  /** Forgets what all readers of a staff played, and what was heard of the others. */
  void forget(int staff) {
    marks.keySet().removeIf(at -> at.staff() == staff);
    heard.clear();
  }

  /**
   * Forgets what a player played.
   *
   * @param andHeard whether what was heard of the others goes with it
   */
  void forget(int staff, int lane, boolean andHeard) {
    marks.keySet().removeIf(at -> at.staff() == staff && at.lane() == lane);
    if (andHeard) {
      heard.clear();
    }
  }

  /**
   * Lays all of it over a line of a staff.
   *
   * @param andHeard whether what was heard of the others belongs below this line
   */
  void show(SystemView line, int staff, boolean andHeard) {
    marks.forEach(
        (at, made) -> {
          if (at.staff() == staff && line.has(at.bar())) {
            line.marks(at.lane(), at.bar(), made);
          }
        });
    if (andHeard) {
      heard.forEach(
          (bar, played) -> {
            if (line.has(bar)) {
              line.heard(bar, played);
            }
          });
    }
  }
}
