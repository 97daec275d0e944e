package thinclick.server.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import thinclick.protocol.file.Feel;
import thinclick.protocol.music.StepGrid;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.PlayerReview;

/** Early or late, and how evenly. */
final class LeanRules {
  /** A lean under so much of what the chair is known to is no news. */
  private static final double SMALL_SHARE = 0.5;

  /** What is just noticed of a displaced tone where the gap is short. */
  private static final double NOTICED_MILLIS = 6;

  /** The same as a share of the gap, where that is more. */
  private static final double NOTICED_OF_GAP = 0.025;

  /** A normal spread of tolerance over this places 80 % of the attacks. */
  static final double PLACES_EIGHTY = 1.2816;

  /** From 95 % half-widths to 1.645 standard errors. */
  private static final double ONE_SIDED = 1.645 / 1.96;

  private LeanRules() {}

  /** "Comping was asked for +25 ms and kept +23 ms, with a spread of 11 ms ..." */
  static List<Finding> feel(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : evidence.players) {
      Feel feel = player.part.feelMillis();
      PlayerReview review = player.review;
      if (feel == null || !review.leanMillis().known() || !review.spreadMillis().known()) {
        continue;
      }
      boolean onbeats = review.onbeat().written() > 0;
      boolean offbeats = review.offbeat().written() > 0;
      double asked = !onbeats ? feel.offbeat() : !offbeats ? feel.onbeat() : Double.NaN;
      if (onbeats && offbeats && feel.onbeat() == feel.offbeat()) {
        asked = feel.onbeat();
      }
      if (Double.isNaN(asked)) {
        findings.addAll(feelByPlace(evidence, player, feel));
      } else if (asked != 0) {
        findings.add(feel(evidence, player, "feel.kept", asked, review.leanMillis()));
      }
    }
    return findings;
  }

  private static List<Finding> feelByPlace(Evidence evidence, Chairful player, Feel feel) {
    List<Finding> findings = new ArrayList<>();
    Figure on = player.review.onbeat().leanMillis();
    Figure off = player.review.offbeat().leanMillis();
    if (feel.onbeat() != 0 && on.known()) {
      findings.add(feel(evidence, player, "feel.keptOnbeat", feel.onbeat(), on));
    }
    if (feel.offbeat() != 0 && off.known()) {
      findings.add(feel(evidence, player, "feel.keptOffbeat", feel.offbeat(), off));
    }
    return findings;
  }

  private static Finding feel(
      Evidence evidence, Chairful player, String key, double asked, Figure lean) {
    boolean kept = Math.abs(lean.get()) <= noticed(evidence, player, lean);
    boolean even = !wide(evidence, player.review.spreadMillis());
    Quantity played = new Quantity(asked + lean.get(), Quantity.halfWidth(lean.interval()), 1);
    Said says =
        Said.of(
            key,
            player.name(),
            signed(Quantity.millis(asked, null)),
            signed(played),
            Quantity.millis(player.review.spreadMillis()),
            Said.of(kept && even ? "feel.controlled" : kept ? "feel.uneven" : "feel.other"));
    return new Finding(
        "feel",
        kept && even ? Matter.GOOD : Matter.LEAN,
        player.name(),
        kept ? 50 : Math.abs(lean.get()),
        says,
        null);
  }

  private static Said signed(Quantity quantity) {
    return Said.of(quantity.value() < 0 ? "signed.minus" : "signed.plus", quantity.size());
  }

  /** "Ride's ands were 22 ms early, and the downbeats centred." */
  static List<Finding> upbeats(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : evidence.players) {
      Figure on = player.review.onbeat().leanMillis();
      Figure off = player.review.offbeat().leanMillis();
      if (player.part.feelMillis() != null || !on.known() || !off.known()) {
        continue;
      }
      double apart = off.get() - on.get();
      if (Math.abs(apart) > 2 * NOTICED_MILLIS
          && Math.abs(apart) > noticed(evidence, player, off)
          && part(on, off)) {
        findings.add(
            new Finding(
                "upbeats",
                Matter.LEAN,
                player.name(),
                Math.abs(apart),
                Said.of(
                    "lean.upbeats",
                    player.name(),
                    Said.of(evidence.stepsPerBeat() == 3 ? "lean.offbeats" : "lean.ands"),
                    lean(evidence, player, off),
                    lean(evidence, player, on)),
                apart < 0 ? Advice.ANDS_ALONE : Advice.TWO_AND_FOUR_AND));
      }
    }
    return findings;
  }

  /** "Jonas was steadily 18 ms late against the others." Reported, not called wrong. */
  static List<Finding> lean(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : evidence.players) {
      Figure lean = player.review.leanMillis();
      if (player.part.feelMillis() != null || !lean.known() || saidByPlace(evidence, player)) {
        continue;
      }
      double size = Math.abs(lean.get());
      double uncertainty = player.review.uncertaintyMillis();
      if (size <= Math.max(NOTICED_MILLIS, ONE_SIDED * Quantity.halfWidth(lean.interval()))) {
        continue;
      }
      if (size <= SMALL_SHARE * uncertainty) {
        continue; // far inside what is known of the chair: not worth a sentence
      }
      if (size <= uncertainty) {
        findings.add(
            new Finding(
                "lean",
                Matter.CAVEAT,
                player.name(),
                size,
                Said.of(
                    "lean.noVerdict", player.name(), lean(lean), new Quantity(uncertainty, 0, 1)),
                null));
      } else if (size > noticed(evidence, player, lean)) {
        findings.add(
            new Finding(
                "lean",
                Matter.LEAN,
                player.name(),
                size,
                Said.of(
                    evidence.players.size() == 1 ? "lean.alone" : "lean.steady",
                    player.name(),
                    lean(lean)),
                null));
      }
    }
    return findings;
  }

  private static boolean saidByPlace(Evidence evidence, Chairful player) {
    return upbeats(evidence).stream().anyMatch(one -> player.name().equals(one.player()));
  }

  /** "Tariq is still uneven: the spread is 44 ms ..." */
  static List<Finding> spread(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : evidence.players) {
      Figure spread = player.review.spreadMillis();
      if (wide(evidence, spread)) {
        findings.add(
            new Finding(
                "spread",
                Matter.SPREAD,
                player.name(),
                spread.get(),
                Said.of(
                    "spread.wide",
                    player.name(),
                    Quantity.millis(spread),
                    player.review.placed(),
                    player.review.written()),
                Advice.EVEN_EIGHTHS));
      }
    }
    return findings;
  }

  /** "Mina is the steadiest chair: 96 of 96 are placed ..." Only where intervals part. */
  static List<Finding> steadiest(Evidence evidence) {
    List<Chairful> judged =
        evidence.players.stream()
            .filter(
                one ->
                    one.review.spreadMillis().known()
                        && one.review.written() >= Outcome.FEWEST_ATTACKS
                        && !one.review.standIn())
            .sorted(Comparator.comparingDouble(one -> one.review.spreadMillis().get()))
            .toList();
    if (judged.isEmpty() || wide(evidence, judged.get(0).review.spreadMillis())) {
      return List.of();
    }
    Chairful best = judged.get(0);
    Interval interval = best.review.spreadMillis().interval();
    boolean alone = judged.size() == 1;
    boolean parts =
        !alone && interval != null && interval.high() < judged.get(1).review.spreadMillis().get();
    if (!alone && !parts) {
      return List.of();
    }
    return List.of(
        new Finding(
            "steadiest",
            Matter.GOOD,
            best.name(),
            1,
            Said.of(
                alone ? "spread.placed" : "spread.steadiest",
                best.name(),
                best.review.placed(),
                best.review.written(),
                Quantity.millis(best.review.spreadMillis())),
            null));
  }

  /** True where so wide a spread places fewer than 80 %. */
  private static boolean wide(Evidence evidence, Figure spread) {
    return spread.known() && spread.get() * PLACES_EIGHTY > evidence.review().toleranceMillis();
  }

  /** "22 ms early", "centred". */
  private static Said lean(Evidence evidence, Chairful player, Figure lean) {
    return Math.abs(lean.get()) <= noticed(evidence, player, lean)
        ? Said.of("lean.centred")
        : lean(lean);
  }

  private static Said lean(Figure lean) {
    return Said.of(lean.get() < 0 ? "lean.early" : "lean.late", Quantity.millis(lean).size());
  }

  /** Up to this a lean is called together. */
  private static double noticed(Evidence evidence, Chairful player, Figure lean) {
    return Math.max(
        justNoticed(typicalGapMillis(evidence, player)),
        Math.max(
            player.review.uncertaintyMillis(), ONE_SIDED * Quantity.halfWidth(lean.interval())));
  }

  /**
   * How far a tone in an even row must be displaced to be just noticed, ms: 6 ms below gaps of
   * about 240 ms, 2.5 % above (Friberg and Sundberg 1995, JASA 98:2524).
   *
   * @param gapMillis from tone to tone
   */
  static double justNoticed(double gapMillis) {
    return Math.max(NOTICED_MILLIS, NOTICED_OF_GAP * gapMillis);
  }

  private static double typicalGapMillis(Evidence evidence, Chairful player) {
    StepGrid grid = evidence.take().grid();
    List<Integer> steps = player.part.attackSteps();
    double[] gaps =
        IntStream.range(1, steps.size())
            .mapToDouble(
                i -> (grid.microsAt(steps.get(i)) - grid.microsAt(steps.get(i - 1))) / 1_000)
            .sorted()
            .toArray();
    return gaps.length == 0 ? 0 : gaps[gaps.length / 2];
  }

  private static boolean part(Figure one, Figure other) {
    Interval a = one.interval();
    Interval b = other.interval();
    return a == null || b == null || a.partsFrom(b);
  }
}
