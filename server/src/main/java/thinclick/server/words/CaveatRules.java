package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.file.Attack;
import thinclick.server.scoring.Analysis.Fate;

/** What is not counted against anybody, and what could not be known. */
final class CaveatRules {
  private CaveatRules() {}

  /** "Ilse was away from bar 9 to bar 12; nothing there is counted." */
  static List<Finding> away(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : evidence.players) {
      Chairful.BarSpan away = player.away();
      if (away != null) {
        findings.add(
            new Finding(
                "away",
                Matter.CAVEAT,
                player.name(),
                100.0 + away.to() - away.from(),
                Said.of(
                    away.to() - away.from() == 1 ? "caveat.awayOneBar" : "caveat.away",
                    player.name(),
                    away.from() + 1,
                    away.to()),
                null));
      }
    }
    return findings;
  }

  /** "Stopped in bar 13; what is written after it is not counted." */
  static List<Finding> stopped(Evidence evidence) {
    Integer bar = evidence.analysis.stoppedInBar();
    boolean cut =
        evidence.players.stream()
            .flatMap(player -> player.written.stream())
            .anyMatch(one -> one.fate() == Fate.AFTER_THE_STOP);
    if (bar == null || !cut) {
      return List.of();
    }
    return List.of(
        Finding.ofBand("stopped", Matter.CAVEAT, 90, Said.of("caveat.stopped", bar + 1), null));
  }

  /** "The click broke off twice; those bars are left out of the returns." */
  static List<Finding> interrupted(Evidence evidence) {
    int spans = evidence.take().clickInterrupted().size();
    return spans == 0
        ? List.of()
        : List.of(
            Finding.ofBand(
                "interrupted",
                Matter.CAVEAT,
                80,
                Said.of("caveat.interrupted", spans, Speaker.number(spans)),
                null));
  }

  /** "The clock of Jonas's computer was not sure for 12 attacks." */
  static List<Finding> unsure(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : evidence.players) {
      long unsure =
          evidence.take().attacks().stream()
              .filter(attack -> attack.unsure() && attack.player().equals(player.name()))
              .map(Attack::micros)
              .count();
      if (unsure > 0) {
        findings.add(
            new Finding(
                "unsure",
                Matter.CAVEAT,
                player.name(),
                unsure,
                Said.of("caveat.unsure", player.name(), (int) unsure),
                null));
      }
    }
    return findings;
  }

  /** "Alone in silence there is nobody to be together with: bars 9 to 16 are not judged." */
  static List<Finding> aloneInSilence(Evidence evidence) {
    if (evidence.players.size() != 1) {
      return List.of();
    }
    List<Finding> findings = new ArrayList<>();
    for (int i = 0; i < evidence.review().stages().size(); i++) {
      if (evidence.silent(i)) {
        findings.add(
            Finding.ofBand(
                "aloneInSilence",
                Matter.CAVEAT,
                70,
                Said.of(
                    "caveat.aloneInSilence",
                    evidence.review().stages().get(i).fromBar() + 1,
                    evidence.review().stages().get(i).toBar()),
                null));
      }
    }
    return findings;
  }

  /** "Stand-ins sat in two chairs." "Stand-ins sat in all seven chairs." */
  static List<Finding> standIns(Evidence evidence) {
    int standIns =
        (int) evidence.players.stream().filter(player -> player.review.standIn()).count();
    return standIns == 0
        ? List.of()
        : List.of(
            Finding.ofBand(
                "standIns",
                Matter.CAVEAT,
                10,
                Said.of(
                    standIns == evidence.players.size()
                        ? "caveat.standInsAlone"
                        : "caveat.standIns",
                    standIns,
                    Speaker.number(standIns)),
                null));
  }

  /** A part that is the same some steps later cannot show a shift by them. */
  static List<Finding> cannotTell(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : evidence.players) {
      Integer period = player.review.shiftPeriodSteps();
      // A part that is the same every beat still shows a change of beat side; it matters then
      // only where a shift was seen, which may have been larger.
      boolean matters =
          period != null
              && (period % evidence.stepsPerBeat() != 0
                  || !evidence.displacements(player).isEmpty());
      if (period != null && matters && !player.silent()) {
        findings.add(
            new Finding(
                    "cannotTell",
                    Matter.CAVEAT,
                    player.name(),
                    1,
                    Said.of(
                        "caveat.cannotTell",
                        player.name(),
                        ShiftWords.distance(period, evidence.meter(), evidence.stepsPerBeat())),
                    null)
                .quiet());
      }
    }
    return findings;
  }
}
