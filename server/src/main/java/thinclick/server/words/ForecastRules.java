package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.PlayerReview;

/** What a thinner click than any that was played would do to a player against a click. */
final class ForecastRules {
  private ForecastRules() {}

  /**
   * "With a thinner click (the one of every bar), expect Ana's spread near 20 ms (15-30); that
   * would hold." Of several, the thinnest that would hold, else the fullest.
   */
  static List<Finding> thinner(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : ready(evidence)) {
      Said says =
          ForecastWords.thinner(
              player.review,
              evidence.meter(),
              evidence.stepsPerBeat(),
              evidence.review().toleranceMillis());
      if (says != null) {
        findings.add(finding(evidence, "thinner", player, 2, says));
      }
    }
    return findings;
  }

  /** "After eight silent bars, expect Ana about 60 ms off (40-90) when the click comes back." */
  static List<Finding> silence(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : ready(evidence)) {
      for (Said says : ForecastWords.silence(player.review)) {
        findings.add(finding(evidence, "silence", player, 1, says));
      }
    }
    return findings;
  }

  /** In a band it is the player's own business. */
  private static Finding finding(
      Evidence evidence, String rule, Chairful player, double size, Said says) {
    Finding finding = new Finding(rule, Matter.AHEAD, player.name(), size, says, null);
    return evidence.players.size() == 1 ? finding : finding.quiet();
  }

  private static List<Chairful> ready(Evidence evidence) {
    return evidence.players.stream()
        .filter(
            player -> {
              PlayerReview review = player.review;
              Figure hold = review.hold();
              return !review.standIn() && hold.known() && hold.get() >= ForecastWords.READY_HOLD;
            })
        .toList();
  }
}
