package thinclick.client.window.session;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import thinclick.client.link.PlayedAttack;
import thinclick.protocol.file.Attack;
import thinclick.server.scoring.Onsets;

/** The attacks of one take as this window knows them: its own, and those it heard of others. */
public final class OwnTake {
  private final String takeId;
  private final List<Own> own = new ArrayList<>();
  private final Onsets asPlayed = new Onsets();
  private final Map<String, List<Long>> others = new HashMap<>();

  /** An own attack: its room time, and what was struck. */
  private record Own(long micros, PlayedAttack attack) {}

  OwnTake(String takeId) {
    this.takeId = takeId;
  }

  /** The take they belong to; empty for none. */
  public String takeId() {
    return takeId;
  }

  /**
   * An own attack.
   *
   * @return true where it counts by itself, so far as is known when it is played
   */
  boolean played(long roomMicros, PlayedAttack attack) {
    int at = own.size();
    while (at > 0 && own.get(at - 1).micros() > roomMicros) {
      at--;
    }
    own.add(at, new Own(roomMicros, attack));
    return !asPlayed.aside(roomMicros / 1e3, attack.pitch());
  }

  void heard(String playerId, long roomMicros) {
    insert(others.computeIfAbsent(playerId, id -> new ArrayList<>()), roomMicros);
  }

  /** Own attacks that count, room time, ascending: a chord or a double trigger is one. */
  public List<Long> counted() {
    return Onsets.counted(ownAttacks("")).stream().map(Attack::micros).toList();
  }

  /**
   * Own attacks as a take has them, ascending, with what chords and doubles are told by. How late
   * the stamps may be is left to the part's uncertainty.
   */
  public List<Attack> ownAttacks(String player) {
    return own.stream()
        .map(
            one ->
                new Attack(
                    player,
                    one.micros(),
                    one.attack().velocity(),
                    one.attack().pitch(),
                    null,
                    null,
                    false,
                    false))
        .toList();
  }

  /** A fellow player's attacks that count, as far as they were heard, room time, ascending. */
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
