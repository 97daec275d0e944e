package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.music.Meter;

/**
 * Where a bar may be cut: its beats and the groups they stand in.
 *
 * @param meter the meter
 * @param stepsPerBeat 2, 3, 4 or 6
 * @param groups how many beats stand together, in order; they add up to the bar
 */
record BarGrid(Meter meter, int stepsPerBeat, List<Integer> groups) {
  BarGrid {
    meter.checkStepsPerBeat(stepsPerBeat);
    groups = List.copyOf(groups);
    int beats = groups.stream().mapToInt(Integer::intValue).sum();
    if (beats != meter.beatsPerBar()) {
      throw new IllegalArgumentException(
          "groups " + groups + " add up to " + beats + ", not to the beats of " + meter);
    }
  }

  /**
   * The groups that a bar is written in; 3/4 and 9/8 stay one group. Common practice, no source.
   */
  static BarGrid of(Meter meter, int stepsPerBeat) {
    List<Integer> groups =
        switch (meter.beatsPerBar()) {
          case 4 -> List.of(2, 2);
          case 5 -> List.of(3, 2);
          case 6 -> List.of(3, 3);
          case 7 -> List.of(2, 2, 3);
          default -> List.of(meter.beatsPerBar());
        };
    return new BarGrid(meter, stepsPerBeat, groups);
  }

  int stepsPerBar() {
    return meter.stepsPerBar(stepsPerBeat);
  }

  boolean onBeat(int position) {
    return position % stepsPerBeat == 0;
  }

  /** The first steps of the groups and the end of the bar. */
  List<Integer> groupBounds() {
    List<Integer> bounds = new ArrayList<>(List.of(0));
    int at = 0;
    for (int group : groups) {
      at += group * stepsPerBeat;
      bounds.add(at);
    }
    return bounds;
  }

  /** The group that a step of the bar stands in. */
  int groupAt(int position) {
    List<Integer> bounds = groupBounds();
    int group = 0;
    while (position >= bounds.get(group + 1)) {
      group++;
    }
    return group;
  }

  /** Sixteenths in a beat, outside tuplets: 4, or 6 where the beat is a dotted quarter. */
  int sixteenthsPerBeat() {
    return meter.compound() ? 6 : 4;
  }
}
