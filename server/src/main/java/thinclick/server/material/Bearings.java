package thinclick.server.material;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.music.Meter;

/** Where every attack stands: in the bar, and in the grouping. */
public final class Bearings {
  private Bearings() {}

  /** A bearing for each attack. */
  public static List<Bearing> of(
      List<Integer> attacks, List<Group> groups, Meter meter, int stepsPerBeat) {
    int perBar = meter.stepsPerBar(stepsPerBeat);
    List<Bearing> bearings = new ArrayList<>();
    int group = 0;
    for (int step : attacks) {
      while (group < groups.size() && groups.get(group).toStep() <= step) {
        group++;
      }
      boolean inside = group < groups.size() && groups.get(group).fromStep() <= step;
      int inGroup = inside ? step - groups.get(group).fromStep() + 1 : 0;
      int size = inside ? groups.get(group).toStep() - groups.get(group).fromStep() : 0;
      int inBar = step % perBar;
      bearings.add(
          new Bearing(
              step,
              step / perBar,
              inBar / stepsPerBeat + 1,
              Places.place(inBar, meter, stepsPerBeat),
              inside ? group : -1,
              inGroup,
              size,
              inside ? inGroup + " of " + size : null));
    }
    return List.copyOf(bearings);
  }
}
