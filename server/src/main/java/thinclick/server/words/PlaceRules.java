package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import thinclick.server.scoring.Displacement;

/** Who played somewhere else than written: another's part, off by whole steps, at the edges. */
final class PlaceRules {
  /** A late entry or a lost ending is at least so many written attacks. */
  private static final int FEWEST_AT_AN_EDGE = 3;

  /** So many who were not heard are named; more are counted. */
  private static final int MOST_NAMES = 4;

  /** The rule that says who played another's part. */
  static final String OTHER_PART = "otherPart";

  /** The rule that says who came in late. */
  static final String LATE_ENTRY = "lateEntry";

  /** The rule that says who did not get to the end. */
  static final String LOST_ENDING = "lostEnding";

  /** The rule that says from whom nothing was heard. */
  static final String NOT_HEARD = "notHeard";

  /** What it found of each where that was everybody. */
  static final String NOBODY_HEARD = "nobodyHeard";

  private PlaceRules() {}

  /** "Jonas and Tariq swapped parts." "Tariq played Mina's part from bar 9 to the end." */
  static List<Finding> otherPart(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    List<OtherPart> said = new ArrayList<>();
    for (OtherPart one : evidence.otherParts) {
      boolean answered =
          one.mutual()
              && said.stream().anyMatch(other -> other.mutual() && other.player() == one.owner());
      if (answered) {
        // The sentence names both; this one's own slip must still have it.
        findings.add(finding(evidence, one, one.owner(), one.player()).quiet());
        continue;
      }
      said.add(one);
      findings.add(finding(evidence, one, one.player(), one.owner()));
    }
    return findings;
  }

  private static Finding finding(
      Evidence evidence, OtherPart one, Chairful first, Chairful second) {
    boolean throughout = one.bars().from() == 0 && one.bars().to() >= evidence.bars();
    Said where =
        throughout
            ? Said.of("bars.throughout")
            : Said.of("bars.fromTo", one.bars().from() + 1, one.bars().to());
    Said says =
        Said.of(
            one.mutual() ? "place.swapped" : "place.otherPart",
            first.name(),
            second.name(),
            where,
            Quantity.percent(100 * one.sat()));
    int length = one.bars().to() - one.bars().from();
    return new Finding(
        OTHER_PART, Matter.PLACE, one.player().name(), 100 + length, says, Advice.AGREE_ON_PARTS);
  }

  /** "Ilse was turned around (an eighth late) from bar 10 and was home again in bar 14." */
  static List<Finding> displaced(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : evidence.players) {
      List<Displacement> episodes = evidence.displacements(player);
      if (episodes.isEmpty() || FreeRules.saysAll(evidence, player, episodes)) {
        continue;
      }
      int bars = episodes.stream().mapToInt(one -> one.toBar() - one.fromBar()).sum();
      Displacement longest = episodes.get(0);
      for (Displacement one : episodes) {
        if (one.toBar() - one.fromBar() > longest.toBar() - longest.fromBar()) {
          longest = one;
        }
      }
      Said says =
          episodes.size() == 1
              ? ShiftWords.stretch(
                  player.name(),
                  longest,
                  evidence.bars(),
                  evidence.meter(),
                  evidence.stepsPerBeat())
              : Said.of(
                  "place.displacedOften",
                  player.name(),
                  Speaker.number(episodes.size()),
                  bars,
                  Speaker.number(bars),
                  ShiftWords.of(longest.steps(), evidence.meter(), evidence.stepsPerBeat()),
                  bars(evidence, longest));
      boolean turned = ShiftWords.turnedAround(longest.steps(), evidence.stepsPerBeat());
      findings.add(
          new Finding(
              "displaced",
              Matter.PLACE,
              player.name(),
              bars,
              says,
              turned ? Advice.COUNT_ALOUD : Advice.BAR_NUMBERS));
    }
    return findings;
  }

  /** "Tariq came in at bar 3 instead of bar 1." */
  static List<Finding> lateEntry(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : evidence.players) {
      int dropped = player.droppedFirst();
      if (dropped < FEWEST_AT_AN_EDGE || evidence.playsAnotherPart(player)) {
        continue;
      }
      int bars = player.enteredAt() - player.firstBar();
      if (bars > 0) {
        findings.add(
            new Finding(
                LATE_ENTRY,
                Matter.EDGES,
                player.name(),
                dropped,
                Said.of(
                    "edges.lateEntry",
                    player.name(),
                    player.enteredAt() + 1,
                    player.firstBar() + 1),
                Advice.PUSH_ONLY));
      }
    }
    return findings;
  }

  /** "Jonas lost the ending and played nothing after bar 21." */
  static List<Finding> lostEnding(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : evidence.players) {
      int dropped = player.droppedLast();
      if (dropped >= FEWEST_AT_AN_EDGE && !evidence.playsAnotherPart(player)) {
        findings.add(
            new Finding(
                LOST_ENDING,
                Matter.EDGES,
                player.name(),
                dropped,
                Said.of("edges.lostEnding", player.name(), player.lastPlayedAt() + 1),
                Advice.LOOP_THE_ENDING));
      }
    }
    return findings;
  }

  /**
   * "Nothing was heard from Jonas." Of several it is said at once, and to each on their slip. Where
   * that is everybody, the verdict says it.
   */
  static List<Finding> notHeard(Evidence evidence) {
    boolean nobody = evidence.nobodyHeard();
    List<Finding> each =
        evidence.players.stream()
            .filter(player -> Outcome.notHeard(player.review))
            .map(
                player ->
                    new Finding(
                        nobody ? NOBODY_HEARD : NOT_HEARD,
                        Matter.EDGES,
                        player.name(),
                        player.review.written(),
                        Said.of("edges.notHeard", player.name(), player.review.written()),
                        Advice.CHECK_THE_SOUND))
            .toList();
    if (!nobody && each.size() < 2) {
      return each;
    }
    List<Finding> findings = new ArrayList<>(each.stream().map(Finding::quiet).toList());
    if (!nobody) {
      findings.add(together(each));
    }
    return findings;
  }

  private static Finding together(List<Finding> each) {
    List<Object> names = each.stream().<Object>map(Finding::player).toList();
    Said says =
        Said.of(
            "edges.severalNotHeard",
            names.size() <= MOST_NAMES
                ? new Said.Row(names, true)
                : Said.of("edges.ofPlayers", names.size()));
    double written = each.stream().mapToDouble(Finding::size).sum();
    return Finding.ofBand(NOT_HEARD, Matter.EDGES, written, says, null);
  }

  /** "in bar 10", "from bar 10 to bar 13", "from bar 10 to the end". */
  private static Said bars(Evidence evidence, Displacement one) {
    int first = one.fromBar() + 1;
    if (one.toBar() == first) {
      return Said.of("bars.in", first);
    }
    return one.toBar() >= evidence.bars()
        ? Said.of("bars.toTheEnd", first)
        : Said.of("bars.fromTo", first, one.toBar());
  }
}
