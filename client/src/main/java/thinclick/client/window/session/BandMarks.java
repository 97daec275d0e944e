package thinclick.client.window.session;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
  private final PulseMarks pulse;
  private final Map<String, Integer> taken = new HashMap<>();

  private BandMarks(Take take, Part own) {
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

  /** Takes in all that was played by the end of a bar and is known by now. */
  public void hear(RoomState room, OwnTake take, int bar) {
    long until = BarMarks.overMicros(grid, bar);
    List<Attack> fresh = new ArrayList<>();
    take(fresh, own.player(), take.counted(), until);
    for (String id : take.heardIds()) {
      take(fresh, room.nameOf(id), take.of(id), until);
    }
    fresh.sort((one, other) -> Long.compare(one.micros(), other.micros()));
    fresh.forEach(attack -> pulse.hear(attack.player(), attack.micros()));
  }

  private void take(List<Attack> fresh, String player, List<Long> attacks, long until) {
    int from = taken.getOrDefault(player, 0);
    int to = from;
    while (to < attacks.size() && attacks.get(to) <= until) {
      fresh.add(new Attack(player, attacks.get(to)));
      to++;
    }
    taken.put(player, to);
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

  /** What each of the others was heard to play in a bar, in written steps from bar 1. */
  public Map<String, List<Double>> others(RoomState room, OwnTake take, int bar) {
    int first = bar * grid.stepsPerBar();
    Map<String, List<Double>> heard = new HashMap<>();
    for (String id : take.heardIds()) {
      List<Double> steps = new ArrayList<>();
      for (long micros : take.of(id)) {
        int step = PulseMarks.nearest(grid, micros);
        if (!BarMarks.beforeBarOne(grid, micros)
            && step >= first
            && step < first + grid.stepsPerBar()) {
          steps.add(step + (micros - grid.microsAt(step)) / grid.stepMicros());
        }
      }
      heard.put(room.nameOf(id), steps);
    }
    return heard;
  }
}
