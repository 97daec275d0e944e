package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Feel;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Span;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;

/** Takes that the format allows and hardly anybody would play: everything at once, and nothing. */
final class RandomTakes {
  private static final String[] METERS = {
    "2/4", "3/4", "4/4", "5/4", "6/4", "7/4", "6/8", "9/8", "12/8"
  };
  private static final long YEAR = 31_557_600_000_000L;

  private final Random random;
  private final Meter meter;
  private final int stepsPerBeat;
  private final double tempo;
  private final long start;
  private int steps;

  private RandomTakes(long seed) {
    random = new Random(seed * 31 + 5);
    meter = Meter.parse(METERS[random.nextInt(METERS.length)]);
    int[] divisions = meter.compound() ? new int[] {3, 6} : new int[] {2, 3, 4, 6};
    stepsPerBeat = divisions[random.nextInt(divisions.length)];
    tempo = random.nextInt(4) == 0 ? 320 : 30 + 290 * random.nextDouble();
    start = random.nextInt(3) == 0 ? 0 : random.nextInt(1_000_000_000);
  }

  static Take of(long seed) {
    return new RandomTakes(seed).take();
  }

  private Take take() {
    List<Stage> stages = new ArrayList<>();
    int count = 1 + random.nextInt(random.nextInt(10) == 0 ? 12 : 4);
    int bars = 0;
    for (int i = 0; i < count; i++) {
      Stage stage = stage();
      stages.add(stage);
      bars += stage.bars();
    }
    steps = bars * meter.stepsPerBar(stepsPerBeat);
    List<Part> parts = new ArrayList<>();
    List<Attack> attacks = new ArrayList<>();
    int players = random.nextInt(6);
    for (int i = 0; i < players; i++) {
      Part part = part("P" + i, parts);
      parts.add(part);
      attacks(part, attacks);
    }
    boolean swings = stepsPerBeat == 2 || stepsPerBeat == 4;
    Swing swing =
        !swings || random.nextBoolean()
            ? Swing.STRAIGHT
            : random.nextBoolean() ? Swing.BAND : Swing.of(1 + 3 * random.nextDouble());
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        "",
        meter,
        tempo,
        stepsPerBeat,
        swing,
        start,
        random.nextBoolean() ? null : (Double) (1 + 200 * random.nextDouble()),
        stages,
        parts,
        attacks,
        random.nextInt(4) == 0 ? (Long) Math.max(0, instant()) : null,
        random.nextInt(4) == 0 ? spans() : List.of());
  }

  private Stage stage() {
    int bars = 1 + random.nextInt(8);
    int every = 1 + random.nextInt(4);
    if (random.nextBoolean()) {
      TreeSet<Integer> beats = new TreeSet<>();
      for (int beat = 1; beat <= meter.beatsPerBar(); beat++) {
        if (random.nextInt(3) == 0) {
          beats.add(beat);
        }
      }
      return new Stage(bars, every, List.copyOf(beats), null);
    }
    TreeSet<Integer> clicked = new TreeSet<>();
    int within = every * meter.stepsPerBar(stepsPerBeat);
    int clicks = random.nextInt(4) == 0 ? 0 : random.nextInt(within);
    for (int i = 0; i < clicks; i++) {
      clicked.add(random.nextInt(within));
    }
    return new Stage(bars, every, null, List.copyOf(clicked));
  }

  private Part part(String name, List<Part> others) {
    TreeSet<Integer> written = new TreeSet<>();
    switch (random.nextInt(6)) {
      case 0 -> {}
      case 1 -> written.add(random.nextInt(steps));
      case 2 -> {
        for (int s = 0; s < steps; s++) {
          written.add(s);
        }
      }
      case 3 -> {
        int gap = 1 + random.nextInt(9);
        for (int s = random.nextInt(gap); s < steps; s += gap) {
          written.add(s);
        }
      }
      case 4 -> {
        if (!others.isEmpty()) {
          written.addAll(others.get(0).attackSteps());
        }
      }
      default -> {
        int some = random.nextInt(steps);
        for (int i = 0; i < some; i++) {
          written.add(random.nextInt(steps));
        }
      }
    }
    List<Integer> attackSteps = List.copyOf(written);
    boolean rich = random.nextInt(3) == 0;
    return new Part(
        name,
        random.nextInt(steps),
        random.nextBoolean() ? 0 : 300 * random.nextDouble(),
        attackSteps,
        rich ? attackSteps.stream().filter(s -> random.nextBoolean()).toList() : null,
        rich ? attackSteps.stream().map(s -> 1 + random.nextInt(4)).toList() : null,
        rich ? attackSteps.stream().map(s -> random.nextInt(128)).toList() : null,
        random.nextInt(4) == 0
            ? new Feel(500 * random.nextDouble() - 250, 500 * random.nextDouble() - 250)
            : null,
        null,
        random.nextInt(4) == 0
            ? (Double) (random.nextBoolean() ? 0.0 : 10 * random.nextDouble())
            : null,
        null,
        random.nextBoolean(),
        random.nextInt(4) == 0 ? spans() : List.of(),
        null);
  }

  private List<Span> spans() {
    List<Span> spans = new ArrayList<>();
    int count = random.nextInt(3);
    for (int i = 0; i < count; i++) {
      long from = instant();
      spans.add(
          random.nextInt(5) == 0
              ? new Span(-YEAR, 100 * YEAR)
              : new Span(from, from + random.nextInt(10_000_000)));
    }
    return spans;
  }

  private double stepMicros() {
    return 60e6 / (tempo * stepsPerBeat);
  }

  private long instant() {
    return start + (long) ((random.nextDouble() * 1.4 - 0.2) * steps * stepMicros());
  }

  private void attacks(Part part, List<Attack> attacks) {
    String name = part.player();
    int kind = random.nextInt(8);
    if (kind == 0) {
      return;
    }
    if (kind == 1) {
      attacks.add(attack(name, instant()));
      return;
    }
    if (kind == 2) {
      long once = instant();
      int many = random.nextInt(300);
      for (int i = 0; i < many; i++) {
        attacks.add(attack(name, once));
      }
      return;
    }
    if (kind == 3) {
      int many = random.nextInt(200);
      for (int i = 0; i < many; i++) {
        attacks.add(attack(name, instant()));
      }
      return;
    }
    double lean = (random.nextDouble() - 0.5) * 400_000;
    double slower = kind == 4 ? 0.6 + 0.9 * random.nextDouble() : 1;
    double noise = random.nextInt(4) == 0 ? 0 : 60_000 * random.nextDouble();
    int shift = kind == 5 ? random.nextInt(17) - 8 : 0;
    for (int step : part.attackSteps()) {
      if (random.nextInt(10) > 0) {
        double at = (step + shift) * stepMicros() * slower + lean + noise * random.nextGaussian();
        attacks.add(attack(name, start + (long) at));
      }
    }
    if (random.nextInt(4) == 0) {
      attacks.add(attack(name, start + 50 * YEAR));
      attacks.add(attack(name, start - YEAR));
    }
  }

  private Attack attack(String name, long micros) {
    boolean rich = random.nextInt(3) == 0;
    return new Attack(
        name,
        micros,
        rich ? (Integer) (1 + random.nextInt(127)) : null,
        rich ? (Integer) random.nextInt(128) : null,
        rich ? (Double) (2_000 * random.nextDouble()) : null,
        rich ? (Double) (50 * random.nextDouble()) : null,
        random.nextInt(30) == 0,
        random.nextInt(30) == 0);
  }
}
