package thinclick.server.scoring;

import java.util.Arrays;

/**
 * Follows the tempo of the whole band through silence: where nobody clicks people may play a
 * quarter slower and be many steps late, all together, and still be with each other.
 *
 * <p>A forward-backward pass over (position, tempo) on a grid whose window of positions moves with
 * the band, over all written attacks of all chairs at once, in blocks so that memory stays bounded.
 */
final class TempoFollower {
  private static final int TEMPOS = 31;
  private static final double TEMPO_GRAIN = 0.02; // share of a step, a step
  private static final int HALF = 36;
  private static final int WIDTH = 2 * HALF + 1;
  private static final int BLOCK = 384;
  private static final int AHEAD = 64;
  private static final double DROP = 0.12;

  private final Sheet sheet;
  private final Places places;
  private final Chair[] chairs;
  private final int from;
  private final int to;
  private final double bin;
  private final double noise;

  /** Chairs' written attacks in the order of steps: chair and step, and where each step begins. */
  private final int[] steps;

  private final int[] firstOf;
  private final int[] chairOf;

  TempoFollower(Sheet sheet, Places places, int from, int to) {
    this.sheet = sheet;
    this.places = places;
    this.from = from;
    this.to = to;
    chairs = sheet.chairs.toArray(new Chair[0]);
    bin = sheet.stepMillis / 24;
    noise = Math.max(1.5 * bin, Math.min(35, 0.2 * sheet.stepMillis));
    long[] all =
        Arrays.stream(chairs)
            .filter(chair -> chair.attacks.length > 0)
            .flatMapToLong(
                chair -> {
                  int index = sheet.chairs.indexOf(chair);
                  return Arrays.stream(chair.steps)
                      .filter(step -> step >= from && step < to)
                      .mapToLong(step -> ((long) step << 8) | index);
                })
            .sorted()
            .toArray();
    int count = 0;
    int[] stepsFound = new int[all.length];
    int[] first = new int[all.length + 1];
    chairOf = new int[all.length];
    for (int i = 0; i < all.length; i++) {
      int step = (int) (all[i] >> 8);
      chairOf[i] = (int) (all[i] & 255);
      if (count == 0 || stepsFound[count - 1] != step) {
        first[count] = i;
        stepsFound[count++] = step;
      }
    }
    steps = Arrays.copyOf(stepsFound, count);
    firstOf = Arrays.copyOf(first, count + 1);
    firstOf[count] = all.length;
  }

  /** Written attacks in the stretch. */
  int written() {
    return chairOf.length;
  }

  /**
   * The band's distance from the laid places at each step of the stretch, ms.
   *
   * @param startMillis where the band stood before
   * @param startDoubt SD of that
   * @param tempoDoubt SD of the tempo at the beginning, as a share
   */
  double[] follow(double startMillis, double startDoubt, double tempoDoubt) {
    double[] position = new double[steps.length];
    float[] state = new float[WIDTH * TEMPOS];
    int centre = (int) Math.rint(startMillis / bin);
    start(state, startMillis - centre * bin, startDoubt, tempoDoubt);
    int begin = 0;
    while (begin < steps.length) {
      int end = Math.min(steps.length, begin + BLOCK);
      int ahead = Math.min(steps.length, end + AHEAD);
      float[][] forward = new float[ahead - begin][];
      float[][] likely = new float[ahead - begin][];
      int[] centres = new int[ahead - begin];
      for (int e = begin; e < ahead; e++) {
        if (e > 0) {
          int moved = drift(state);
          state = move(state, steps[e] - steps[e - 1], moved);
          centre += moved;
        }
        centres[e - begin] = centre;
        likely[e - begin] = emit(e, centre);
        multiply(state, likely[e - begin]);
        forward[e - begin] = state.clone();
      }
      float[] back = new float[WIDTH * TEMPOS];
      Arrays.fill(back, 1);
      for (int e = ahead - 1; e >= begin; e--) {
        if (e < end) {
          position[e] = (centres[e - begin] + mean(forward[e - begin], back)) * bin;
        }
        if (e > begin) {
          multiply(back, likely[e - begin]);
          back =
              moveBack(back, steps[e] - steps[e - 1], centres[e - begin] - centres[e - begin - 1]);
        }
      }
      state = forward[end - 1 - begin];
      centre = centres[end - 1 - begin];
      begin = end;
    }
    return perStep(position, startMillis);
  }

  private double[] perStep(double[] position, double startMillis) {
    double[] bend = new double[to - from];
    if (steps.length == 0) {
      Arrays.fill(bend, startMillis);
      return bend;
    }
    int e = 0;
    for (int step = from; step < to; step++) {
      while (e + 1 < steps.length && steps[e + 1] <= step) {
        e++;
      }
      if (step <= steps[0]) {
        double slope = slope(position, 0, Math.min(steps.length - 1, 8));
        bend[step - from] = position[0] - slope * (steps[0] - step);
      } else if (e + 1 < steps.length) {
        double share = (double) (step - steps[e]) / (steps[e + 1] - steps[e]);
        bend[step - from] = position[e] + share * (position[e + 1] - position[e]);
      } else {
        double slope = slope(position, Math.max(0, e - 8), e);
        bend[step - from] = position[e] + slope * (step - steps[e]);
      }
    }
    return bend;
  }

  private double slope(double[] position, int a, int b) {
    return steps[b] == steps[a] ? 0 : (position[b] - position[a]) / (steps[b] - steps[a]);
  }

  private void start(float[] state, double mean, double doubt, double tempoDoubt) {
    for (int b = 0; b < TEMPOS; b++) {
      double tempo = (b - TEMPOS / 2) * TEMPO_GRAIN / tempoDoubt;
      for (int x = 0; x < WIDTH; x++) {
        double z = ((x - HALF) * bin - mean) / doubt;
        state[b * WIDTH + x] =
            (float) (Math.exp(-tempo * tempo / 2) * (Math.exp(-z * z / 2) + 1e-4));
      }
    }
    normalise(state);
  }

  private static void normalise(float[] state) {
    double sum = 0;
    for (int base = 0; base < state.length; base += WIDTH) {
      float row = 0;
      for (int x = 0; x < WIDTH; x++) {
        row += state[base + x];
      }
      sum += row;
    }
    float scale = (float) (1 / sum);
    if (!(sum > 1e-30)) {
      Arrays.fill(state, 1f / state.length);
      return;
    }
    for (int i = 0; i < state.length; i++) {
      state[i] *= scale;
    }
  }

  private static void multiply(float[] state, float[] likely) {
    for (int base = 0; base < state.length; base += WIDTH) {
      for (int x = 0; x < WIDTH; x++) {
        state[base + x] *= likely[x];
      }
    }
    normalise(state);
  }

  /** By how many bins the window moves on, so that the band stays near its middle. */
  private static int drift(float[] state) {
    double mean = 0;
    for (int base = 0; base < state.length; base += WIDTH) {
      for (int x = 0; x < WIDTH; x++) {
        mean += state[base + x] * (x - HALF);
      }
    }
    return Math.abs(mean) > HALF / 4.0 ? (int) Math.rint(mean) : 0;
  }

  private static double mean(float[] forward, float[] back) {
    double sum = 0;
    double weights = 0;
    for (int base = 0; base < forward.length; base += WIDTH) {
      for (int x = 0; x < WIDTH; x++) {
        double w = forward[base + x] * back[base + x];
        weights += w;
        sum += w * (x - HALF);
      }
    }
    return weights > 0 ? sum / weights : 0;
  }

  /** How likely the tempo moves by one grain within a gap. */
  private static float turn(int gap) {
    return (float) Math.min(0.3, 0.03 * gap);
  }

  /**
   * Where one tempo's places lie, and how far they move within a gap.
   *
   * @param begins the index of its first place
   * @param slower of the next slower tempo's, its own where there is none
   * @param faster of the next faster tempo's, its own where there is none
   * @param whole by how many places they move, rounded down
   * @param part what is left of a place, 0 to 1
   */
  private record Row(int begins, int slower, int faster, int whole, float part) {}

  private Row row(int tempo, int gap, int moved) {
    double shift = (tempo - TEMPOS / 2) * TEMPO_GRAIN * gap * sheet.stepMillis / bin - moved;
    int whole = (int) Math.floor(shift);
    int begins = tempo * WIDTH;
    return new Row(
        begins,
        tempo > 0 ? begins - WIDTH : begins,
        tempo + 1 < TEMPOS ? begins + WIDTH : begins,
        whole,
        (float) (shift - whole));
  }

  private float[] move(float[] state, int gap, int moved) {
    float turn = turn(gap);
    float stays = 1 - 2 * turn;
    float[] next = new float[state.length];
    for (int b = 0; b < TEMPOS; b++) {
      Row row = row(b, gap, moved);
      int here = row.begins();
      int whole = row.whole();
      float part = row.part();
      int first = Math.max(0, -whole);
      int last = Math.min(WIDTH - 1, WIDTH - 1 - whole);
      for (int x = Math.max(0, first - 1); x <= last; x++) {
        float mass =
            stays * state[here + x] + turn * (state[row.slower() + x] + state[row.faster() + x]);
        int to = here + x + whole;
        if (x >= first) {
          next[to] += (1 - part) * mass;
        }
        if (x < WIDTH - 1 - whole) {
          next[to + 1] += part * mass;
        }
      }
    }
    return next;
  }

  private float[] moveBack(float[] back, int gap, int moved) {
    float turn = turn(gap);
    float stays = 1 - 2 * turn;
    float[] before = new float[back.length];
    for (int b = 0; b < TEMPOS; b++) {
      Row row = row(b, gap, moved);
      int here = row.begins();
      int whole = row.whole();
      float part = row.part();
      int first = Math.max(0, -1 - whole);
      int last = Math.min(WIDTH - 1, WIDTH - 1 - whole);
      for (int x = first; x <= last; x++) {
        int from = x + whole;
        float value = from >= 0 ? (1 - part) * back[here + from] : 0;
        if (from < WIDTH - 1) {
          value += part * back[here + from + 1];
        }
        before[here + x] += stays * value;
        before[row.slower() + x] += turn * value;
        before[row.faster() + x] += turn * value;
      }
    }
    normalise(before);
    return before;
  }

  /** How likely each position makes what was played around one step. */
  private float[] emit(int e, int centre) {
    double[] likely = new double[WIDTH];
    Arrays.fill(likely, 1);
    double at = places.at(steps[e]) + centre * bin;
    double reach = HALF * bin + 3 * noise;
    for (int i = firstOf[e]; i < firstOf[e + 1]; i++) {
      Chair chair = chairs[chairOf[i]];
      double[] attacks = chair.attacks;
      double rate = Math.max(1, 0.15 * chair.steps.length) / (sheet.steps * sheet.stepMillis);
      double gain = (1 - DROP) / (DROP * rate * noise * Math.sqrt(2 * Math.PI));
      double[] one = new double[WIDTH];
      Arrays.fill(one, 1);
      int seen = 0;
      for (int j = Matcher.first(attacks, at - reach);
          j < attacks.length && attacks[j] <= at + reach && seen < 12;
          j++, seen++) {
        double off = (attacks[j] - at) / bin + HALF;
        int low = Math.max(0, (int) Math.ceil(off - 3 * noise / bin));
        int high = Math.min(WIDTH - 1, (int) Math.floor(off + 3 * noise / bin));
        for (int x = low; x <= high; x++) {
          double z = (x - off) * bin / noise;
          one[x] += gain * Math.exp(-z * z / 2);
        }
      }
      double top = 0;
      for (int x = 0; x < WIDTH; x++) {
        likely[x] *= one[x];
        top = Math.max(top, likely[x]);
      }
      for (int x = 0; x < WIDTH; x++) {
        likely[x] = Math.max(1e-12, likely[x] / top);
      }
    }
    float[] found = new float[WIDTH];
    for (int x = 0; x < WIDTH; x++) {
      found[x] = (float) likely[x];
    }
    return found;
  }
}
