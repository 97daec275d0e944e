package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** From a sheet to an understanding: passes over the players until they agree. */
final class Decoding {
  private static final int ROUNDS = 2;

  /** How much less a displaced player tells of the pulse while it is still looked for. */
  private static final double DISPLACED_DOUBT = 9;

  private static final Pulse.Freedom LOOSE =
      new Pulse.Freedom(new CommonCourse.Freedom(3, 0.15, 0.3), 1.5, false);
  private static final Pulse.Freedom FITTED =
      new Pulse.Freedom(new CommonCourse.Freedom(1.5, 0.1, 0.2), 1, true);

  private final Sheet sheet;
  private Reading[] readings;
  private final int reach;
  private Places places;
  private double ratio;

  Decoding(Sheet sheet) {
    this.sheet = sheet;
    readings = new Reading[sheet.chairs.size()];
    int farthest = 0;
    for (int i = 0; i < readings.length; i++) {
      Chair chair = sheet.chairs.get(i);
      int[] whole = chair.part.attackSteps().stream().mapToInt(Integer::intValue).toArray();
      readings[i] =
          new Reading(chair, Shifts.of(whole, sheet.stepsPerBar), ChairDecoding.FIRST_NOISE);
      int[] shifts = readings[i].shifts.shifts();
      farthest = Math.max(farthest, Math.max(-shifts[0], shifts[shifts.length - 1]));
    }
    reach = farthest + 1;
    ratio = sheet.take.swing().ratio();
    places = Places.nominal(sheet, ratio, reach);
  }

  private void lay(double swing) {
    ratio = swing;
    places = places.withRatio(sheet, swing);
  }

  Understanding understand() {
    if (sheet.take.swing().asTheBandPlays()) {
      chooseSwing();
    }
    allAlone();
    followTempo();
    int heard = 0;
    for (Reading reading : readings) {
      heard += reading.matchedCount() > 0 ? 1 : 0;
    }
    if (sheet.take.swing().asTheBandPlays()) {
      measureSwing();
    }
    if (heard > 1) {
      settleGauge();
      for (int round = 0; round < ROUNDS; round++) {
        together();
      }
      if (settleGauge()) {
        together();
        settleGauge();
      }
    }
    for (Reading reading : readings) {
      Episodes.chooseSides(sheet, places, reading);
      Episodes.weigh(sheet, places, reading);
    }
    Pulse pulse = heard > 1 ? settle() : null;
    if (sheet.take.swing().asTheBandPlays()) {
      measureSwing();
      pulse = heard > 1 ? settle() : null;
    }
    return new Understanding(sheet, readings, places, pulse, ratio);
  }

  /** Per written attack, in nats, a followed tempo must explain so much more. */
  private static final double MUCH_BETTER = 0.2;

  /** Lays the band's own tempo into silent stretches where that explains them much better. */
  private void followTempo() {
    int stage = 0;
    int stages = sheet.stageClicks.length;
    while (stage < stages) {
      if (sheet.stageClicks[stage]) {
        stage++;
        continue;
      }
      int end = stage + 1;
      while (end < stages && !sheet.stageClicks[end]) {
        end++;
      }
      followTempo(sheet.stageFrom[stage], sheet.stageFrom[end]);
      stage = end;
    }
  }

  private void followTempo(int from, int to) {
    TempoFollower follower = new TempoFollower(sheet, places, from, to);
    if (follower.written() < 8 || followsAlready(from, to)) {
      return;
    }
    boolean first = from == 0;
    double start = first ? 0 : phaseBefore(from);
    double[] bend = follower.follow(start, first ? 80 : 40, first ? 0.12 : 0.05);
    Reading[] plain = new Reading[readings.length];
    for (int i = 0; i < plain.length; i++) {
      plain[i] = readings[i].copy();
    }
    Places before = places;
    double plainEvidence = evidence(from, to);
    places = places.bentBy(sheet, from, bend);
    allAlone();
    double gain = (evidence(from, to) - plainEvidence) / follower.written();
    if (gain < MUCH_BETTER) {
      places = before;
      readings = plain;
    }
  }

  /** True where nearly all that is written was found at home, so that no other tempo is needed. */
  private boolean followsAlready(int from, int to) {
    int written = 0;
    int home = 0;
    for (Reading reading : readings) {
      for (int k = 0; k < reading.size(); k++) {
        if (reading.chair.steps[k] >= from && reading.chair.steps[k] < to) {
          written++;
          home += reading.partner[k] != Matcher.NONE && reading.shift[k] == 0 ? 1 : 0;
        }
      }
    }
    return home >= 0.97 * written;
  }

  private double evidence(int from, int to) {
    double sum = 0;
    for (Reading reading : readings) {
      for (int k = 0; k < reading.size(); k++) {
        if (reading.chair.steps[k] >= from && reading.chair.steps[k] < to) {
          sum += reading.evidence[k];
        }
      }
    }
    return sum;
  }

  /** The mean phase of the chairs just before a step, ms from its place. */
  private double phaseBefore(int step) {
    double sum = 0;
    int count = 0;
    for (Reading reading : readings) {
      for (int k = reading.size() - 1; k >= 0; k--) {
        if (reading.chair.steps[k] < step) {
          sum += reading.phase[k];
          count++;
          break;
        }
      }
    }
    return count == 0 ? 0 : sum / count;
  }

  private boolean settleGauge() {
    if (!Gauge.settle(sheet, places, readings)) {
      return false;
    }
    for (Reading reading : readings) {
      reading.match(sheet, places);
    }
    return true;
  }

  private double allAlone() {
    double evidence = 0;
    for (Reading reading : readings) {
      double one = ChairDecoding.alone(sheet, places, reading);
      evidence += swings(reading) ? one : 0;
    }
    return evidence;
  }

  private static final double[] SWINGS = {1, 1.5, 2, 3};

  /** The ratio, of a few, that explains those players best who play both steps of the pairs. */
  private void chooseSwing() {
    double best = Double.NEGATIVE_INFINITY;
    double chosen = 1;
    for (double tried : SWINGS) {
      lay(tried);
      double evidence = allAlone();
      if (evidence > best) {
        best = evidence;
        chosen = tried;
      }
    }
    lay(chosen);
  }

  private boolean swings(Reading reading) {
    int odd = 0;
    for (int step : reading.chair.steps) {
      odd += step & 1;
    }
    return odd >= SwingRatio.LEAST && reading.size() - odd >= SwingRatio.LEAST;
  }

  /** Lays in the ratio the band really plays; straight where nobody plays both kinds of step. */
  private void measureSwing() {
    List<SwingRatio.Place> places = new ArrayList<>();
    for (Reading reading : readings) {
      SwingRatio.Place place = reading.swing(sheet, this.places, ratio);
      if (place != null) {
        places.add(place);
      }
    }
    lay(places.isEmpty() ? 1 : Math.max(0.8, Math.min(4, SwingRatio.together(places).ratio())));
  }

  /** Each player again against what the others foretell, the most displaced first. */
  private void together() {
    int[] order =
        IntStream.range(0, readings.length)
            .boxed()
            .sorted(
                Comparator.comparingDouble(
                    i ->
                        -(readings[i].displacedCount()
                                + readings[i].size()
                                - readings[i].matchedCount())
                            / (double) Math.max(1, readings[i].size())))
            .mapToInt(Integer::intValue)
            .toArray();
    for (int i : order) {
      Reading reading = readings[i];
      if (reading.size() == 0 || reading.chair.attacks.length == 0) {
        continue;
      }
      Pulse others = pulse(i, LOOSE);
      double[] centre = new double[reading.size()];
      for (int k = 0; k < centre.length; k++) {
        centre[k] = others.at(reading.chair.steps[k]);
      }
      ChairDecoding.against(sheet, places, reading, centre);
    }
  }

  /** The pulse of all chairs but one. */
  private Pulse pulse(int without, Pulse.Freedom freedom) {
    int n = readings.length;
    Observed[] observed = new Observed[n];
    double[] weight = new double[n];
    double[] noise = new double[n];
    for (int i = 0; i < n; i++) {
      observed[i] =
          i == without
              ? Observed.NONE
              : readings[i].observed(sheet, places, freedom.search() ? 1 : DISPLACED_DOUBT);
      weight[i] = readings[i].chair.part.pulseWeight();
      noise[i] = readings[i].noise;
    }
    return new Pulse(sheet, places, observed, weight, noise, freedom);
  }

  /** The last smoothing and the last match, each by the other. */
  private Pulse settle() {
    Pulse pulse = pulse(-1, FITTED);
    for (int round = 0; round < 2; round++) {
      for (int i = 0; i < readings.length; i++) {
        Reading reading = readings[i];
        for (int k = 0; k < reading.size(); k++) {
          int step = reading.soundingStep(k);
          reading.phase[k] = pulse.commonAt(step) + pulse.lean(i) + pulse.ownAt(i, step);
          reading.doubt[k] = pulse.sdAt(i, step);
        }
        reading.noise = ChairDecoding.plausible(pulse.noise(i));
        reading.match(sheet, places);
      }
      pulse = pulse(-1, FITTED);
    }
    return pulse;
  }
}
