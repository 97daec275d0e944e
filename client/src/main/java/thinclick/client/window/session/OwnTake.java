package thinclick.client.window.session;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The attacks of one take as this window knows them: its own, and those it heard of others. */
public final class OwnTake {
  private final String takeId;
  private final List<Long> own = new ArrayList<>();
  private final Map<String, List<Long>> others = new HashMap<>();

  OwnTake(String takeId) {
    this.takeId = takeId;
  }

  /** The take they belong to; empty for none. */
  public String takeId() {
    return takeId;
  }

  void played(long roomMicros) {
    insert(own, roomMicros);
  }

  void heard(String playerId, long roomMicros) {
    insert(others.computeIfAbsent(playerId, id -> new ArrayList<>()), roomMicros);
  }

  /** Own attacks, room time, ascending. */
  public List<Long> own() {
    return List.copyOf(own);
  }

  /** A fellow player's attacks as far as they were heard, room time, ascending. */
  public List<Long> of(String playerId) {
    return List.copyOf(others.getOrDefault(playerId, List.of()));
  }

  /** The ids of those who were heard. */
  public Set<String> heardIds() {
    return Set.copyOf(others.keySet());
  }

  private static void insert(List<Long> ascending, long micros) {
    int at = ascending.size();
    while (at > 0 && ascending.get(at - 1) > micros) {
      at--;
    }
    ascending.add(at, micros);
  }
}
