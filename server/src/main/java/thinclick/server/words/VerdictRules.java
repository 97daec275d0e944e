package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.StageReview;

/** How much was held, and under how thin a click. */
final class VerdictRules {
  /** More stages than these are not read aloud. */
  private static final int MOST_STAGES = 4;

  private VerdictRules() {}

  /** "Held together: 91 % on two and four, 74 % on the one of every bar." */
  static List<Finding> together(Evidence evidence) {
    if (evidence.nobodyHeard()) {
      return List.of(
          Finding.ofBand(
              "together", Matter.VERDICT, 2, nobodyHeard(evidence), Advice.CHECK_THE_SOUND));
    }
    if (evidence.tooFew()) {
      int written = Outcome.of(evidence.review()).written();
      return List.of(
          Finding.ofBand(
              "together",
              Matter.VERDICT,
              2,
              Said.of("verdict.tooFew", written, Outcome.FEWEST_ATTACKS),
              Advice.PLAY_LONGER));
    }
    List<Integer> known = known(evidence);
    if (known.isEmpty()) {
      return List.of(
          Finding.ofBand("together", Matter.VERDICT, 2, noVerdict(evidence), Advice.SAME_AGAIN));
    }
    String key =
        evidence.players.size() == 1
            ? "verdict.alone"
            : evidence.otherParts.isEmpty() ? "verdict.together" : "verdict.asDealt";
    Said says = Said.of(key, new Said.Row(holds(evidence, shown(evidence, known)), false));
    return List.of(Finding.ofBand("together", Matter.VERDICT, 2, says, null));
  }

  /**
   * "99 % on all beats, then on one and three", "74 % without a click": neighbours alike at once.
   */
  private static List<Said> holds(Evidence evidence, List<Integer> stages) {
    List<Said> holds = new ArrayList<>();
    int from = 0;
    for (int to = 1; to <= stages.size(); to++) {
      if (to == stages.size()
          || !percent(evidence, stages.get(to)).equals(percent(evidence, stages.get(from)))) {
        List<Said> clicks = stages.subList(from, to).stream().map(evidence::on).toList();
        holds.add(
            Said.of(
                "verdict.stage",
                percent(evidence, stages.get(from)),
                clicks.stream()
                    .reduce((one, next) -> Said.of("verdict.then", one, next))
                    .orElseThrow()));
        from = to;
      }
    }
    return holds;
  }

  private static Quantity percent(Evidence evidence, int stage) {
    return Quantity.percent(evidence.review().stages().get(stage).hold());
  }

  /** The thinnest click that was held, where another was not or where it is not sure. */
  static List<Finding> thinnest(Evidence evidence) {
    List<StageReview> stages = evidence.review().stages();
    boolean wrongSheets = !evidence.otherParts.isEmpty();
    if (evidence.tooFew() || known(evidence).size() < 2 || wrongSheets) {
      return List.of();
    }
    int held = evidence.review().ensemble().heldThrough();
    if (held < 0) {
      return List.of(
          Finding.ofBand("thinnest", Matter.VERDICT, 1, Said.of("verdict.noneHeld"), null));
    }
    StageReview stage = stages.get(held);
    Interval interval = stage.hold().interval();
    if (interval != null && stage.borderline()) {
      Said says =
          Said.of(
              "verdict.borderline",
              evidence.on(held),
              Quantity.percent(stage.hold().get()),
              Quantity.percent(interval.low()),
              Quantity.percent(interval.high()));
      return List.of(Finding.ofBand("thinnest", Matter.VERDICT, 1, says, null));
    }
    if (known(evidence).stream().allMatch(one -> stages.get(one).held())) {
      return List.of();
    }
    Said says =
        evidence.silent(held)
            ? Said.of("verdict.heldInSilence")
            : Said.of(
                "verdict.thinnest",
                ClickWords.of(evidence.stage(held), evidence.meter(), evidence.stepsPerBeat()));
    return List.of(Finding.ofBand("thinnest", Matter.VERDICT, .5, says, null));
  }

  /** The same to the band and to each alone, so that a page says it once. */
  private static Said nobodyHeard(Evidence evidence) {
    boolean standInsWere =
        evidence.players.stream().anyMatch(one -> one.review.standIn() && !one.silent());
    return Said.of(
        standInsWere
            ? "verdict.onlyStandIns"
            : evidence.players.size() == 1 ? "verdict.notHeard" : "verdict.nobodyHeard");
  }

  private static Said noVerdict(Evidence evidence) {
    Figure hold = evidence.review().ensemble().hold();
    return hold.reason() == null
        ? Said.of("verdict.none")
        : Said.of("verdict.no." + hold.reason().code());
  }

  private static List<Integer> known(Evidence evidence) {
    List<Integer> known = new ArrayList<>();
    for (int i = 0; i < evidence.review().stages().size(); i++) {
      if (evidence.review().stages().get(i).hold().known()) {
        known.add(i);
      }
    }
    return known;
  }

  /** All, or of many the first, the first not held, the thinnest held and the last. */
  private static List<Integer> shown(Evidence evidence, List<Integer> known) {
    if (known.size() <= MOST_STAGES) {
      return known;
    }
    int thinnest = evidence.review().ensemble().heldThrough();
    int firstLost =
        known.stream()
            .filter(stage -> !evidence.review().stages().get(stage).held())
            .findFirst()
            .orElse(-1);
    return known.stream()
        .filter(
            stage ->
                stage.equals(known.get(0))
                    || stage.equals(known.get(known.size() - 1))
                    || stage == thinnest
                    || stage == firstLost)
        .toList();
  }
}
