package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;
import thinclick.server.dealing.Dealer;
import thinclick.server.dealing.Dealing;
import thinclick.server.material.ClickLadder;
import thinclick.server.material.Rung;
import thinclick.server.material.Stock;

/**
 * Seeded bands at the drills of the stock, written after the decoder and from the aims' words
 * alone; shares nothing with {@link Ensembles}, which the decoder grew up with.
 *
 * <p>What is played: any drill of the stock, dealt by {@link Dealer} to 2 to 6 players at any whole
 * tempo of its range. Its own ladder of stages, as long as {@link ClickLadder#barsOfStage} makes
 * every stage of the stock (whole periods, at least eight bars), then one stage of silence and one
 * where every beat clicks again. A drill with pairs of steps is swung in one take of three, at 1.2
 * to 2.5, half of those as the band plays it.
 *
 * <p>How it is played, each number drawn evenly: a player's noise is 4 to 14 ms, of whose variance
 * the hand has .4 to .8, anew at every attack, and the timekeeper the rest, a walk that grows with
 * time. At every step on which others are heard a player takes back .15 to .5 of the distance from
 * their mean; the share is multiplied by .5 to 1.5 at one step of the take. In silence the band's
 * tempo goes off by up to 2 % (each player's by .1 % more or less), within about a bar; at a click
 * a player takes back .2 to .6 of the distance from it and half of what the tempo is off. Leans are
 * up to 20 ms either way. Two attacks of a hundred miss by three times the hand's noise.
 *
 * <p>What goes wrong: up to 12 % dropped (in one take of four a bar or two of it in a row), up to
 * 10 % added, at any time or on other steps, none nearer than 30 ms to another attack of the
 * player, which would be one attack; up to three times one player, or of three and more two at
 * once, is displaced by one or two steps either way for two to six bars. After the first run two
 * things that the definitions say were put right: an episode is laid only where it is one by its
 * definition, and of two written attacks that fall on one place one is dropped.
 */
final class StockBands {
  private static final long START_MICROS = 7_000_000;

  /** The stock when this was written, so that a seed stays what it was when drills are added. */
  private static final List<String> DRILLS =
      List.of(
          ("Even eighths; Bare one; Bare one and three; Ands alone; Gapped ands; Early exit; "
                  + "Last-and stop; Charleston; Late Charleston; Two-and four-and; Push only; Tresillo; "
                  + "Cinquillo; Habanera; Short threes; Hollow threes; Split fives; And-to-and; Son 3-2; "
                  + "Son 2-3; Rumba 3-2; Rumba 2-3; Bossa; Shiko; Soukous; Gahu; Samba seven; Sparse comp; "
                  + "Long threes; Long fives; Long sixes; Long sevens; Split sevens; Waltz threes; "
                  + "Waltz late sixes; Waltz fours; Waltz fives; Waltz sevens; Six-eight twos; "
                  + "Six-eight late threes; Six-eight late sixes; Six-eight fives; Six-eight sevens; Bembe; "
                  + "Fume-fume; Sixteenth threes; Squeezed son one late; Squeezed son three late; "
                  + "Quarter triplets; Three over the bar; Middle triplet; Last triplet; Odds and evens; "
                  + "Jigsaw; Four-chair canon; Hocket in sixteenths; Clave canon; Layers over three bars; "
                  + "Displacement ladder; Call; Minor two-five line; Two-five line; Threes over a blues; "
                  + "Sevens over a blues; Fives over a form; Room 12 rhythm section")
              .split("; ", -1));

  private final Random random;
  private final Drill drill;
  private final int tempo;
  private final List<Stage> stages;
  private final double ratio;
  private final Swing swing;
  private final Dealing dealing;
  private final int perBar;
  private final int steps;
  private final double stepMillis;
  private final int margin;
  private final List<Player> players = new ArrayList<>();
  private final StringBuilder story = new StringBuilder();

  /** One player and all that befell them. */
  private static final class Player {
    final Part part;
    double hand;
    double timekeeper;
    double follows;
    double followsLater;
    int later;
    double answersClick;
    double ownTempo;
    double lean;

    /** Displacement by bar. */
    int[] shift = {};

    /** Written steps that were not played. */
    final Set<Integer> dropped = new HashSet<>();

    /** The hand's error of each played written step, ms. */
    double[] error = {};

    /** The hidden position by step, ms from its place. */
    double[] position = {};

    Player(Part part) {
      this.part = part;
    }
  }

  private StockBands(long seed) {
    random = new Random(0x5EED_BA2DL + 104_729 * seed);
    drill = Stock.find(DRILLS.get(random.nextInt(DRILLS.size())));
    tempo = (int) Math.rint(between(drill.tempo().from(), drill.tempo().to()));
    stages = new ArrayList<>(drill.stages());
    int bars = ClickLadder.barsOfStage(drill.periodBars());
    stages.add(Rung.NONE.stage(drill.meter(), drill.stepsPerBeat(), drill.groups(), bars, seed));
    stages.add(
        Rung.ALL_BEATS.stage(drill.meter(), drill.stepsPerBeat(), drill.groups(), bars, seed));
    boolean swung = drill.stepsPerBeat() % 2 == 0 && random.nextInt(3) == 0;
    swung &= drill.stepsPerBeat() != 6;
    ratio = swung ? Math.rint(10 * between(1.2, 2.5)) / 10 : 1;
    swing = !swung ? Swing.STRAIGHT : random.nextBoolean() ? Swing.of(ratio) : Swing.BAND;
    int count = 2 + random.nextInt(5);
    List<String> names = IntStream.rangeClosed(1, count).mapToObj(i -> "Chair " + i).toList();
    dealing = Dealer.deal(drill, names, seed, tempo, stages);
    perBar = drill.meter().stepsPerBar(drill.stepsPerBeat());
    steps = stages.stream().mapToInt(Stage::bars).sum() * perBar;
    stepMillis = 60_000.0 / (tempo * drill.stepsPerBeat());
    margin = 4;
    story.append("stock band ").append(seed).append(": ").append(drill.title());
    for (Part part : dealing.parts()) {
      players.add(player(part));
    }
    displace();
  }

  /** The take of a seed. */
  static Truth of(long seed) {
    StockBands band = new StockBands(seed);
    band.walk();
    return band.told();
  }

  private double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private Player player(Part part) {
    Player player = new Player(part);
    double noise = between(4, 14);
    double handShare = between(0.4, 0.8);
    player.hand = noise * Math.sqrt(handShare);
    player.follows = between(0.15, 0.5);
    // a walk that loses this share of itself every beat stands at what the hand leaves of the noise
    player.timekeeper = noise * Math.sqrt((1 - handShare) * player.follows * (2 - player.follows));
    player.followsLater = player.follows * between(0.5, 1.5);
    player.later = random.nextInt(steps);
    player.answersClick = between(0.2, 0.6);
    player.ownTempo = between(-0.001, 0.001);
    player.lean = between(-20, 20);
    player.shift = new int[steps / perBar];
    List<Integer> written = part.attackSteps();
    int toDrop = (int) Math.floor(between(0, 0.12) * written.size());
    if (random.nextInt(4) == 0 && !written.isEmpty()) {
      int from = written.get(random.nextInt(written.size()));
      int to = from + (1 + random.nextInt(2)) * perBar;
      written.stream()
          .filter(step -> step >= from && step < to)
          .limit(toDrop)
          .forEach(player.dropped::add);
    }
    while (player.dropped.size() < toDrop) {
      player.dropped.add(written.get(random.nextInt(written.size())));
    }
    player.error = new double[written.size()];
    for (int k = 0; k < written.size(); k++) {
      double wild = random.nextInt(50) == 0 ? 3 : 1;
      player.error[k] = wild * player.hand * random.nextGaussian();
    }
    return player;
  }

  private void displace() {
    int bars = steps / perBar;
    int times = random.nextInt(4);
    for (int i = 0; i < times; i++) {
      int length = 2 + random.nextInt(5);
      int from = random.nextInt(Math.max(1, bars - length));
      int together = players.size() > 2 && random.nextBoolean() ? 2 : 1;
      List<Integer> who = new ArrayList<>(IntStream.range(0, players.size()).boxed().toList());
      java.util.Collections.shuffle(who, random);
      for (int chair : who.subList(0, together)) {
        Player player = players.get(chair);
        int shift = (1 + random.nextInt(2)) * (random.nextBoolean() ? 1 : -1);
        boolean free =
            IntStream.range(Math.max(0, from - 1), Math.min(bars, from + length + 1))
                .allMatch(bar -> player.shift[bar] == 0);
        int to = Math.min(bars, from + length);
        if (free && shows(player.part, shift) && isEpisode(player, from, to, shift)) {
          Arrays.fill(player.shift, from, to, shift);
          Set<Integer> outside = playedOutside(player, from, to);
          run(player, from, to).stream()
              .filter(step -> outside.contains(step + shift))
              .forEach(player.dropped::add);
          story.append("; ").append(player.part.player()).append(" by ").append(shift);
          story.append(" from bar ").append(from).append(" for ").append(length);
        }
      }
    }
  }

  /** A shift that lays a part onto itself, but for its first and last bar, cannot be seen. */
  private boolean shows(Part part, int shift) {
    Set<Integer> written = new HashSet<>(part.attackSteps());
    return part.attackSteps().stream()
        .filter(step -> step >= perBar && step < steps - perBar)
        .anyMatch(step -> !written.contains(step + shift));
  }

  /**
   * By definition an episode has at least three played attacks over at least two beats, and leaves
   * at least three fewer dropped and added than no shift.
   */
  private boolean isEpisode(Player player, int fromBar, int toBar, int shift) {
    Set<Integer> outside = playedOutside(player, fromBar, toBar);
    List<Integer> run =
        run(player, fromBar, toBar).stream()
            .filter(step -> !outside.contains(step + shift))
            .toList();
    List<Integer> written = player.part.attackSteps();
    Set<Integer> sounds = new HashSet<>(outside);
    run.forEach(step -> sounds.add(step + shift));
    long dropped = run.stream().filter(step -> !sounds.contains(step)).count();
    long added = run.stream().filter(step -> !written.contains(step + shift)).count();
    return run.size() >= 3
        && run.get(run.size() - 1) - run.get(0) >= 2 * drill.stepsPerBeat()
        && dropped + added >= 3;
  }

  /** What a player plays of what is written in some bars. */
  private List<Integer> run(Player player, int fromBar, int toBar) {
    return player.part.attackSteps().stream()
        .filter(step -> step >= fromBar * perBar && step < toBar * perBar)
        .filter(step -> !player.dropped.contains(step))
        .toList();
  }

  /** What sounds of what is written elsewhere: of two on one place, one is dropped. */
  private Set<Integer> playedOutside(Player player, int fromBar, int toBar) {
    Set<Integer> outside = new HashSet<>();
    for (int step : player.part.attackSteps()) {
      int bar = step / perBar;
      if ((bar < fromBar || bar >= toBar) && !player.dropped.contains(step)) {
        outside.add(step + player.shift[bar]);
      }
    }
    return outside;
  }

  private double place(int step) {
    double late = 2 * ratio / (1 + ratio) - 1;
    return (step + (Math.floorMod(step, 2) == 0 ? 0 : late)) * stepMillis;
  }

  /** Moves everybody step by step from just before the take to just after it. */
  private void walk() {
    Set<Integer> clicks = new HashSet<>();
    StepGrid straight = new StepGrid(drill.meter(), drill.stepsPerBeat(), tempo, Swing.STRAIGHT, 0);
    new ClickPlan(stages).clicks(straight).forEach(click -> clicks.add((int) click.step()));
    double drift = between(-0.02, 0.02);
    int n = players.size();
    double[] x = new double[n];
    double[] tempoOff = new double[n];
    List<double[]> attacked = new ArrayList<>();
    for (Player player : players) {
      player.position = new double[steps + 2 * margin];
      attacked.add(sounding(player));
    }
    double perStep = Math.sqrt(1.0 / drill.stepsPerBeat());
    for (int at = 0; at < steps + 2 * margin; at++) {
      int step = at - margin;
      double[] before = x.clone();
      for (int i = 0; i < n; i++) {
        Player player = players.get(i);
        player.position[at] = x[i];
      }
      for (int i = 0; i < n; i++) {
        Player player = players.get(i);
        double others = 0;
        int heard = 0;
        for (int j = 0; j < n; j++) {
          double error = attacked.get(j)[at];
          if (j != i && !Double.isNaN(error)) {
            others += before[j] + error;
            heard++;
          }
        }
        double own = attacked.get(i)[at];
        double here = before[i] + (Double.isNaN(own) ? 0 : own);
        if (heard > 0) {
          double share = step < player.later ? player.follows : player.followsLater;
          x[i] -= share * (here - others / heard);
        }
        if (clicks.contains(step)) {
          x[i] -= player.answersClick * here;
          tempoOff[i] *= 0.5;
        } else {
          double wanted = step < 0 ? 0 : (drift + player.ownTempo) * stepMillis;
          tempoOff[i] += (wanted - tempoOff[i]) / perBar;
        }
        x[i] += tempoOff[i] + player.timekeeper * perStep * random.nextGaussian();
      }
    }
  }

  /** The hand's error at every step on which a player sounds; NaN where none does. */
  private double[] sounding(Player player) {
    double[] errors = new double[steps + 2 * margin];
    Arrays.fill(errors, Double.NaN);
    for (int k = 0; k < player.error.length; k++) {
      int step = player.part.attackSteps().get(k);
      if (!player.dropped.contains(step)) {
        errors[step + player.shift[step / perBar] + margin] = player.error[k];
      }
    }
    return errors;
  }

  private Truth told() {
    double[] pulse = new double[steps];
    for (int step = 0; step < steps; step++) {
      double sum = 0;
      double weights = 0;
      for (Player player : players) {
        double weight = player.part.attackSteps().isEmpty() ? 0 : player.part.pulseWeight();
        sum += weight * (player.lean + player.position[step + margin]);
        weights += weight;
      }
      pulse[step] = place(step) + sum / weights;
    }
    List<Attack> attacks = new ArrayList<>();
    List<Truth.Player> truths = new ArrayList<>();
    for (Player player : players) {
      truths.add(play(player, pulse, attacks));
    }
    Take take =
        new Take(
            Take.FORMAT,
            Take.VERSION,
            drill.title(),
            drill.meter(),
            (double) tempo,
            drill.stepsPerBeat(),
            swing,
            START_MICROS,
            dealing.toleranceMillis(),
            stages,
            dealing.parts(),
            attacks,
            null,
            List.of());
    return new Truth(take, truths, pulse, story.toString());
  }

  private Truth.Player play(Player player, double[] pulse, List<Attack> attacks) {
    List<Double> times = new ArrayList<>();
    List<Double> asynchronies = new ArrayList<>();
    Set<Integer> displaced = new TreeSet<>();
    Set<Integer> sounded = new HashSet<>();
    for (int k = 0; k < player.error.length; k++) {
      int step = player.part.attackSteps().get(k);
      int shift = player.shift[step / perBar];
      sounded.add(step + shift);
      if (player.dropped.contains(step)) {
        continue;
      }
      boolean onbeat = step % drill.stepsPerBeat() == 0;
      double feel = onbeat ? player.part.feel().onbeat() : player.part.feel().offbeat();
      double at = slow(player, step + shift) + feel + player.error[k];
      times.add(at);
      if (shift == 0) {
        asynchronies.add(at - feel - pulse[step]);
      } else {
        displaced.add(step / perBar);
      }
    }
    int added = 0;
    int wanted = (int) Math.floor(between(0, 0.10) * player.error.length);
    boolean onSteps = random.nextBoolean();
    for (int i = 0; i < wanted; i++) {
      int step = random.nextInt(steps);
      double at =
          onSteps
              ? slow(player, step) + player.hand * random.nextGaussian()
              : between(0, place(steps));
      boolean apart = times.stream().allMatch(other -> Math.abs(other - at) >= 30);
      if (apart && !(onSteps && sounded.contains(step))) {
        times.add(at);
        added++;
      }
    }
    for (double at : times) {
      attacks.add(Attack.tap(player.part.player(), START_MICROS + Math.round(1000 * at)));
    }
    double mean = asynchronies.stream().mapToDouble(a -> a).average().orElse(0);
    double squares = asynchronies.stream().mapToDouble(a -> (a - mean) * (a - mean)).sum();
    double tolerance = dealing.toleranceMillis();
    return new Truth.Player(
        withSilentBars(displaced, player),
        player.error.length,
        player.dropped.size(),
        added,
        mean,
        asynchronies.size() < 2 ? 0 : Math.sqrt(squares / (asynchronies.size() - 1)),
        (int) asynchronies.stream().filter(a -> Math.abs(a) <= tolerance).count());
  }

  /** Where a player's attack on a step is to be, but for the hand, ms from step 0. */
  private double slow(Player player, int step) {
    return place(step) + player.lean + player.position[step + margin];
  }

  /** A bar without a played attack between two displaced bars of an episode belongs to it. */
  private static Set<Integer> withSilentBars(Set<Integer> displaced, Player player) {
    Set<Integer> all = new TreeSet<>(displaced);
    for (int bar : displaced) {
      int next = bar + 1;
      while (next < player.shift.length && player.shift[next] == player.shift[bar]) {
        next++;
      }
      int last = next - 1;
      while (!displaced.contains(last)) {
        last--;
      }
      IntStream.rangeClosed(bar, last).forEach(all::add);
    }
    return all;
  }
}
