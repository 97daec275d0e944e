package thinclick.client.window.session;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.StepGrid;

/**
 * What of a take can be shown bar by bar once a bar is over: the own attacks against the pulse of
 * the band, against the written grid while nobody else is heard, and what the others played.
 */
public final class BandMarks {
  private final StepGrid grid;
  private final Part own;
  private final Take take;
  private final Map<String, Long> latest = new HashMap<>();
  private final Set<Attack> taken = new HashSet<>();
  private PulseMarks pulse;

  private BandMarks(Take take, Part own) {
    this.take = take;
    this.grid = take.grid();
    this.own = own;
    this.pulse = new PulseMarks(take, own);
  }

  /** Those of the announced take; null where there is no take or no own part in it. */
  public static @Nullable BandMarks of(RoomState room) {
    Take take = room.take();
    Part own = room.ownPart();
    return take == null || own == null ? null : new BandMarks(take, own);
  }

  private record Attack(String player, long micros) {}

  /**
   * Takes in all that was played by the end of a bar and is known by now. Attacks of one player are
   * judged in order: where one was so long on its way that later ones were, all are judged anew.
   */
  public void hear(RoomState room, OwnTake played, int bar) {
    long until = BarMarks.overMicros(grid, bar);
    List<Attack> known = new ArrayList<>(of(own.player(), played.counted(), until));
    for (String id : played.heardIds()) {
      known.addAll(of(room.nameOf(id), played.of(id), until));
    }
    if (known.stream().anyMatch(this::overtaken)) {
      pulse = new PulseMarks(take, own);
      taken.clear();
    }
    known.stream()
        .filter(taken::add)
        .sorted(Comparator.comparingLong(Attack::micros))
        .forEach(
            attack -> {
              pulse.hear(attack.player(), attack.micros());
              latest.merge(attack.player(), attack.micros(), Math::max);
            });
  }

  private boolean overtaken(Attack attack) {
    Long last = latest.get(attack.player());
    return last != null && attack.micros() < last && !taken.contains(attack);
  }

  private static List<Attack> of(String player, List<Long> attacks, long until) {
    return attacks.stream()
        .takeWhile(micros -> micros <= until)
        .map(micros -> new Attack(player, micros))
        .toList();
  }

  /**
   * The own marks of a bar that was heard.
   *
   * @param plainMillis how far from its place an attack is neither early nor late
   */
  public List<BarMark> of(OwnTake take, int bar, double plainMillis) {
    if (own.freeAt(bar)) {
      return List.of(); // what is played freely is neither right nor wrong
    }
    return pulse.known()
        ? pulse.of(bar, plainMillis)
        : BarMarks.of(grid, own.attackSteps(), take.counted(), bar, plainMillis);
  }

  /**
   * What each of the others was heard to play in a bar, by their names: on its true place what
   * answers what is written for them, what they added, and what they dropped as far as that can be
   * known here.
   */
  public Map<String, List<BarMark>> others(RoomState room, OwnTake take, int bar) {
    Map<String, List<BarMark>> heard = new HashMap<>();
    for (String id : take.heardIds()) {
      String name = room.nameOf(id);
      heard.put(name, pulse.heardOf(name, bar));
    }
    return heard;
  }
}
