package thinclick.server.words;

import java.util.Comparator;
import java.util.List;

/** All that is looked for, and the order in which it is said. */
final class Rules {
  static final List<Rule> ALL =
      List.of(
          new Rule("together", VerdictRules::together),
          new Rule("thinnest", VerdictRules::thinnest),
          new Rule(PlaceRules.OTHER_PART, PlaceRules::otherPart),
          new Rule("displaced", PlaceRules::displaced),
          new Rule(PlaceRules.NOT_HEARD, PlaceRules::notHeard),
          new Rule(PlaceRules.LATE_ENTRY, PlaceRules::lateEntry),
          new Rule(PlaceRules.LOST_ENDING, PlaceRules::lostEnding),
          new Rule("free", FreeRules::comingBack),
          new Rule("drift", TimeRules::drift),
          new Rule("returns", TimeRules::returns),
          new Rule("freePulse", FreeRules::pulse),
          new Rule("line", LineRules::line),
          new Rule(LineRules.HEARING, LineRules::hearing),
          new Rule("dropped", NoteRules::dropped),
          new Rule("added", NoteRules::added),
          new Rule("answers", FreeRules::answers),
          new Rule("upbeats", LeanRules::upbeats),
          new Rule("lean", LeanRules::lean),
          new Rule("feel", LeanRules::feel),
          new Rule("spread", LeanRules::spread),
          new Rule("follows", FollowRules::follows),
          new Rule("thinner", ForecastRules::thinner),
          new Rule("silence", ForecastRules::silence),
          new Rule("steadiest", LeanRules::steadiest),
          new Rule("away", CaveatRules::away),
          new Rule("stopped", CaveatRules::stopped),
          new Rule("interrupted", CaveatRules::interrupted),
          new Rule("unsure", CaveatRules::unsure),
          new Rule("aloneInSilence", CaveatRules::aloneInSilence),
          new Rule("doubled", NoteRules::doubled),
          new Rule("standIns", CaveatRules::standIns),
          new Rule("cannotTell", CaveatRules::cannotTell));

  /**
   * What matters most first; within a matter the largest first, then by player for a fixed order.
   */
  private static final Comparator<Finding> ORDER =
      Comparator.comparing(Finding::matter)
          .thenComparing(Comparator.comparingDouble(Finding::size).reversed())
          .thenComparing(finding -> String.valueOf(finding.player()));

  private Rules() {}

  static List<Finding> apply(Evidence evidence) {
    return ALL.stream()
        .flatMap(rule -> rule.find().apply(evidence).stream())
        .sorted(ORDER)
        .toList();
  }
}
