package thinclick.server.scoring;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import java.util.function.LongFunction;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;

/**
 * Takes as people play them: leans from -170 to +5 ms, players 100 ms apart, tempo that falls
 * without a click, a start far off the nominal tempo, flams, full rows, 13-beat takes, late
 * joiners, one tapper alone, a kit split into voices. Nobody in them is ever displaced.
 */
final class Humans {
  private static final Integer[] ALL = {1, 2, 3, 4};

  private Humans() {}

  static Map<String, LongFunction<Truth>> all() {
    Map<String, LongFunction<Truth>> all = new LinkedHashMap<>();
    all.put("tapper 30 ms ahead", Humans::tapperAhead);
    all.put("tapper far ahead", Humans::tapperFarAhead);
    all.put("tapper on the ands", Humans::tapperOnTheAnds);
    all.put("tapper, thinning click", Humans::tapperThinning);
    all.put("13 beats", Humans::thirteenBeats);
    all.put("band slows by a fifth", seed -> slowing(seed, 0.20));
    all.put("band slows by a quarter", seed -> slowing(seed, 0.25));
    all.put("band speeds up", seed -> slowing(seed, -0.15));
    all.put("start a fifth off", seed -> startOff(seed, 0.2));
    all.put("start a fifth fast", seed -> startOff(seed, -0.17));
    all.put("drift of 25 steps", Humans::longDrift);
    all.put("duo sags", Humans::duoSags);
    all.put("players 100 ms apart", Humans::apart);
    all.put("split kit", Humans::splitKit);
    all.put("split kit with click", Humans::splitKitWithClick);
    all.put("swung kit", Humans::swungKit);
    all.put("late joiner", Humans::lateJoiner);
    all.put("flams", Humans::flams);
    all.put("full rows", Humans::fullRows);
    all.put("long rests", Humans::longRests);
    all.put("silence between clicks, all drift", Humans::islandsDrift);
    return all;
  }

  private static Random random(long seed, String what) {
    return new Random(seed * 1_000_003 + what.hashCode());
  }

  private static Band band(String what, long seed, double tempo) {
    Band band = new Band();
    band.tempo = tempo;
    band.story.append(what).append(", seed ").append(seed);
    return band;
  }

  private static Band.Member member(String name, int[] steps, double lean, double noise) {
    Band.Member member = new Band.Member();
    member.name = name;
    member.steps = steps;
    member.lean = lean;
    member.noise = noise;
    return member;
  }

  private static int[] repeat(Band band, int cycle, int... cell) {
    TreeSet<Integer> steps = new TreeSet<>();
    for (int start = 0; start < band.steps(); start += cycle) {
      for (int step : cell) {
        if (start + step < band.steps()) {
          steps.add(start + step);
        }
      }
    }
    return steps.stream().mapToInt(Integer::intValue).toArray();
  }

  /** Correction to the click, one tap at a time: a slow part with timekeeper and motor noise. */
  private static double[] followed(Band band, double gain, double clock, Random random) {
    return Ensembles.wander(
        band.steps(), clock / Math.sqrt(band.stepsPerBeat), random, gain / band.stepsPerBeat);
  }

  private static Truth solo(Band band, Random random, int[] steps, double lean) {
    Band.Member member = member("Solo", steps, lean, 6 + 6 * random.nextDouble());
    member.wander = followed(band, 0.4, 8 + 8 * random.nextDouble(), random);
    member.drop = 0.02;
    band.members.add(member);
    return band.play(random);
  }

  private static Truth tapperAhead(long seed) {
    Random random = random(seed, "ahead");
    Band band = band("tapper 30 ms ahead", seed, 80 + random.nextInt(60));
    band.stages = List.of(Stage.ofBeats(16, 1, ALL));
    return solo(band, random, repeat(band, 2, 0), -30);
  }

  private static Truth tapperFarAhead(long seed) {
    Random random = random(seed, "far");
    double lean = -170 + 175 * random.nextDouble();
    Band band = band("tapper " + Math.round(lean) + " ms", seed, 50 + random.nextInt(50));
    band.stages = List.of(Stage.ofBeats(12, 1, ALL));
    return solo(band, random, repeat(band, 2, 0), lean);
  }

  private static Truth tapperOnTheAnds(long seed) {
    Random random = random(seed, "ands");
    Band band = band("tapper on the ands", seed, 60 + random.nextInt(60));
    band.stages = List.of(Stage.ofBeats(16, 1, ALL));
    return solo(band, random, repeat(band, 2, 1), -50 + 55 * random.nextDouble());
  }

  private static Truth tapperThinning(long seed) {
    Random random = random(seed, "thin");
    Band band = band("tapper with a thinning click", seed, 80 + random.nextInt(60));
    band.stages =
        List.of(
            Stage.ofBeats(4, 1, ALL),
            Stage.ofBeats(4, 1, 1, 3),
            Stage.ofBeats(4, 1, 1),
            Stage.ofBeats(4, 2, 1));
    return solo(band, random, repeat(band, 8, 0, 3, 6), -40 * random.nextDouble());
  }

  private static Truth thirteenBeats(long seed) {
    Random random = random(seed, "thirteen");
    Band band = band("13 beats", seed, 70 + random.nextInt(60));
    band.stages = List.of(Stage.ofBeats(4, 1, ALL));
    int[] steps = repeat(band, 2, 0);
    Band.Member member = member("Solo", Arrays.copyOf(steps, 13), -60 * random.nextDouble(), 15);
    member.playsFrom = random.nextInt(3) * 2;
    member.tapsAfter = random.nextInt(2);
    band.members.add(member);
    return band.play(random);
  }

  /** The tempo falls evenly by a share until the end; everybody wanders about it. */
  private static Truth slowing(long seed, double share) {
    Random random = random(seed, "slow" + share);
    Band band = band("slows by " + share, seed, 90 + random.nextInt(80));
    int bars = 16 + random.nextInt(17);
    boolean clicked = random.nextBoolean();
    band.stages =
        clicked
            ? List.of(Stage.ofBeats(4, 1, ALL), Stage.ofBeats(bars, 1))
            : List.of(Stage.ofBeats(bars, 1));
    band.common = new double[band.steps()];
    double x = 0;
    int from = clicked ? 4 * band.stepsPerBar() : 0;
    for (int s = 0; s < band.common.length; s++) {
      band.common[s] = x;
      double done = s < from ? 0 : (s - from) / (double) (band.common.length - from);
      double tempo = 1 - share * done; // of the nominal
      x += band.stepMillis() * (1 / tempo - 1) + 3 * random.nextGaussian();
    }
    humanBand(band, random, 2 + random.nextInt(4));
    return band.play(random);
  }

  private static void humanBand(Band band, Random random, int players) {
    int[][] cells = {
      {0, 2, 4, 6}, {0, 3, 6}, {2, 6}, {1, 3, 5, 7}, {0, 3}, {3, 7}, {0, 1, 2, 4, 5, 6}, {0, 4}
    };
    for (int i = 0; i < players; i++) {
      int[] cell = cells[random.nextInt(cells.length)];
      Band.Member member =
          member(
              "P" + (i + 1),
              repeat(band, 8, cell),
              20 * random.nextGaussian(),
              8 + 10 * random.nextDouble());
      member.wander = Ensembles.wander(band.steps(), 4 + 3 * random.nextDouble(), random, 0.1);
      member.drop = 0.04 * random.nextDouble();
      member.add = 0.04 * random.nextDouble();
      band.members.add(member);
    }
  }

  /** The band begins at another tempo than the nominal and stays there; no click at all. */
  private static Truth startOff(long seed, double share) {
    Random random = random(seed, "start" + share);
    Band band = band("starts off by " + share, seed, 90 + random.nextInt(70));
    band.stages = List.of(Stage.ofBeats(12 + random.nextInt(12), 1));
    band.common = new double[band.steps()];
    double x = 0;
    for (int s = 0; s < band.common.length; s++) {
      band.common[s] = x;
      x += band.stepMillis() * share + 3 * random.nextGaussian();
    }
    humanBand(band, random, 2 + random.nextInt(4));
    return band.play(random);
  }

  private static Truth longDrift(long seed) {
    Random random = random(seed, "long");
    Band band = band("drift of 25 steps", seed, 90 + random.nextInt(60));
    band.stages = List.of(Stage.ofBeats(48, 1));
    band.common = new double[band.steps()];
    double x = 0;
    double bias = 0;
    double aim = 25.0 / band.common.length * (random.nextBoolean() ? 1 : -1);
    for (int s = 0; s < band.common.length; s++) {
      band.common[s] = x;
      bias += 0.02 * (aim - bias) + 0.002 * random.nextGaussian();
      x += band.stepMillis() * bias + 3 * random.nextGaussian();
    }
    humanBand(band, random, 3 + random.nextInt(3));
    return band.play(random);
  }

  private static Truth duoSags(long seed) {
    Random random = random(seed, "duo");
    Band band = band("a duo sags", seed, 80 + random.nextInt(60));
    band.stages = List.of(Stage.ofBeats(4, 1, ALL), Stage.ofBeats(20, 1));
    band.common = new double[band.steps()];
    double x = 0;
    for (int s = 0; s < band.common.length; s++) {
      band.common[s] = x;
      x += s < 32 ? 0 : band.stepMillis() * 0.05 * Math.min(1, (s - 32) / 40.0);
    }
    humanBand(band, random, 2);
    return band.play(random);
  }

  private static Truth apart(long seed) {
    Random random = random(seed, "apart");
    Band band = band("players 100 ms apart", seed, 70 + random.nextInt(40));
    band.stages = List.of(Stage.ofBeats(8, 1, ALL), Stage.ofBeats(8, 1, 1, 3));
    band.tolerance = 50.0;
    double[] leans = {-110, -10, -60, 5};
    int players = 2 + random.nextInt(3);
    for (int i = 0; i < players; i++) {
      Band.Member member =
          member(
              "P" + (i + 1),
              repeat(band, 8, random.nextBoolean() ? new int[] {0, 2, 4, 6} : new int[] {0, 3, 6}),
              leans[i],
              12);
      member.wander = Ensembles.wander(band.steps(), 4, random, 0.1);
      band.members.add(member);
    }
    return band.play(random);
  }

  private static Truth kit(Band band, Random random, double walk) {
    int[][] cells = {{0, 3, 4}, {2, 6}, {0, 1, 2, 3, 4, 5, 6, 7}, {0, 2, 4, 6}};
    String[] names = {"Kick", "Snare", "Hat", "Ride"};
    double[] hands = Ensembles.wander(band.steps(), walk, random, 0.15);
    if (band.common.length == 0) {
      band.common = new double[band.steps()];
    }
    for (int s = 0; s < band.steps(); s++) {
      band.common[s] += hands[s];
    }
    for (int i = 0; i < 4; i++) {
      band.members.add(
          member(
              names[i],
              repeat(band, 8, cells[i]),
              6 * random.nextGaussian(),
              5 + 4 * random.nextDouble()));
    }
    return band.play(random);
  }

  private static Truth splitKit(long seed) {
    Random random = random(seed, "kit");
    Band band = band("split kit", seed, 80 + random.nextInt(90));
    band.stages = List.of(Stage.ofBeats(16, 1));
    band.common = new double[band.steps()];
    double x = 0;
    double bias = 0.02 * random.nextGaussian();
    for (int s = 0; s < band.common.length; s++) {
      band.common[s] = x;
      x += band.stepMillis() * bias + 2 * random.nextGaussian();
    }
    return kit(band, random, 4);
  }

  private static Truth splitKitWithClick(long seed) {
    Random random = random(seed, "kitclick");
    Band band = band("split kit with click", seed, 80 + random.nextInt(90));
    band.stages = List.of(Stage.ofBeats(8, 1, ALL), Stage.ofBeats(8, 1, 2, 4));
    return kit(band, random, 5);
  }

  private static Truth swungKit(long seed) {
    Random random = random(seed, "swung");
    Band band = band("swung kit", seed, 100 + random.nextInt(100));
    band.swing = Swing.BAND;
    band.ratio = 1.2 + 1.6 * random.nextDouble();
    band.stages = List.of(Stage.ofBeats(8, 1, ALL), Stage.ofBeats(8, 1));
    return kit(band, random, 4);
  }

  private static Truth lateJoiner(long seed) {
    Random random = random(seed, "joiner");
    Band band = band("late joiner", seed, 90 + random.nextInt(60));
    band.stages = List.of(Stage.ofBeats(8, 1, ALL), Stage.ofBeats(8, 1, 1, 3), Stage.ofBeats(8, 1));
    humanBand(band, random, 3);
    band.members.get(2).playsFrom = 64 + random.nextInt(40);
    return band.play(random);
  }

  private static Truth flams(long seed) {
    Random random = random(seed, "flams");
    Band band = band("flams", seed, 80 + random.nextInt(60));
    band.stages = List.of(Stage.ofBeats(8, 1, ALL), Stage.ofBeats(8, 1, 1));
    humanBand(band, random, 3);
    band.members.forEach(member -> member.flam = 0.3);
    return band.play(random);
  }

  private static Truth fullRows(long seed) {
    Random random = random(seed, "rows");
    Band band = band("full rows", seed, 70 + random.nextInt(60));
    band.stages = List.of(Stage.ofBeats(8, 1, ALL), Stage.ofBeats(8, 1));
    int players = 1 + random.nextInt(3);
    for (int i = 0; i < players; i++) {
      Band.Member member =
          member(
              "P" + (i + 1),
              repeat(band, 8, 0, 1, 2, 3, 4, 5, 6, 7),
              -30 * random.nextDouble(),
              12);
      member.wander = Ensembles.wander(band.steps(), 3, random, 0.1);
      member.drop = 0.02;
      band.members.add(member);
    }
    return band.play(random);
  }

  private static Truth longRests(long seed) {
    Random random = random(seed, "rests");
    Band band = band("long rests", seed, 90 + random.nextInt(60));
    band.stages = List.of(Stage.ofBeats(8, 1, ALL), Stage.ofBeats(16, 1, 1));
    humanBand(band, random, 3);
    Band.Member resting = band.members.get(0);
    resting.steps = Arrays.stream(resting.steps).filter(s -> s < 48 || s >= 128).toArray();
    return band.play(random);
  }

  private static Truth islandsDrift(long seed) {
    Random random = random(seed, "islands");
    Band band = band("islands, all drift", seed, 90 + random.nextInt(60));
    band.meter = Meter.FOUR_FOUR;
    band.stages =
        List.of(
            Stage.ofBeats(4, 1, ALL),
            Stage.ofBeats(4, 1),
            Stage.ofBeats(4, 1, ALL),
            Stage.ofBeats(8, 1));
    Ensembles.course(band, 3 * random.nextDouble() * (random.nextBoolean() ? 1 : -1), random);
    humanBand(band, random, 3);
    return band.play(random);
  }
}
