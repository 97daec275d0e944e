package thinclick.server.material;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.Meter;

/**
 * How heavy each place of a bar is: the number of metrical levels that begin there, 1 for the
 * lightest. The levels are the bar, the groups of beats, the beats, and the halves or thirds of the
 * beat.
 */
public final class MetricWeights {
  private MetricWeights() {}

  /** The weight of each step of a bar. */
  public static int[] ofBar(Meter meter, int stepsPerBeat, @Nullable List<Integer> groups) {
    int[] weights = new int[meter.stepsPerBar(stepsPerBeat)];
    boolean twoLevels = stepsPerBeat == 4 || stepsPerBeat == 6;
    // Six steps are three pairs where the beat is dotted or a triplet, else they never come here.
    int inner = stepsPerBeat == 4 || stepsPerBeat == 6 ? 2 : 1;
    for (int step = 0; step < weights.length; step++) {
      weights[step] = 1;
      if (twoLevels && step % inner == 0) {
        weights[step]++;
      }
      if (step % stepsPerBeat == 0) {
        weights[step]++;
      }
    }
    BeatGroups beats = BeatGroups.of(meter, groups);
    if (beats.sizes().size() > 1) {
      for (int beat : beats.firsts()) {
        weights[(beat - 1) * stepsPerBeat]++;
      }
    }
    weights[0]++;
    return weights;
  }
}
