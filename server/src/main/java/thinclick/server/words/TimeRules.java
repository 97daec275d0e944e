package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Return;
import thinclick.server.scoring.StageReview;

/** The band's tempo against the click, and where it stood when the click came back. */
final class TimeRules {
  /** A return within so much of a beat is a good one, and one beyond it is named. */
  private static final double GOOD_RETURN = 0.1;

  private TimeRules() {}

  /** "The pulse dragged 1 % through eight silent bars at 120; when the click came back, ..." */
  static List<Finding> drift(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    List<StageReview> stages = evidence.review().stages();
    for (int i = 0; i < stages.size(); i++) {
      Figure drift = stages.get(i).driftPercent();
      boolean told =
          evidence.heldByTheClick(i)
              || LineRules.accountsFor(evidence, stages.get(i).fromBar(), stages.get(i).toBar());
      if (DriftWords.matters(drift) && !told && !comesBack(evidence, i)) {
        findings.add(
            LineRules.mayHaveMade(evidence, drift.get())
                ? slowedByTheLine(evidence, i, drift)
                : driftOf(evidence, i, drift));
      }
    }
    return findings;
  }

  /** Heard late, everybody waits a little; nobody is charged for what that may have made. */
  private static Finding slowedByTheLine(Evidence evidence, int stage, Figure drift) {
    Said says =
        Said.of(
            "time.lineMayHave",
            Quantity.drift(drift).size(),
            evidence.through(stage),
            Quantity.exact(evidence.take().tempo()));
    return Finding.ofBand("drift", Matter.CAVEAT, 50, says, null);
  }

  private static Finding driftOf(Evidence evidence, int stage, Figure drift) {
    StageReview review = evidence.review().stages().get(stage);
    boolean dragged = drift.get() > 0;
    boolean together = review.held() && evidence.players.size() > 1;
    Said slope =
        Said.of(
            (dragged ? "time.dragged" : "time.rushed") + (together ? "Together" : ""),
            Quantity.drift(drift).size(),
            evidence.through(stage),
            Quantity.exact(evidence.take().tempo()));
    Return back = returnAt(evidence, review.toBar());
    Said says = slope;
    if (back != null && back.errorMillis().known()) {
      says = Said.of("time.andReturned", slope, stood(back.errorMillis()));
    } else if (evidence.silent(stage)) {
      double beats = (double) (review.toBar() - review.fromBar()) * evidence.meter().beatsPerBar();
      double millis = Math.abs(drift.get() / 100 * beats * evidence.beatMillis());
      double share = Quantity.halfWidth(drift.interval()) / Math.abs(drift.get());
      Quantity end = new Quantity(millis, share * millis, 10);
      says = Said.of("time.andEnded", slope, Said.of(dragged ? "time.behind" : "time.ahead", end));
    }
    return Finding.ofBand(
        "drift",
        Matter.TIME,
        Math.abs(drift.get()),
        Said.of("sentence", says),
        dragged ? Advice.SING : Advice.ISLANDS);
  }

  /** A band that comes back to the click runs the other way; that is not a second fault. */
  private static boolean comesBack(Evidence evidence, int stage) {
    List<StageReview> stages = evidence.review().stages();
    if (stage == 0 || evidence.silent(stage) || !evidence.silent(stage - 1)) {
      return false;
    }
    Figure before = stages.get(stage - 1).driftPercent();
    Figure now = stages.get(stage).driftPercent();
    return before.known() && now.known() && before.get() * now.get() < 0;
  }

  /** "After two silent bars, the pulse was 40 ms ahead when the click came back in bar 25." */
  static List<Finding> returns(Evidence evidence) {
    List<Return> returns = evidence.review().ensemble().returns();
    if (returns == null) {
      return List.of();
    }
    List<Finding> findings = new ArrayList<>();
    for (Return back : returns) {
      if (!back.errorMillis().known() || saidWithDrift(evidence, back)) {
        continue;
      }
      double error = Math.abs(back.errorMillis().get());
      boolean good = error <= GOOD_RETURN * evidence.beatMillis();
      boolean onIt = Quantity.millis(back.errorMillis()).side() == 0;
      findings.add(
          Finding.ofBand(
              "returns",
              good ? Matter.GOOD : Matter.TIME,
              good ? back.silentBars() : error / evidence.beatMillis(),
              onIt
                  ? Said.of("time.returnOnIt", back.silentBars(), Speaker.number(back.silentBars()))
                  : Said.of(
                      good ? "time.goodReturn" : "time.return",
                      stood(back.errorMillis()),
                      back.silentBars(),
                      Speaker.number(back.silentBars()),
                      back.bar() + 1),
              good || LineRules.excuses(evidence, back.step())
                  ? null
                  : back.errorMillis().get() > 0 ? Advice.SING : Advice.ISLANDS));
    }
    return findings;
  }

  private static boolean saidWithDrift(Evidence evidence, Return back) {
    List<StageReview> stages = evidence.review().stages();
    for (int i = 0; i < stages.size(); i++) {
      Figure drift = stages.get(i).driftPercent();
      if (stages.get(i).toBar() == back.bar()
          && !evidence.heldByTheClick(i)
          && DriftWords.matters(drift)) {
        return true;
      }
    }
    return false;
  }

  private static @Nullable Return returnAt(Evidence evidence, int bar) {
    List<Return> returns = evidence.review().ensemble().returns();
    return returns == null
        ? null
        : returns.stream().filter(back -> back.bar() == bar).findFirst().orElse(null);
  }

  /** "160 ms behind", "40 ms ahead", "right on it". */
  private static Said stood(Figure error) {
    Quantity millis = Quantity.millis(error);
    return millis.side() == 0
        ? Said.of("time.onIt")
        : Said.of(millis.side() > 0 ? "time.behind" : "time.ahead", millis.size());
  }
}
