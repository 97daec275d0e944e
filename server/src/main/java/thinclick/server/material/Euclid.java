package thinclick.server.material;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.Check;

/**
 * Euclidean cells: so many attacks as evenly as they go into so many steps, by Bjorklund's way of
 * sharing out (Toussaint 2005, BRIDGES, pp. 47-56). Sharing stops when at most one group is left
 * over; a few of the published strings are rotations of what comes out then.
 */
public final class Euclid {
  private Euclid() {}

  /** The cell of {@code attacks} attacks in {@code steps} steps, an attack on its first step. */
  public static Drill.Cell cell(int attacks, int steps) {
    Check.range("euclid steps", steps, 1L, 96);
    Check.range("euclid attacks", attacks, 1L, steps);
    List<List<Boolean>> heads = copies(attacks, true);
    List<List<Boolean>> rests = copies(steps - attacks, false);
    while (rests.size() > 1) {
      int pairs = Math.min(heads.size(), rests.size());
      List<List<Boolean>> joined = new ArrayList<>();
      for (int i = 0; i < pairs; i++) {
        List<Boolean> pair = new ArrayList<>(heads.get(i));
        pair.addAll(rests.get(i));
        joined.add(pair);
      }
      List<List<Boolean>> left =
          heads.size() > pairs
              ? heads.subList(pairs, heads.size())
              : rests.subList(pairs, rests.size());
      rests = new ArrayList<>(left);
      heads = joined;
    }
    List<Integer> at = new ArrayList<>();
    int step = 0;
    for (List<List<Boolean>> groups : List.of(heads, rests)) {
      for (List<Boolean> group : groups) {
        for (boolean attack : group) {
          if (attack) {
            at.add(step);
          }
          step++;
        }
      }
    }
    return Drill.Cell.of(steps, at);
  }

  private static List<List<Boolean>> copies(int count, boolean attack) {
    List<List<Boolean>> copies = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      copies.add(List.of(attack));
    }
    return copies;
  }
}
