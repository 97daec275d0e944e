package thinclick.server.material;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.Meter;

/**
 * How the beats of a bar stand together where clicks are thinned: 4/4 as 2+2, 7/4 as 2+2+3. Common
 * practice, no source.
 *
 * @param sizes beats in each group, in order
 */
record BeatGroups(List<Integer> sizes) {
  BeatGroups {
    sizes = List.copyOf(sizes);
  }

  /** The usual groups of a meter, or those that a drill states. */
  static BeatGroups of(Meter meter, @Nullable List<Integer> stated) {
    if (stated != null) {
      return new BeatGroups(stated);
    }
    return new BeatGroups(
        switch (meter.beatsPerBar()) {
          case 2 -> List.of(2);
          case 3 -> List.of(2, 1);
          case 4 -> List.of(2, 2);
          case 5 -> List.of(3, 2);
          case 6 -> List.of(3, 3);
          default -> List.of(2, 2, 3);
        });
  }

  /** The first beat of each group, from 1. */
  List<Integer> firsts() {
    List<Integer> firsts = new ArrayList<>();
    int beat = 1;
    for (int size : sizes) {
      firsts.add(beat);
      beat += size;
    }
    return firsts;
  }

  /** The last beat of each group, from 1. */
  List<Integer> lasts() {
    List<Integer> lasts = new ArrayList<>();
    int beat = 0;
    for (int size : sizes) {
      beat += size;
      lasts.add(beat);
    }
    return lasts;
  }

  /** Beats a bar. */
  int beats() {
    return sizes.stream().mapToInt(Integer::intValue).sum();
  }
}
