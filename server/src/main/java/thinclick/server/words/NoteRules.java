package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.file.Attack;
import thinclick.server.scoring.Analysis.Kind;

/** Notes that were dropped or added. */
final class NoteRules {
  /** Fewer than so many are not named. */
  private static final int FEWEST = 3;

  /** Named from this share of the written attacks on. */
  private static final double SHARE = 0.05;

  /** Attacks of this velocity and less, among much louder ones, are faint. */
  private static final int FAINT = 20;

  private NoteRules() {}

  /**
   * "Jonas dropped 6 of 48." Worth a sentence where many were dropped besides a late entry or a
   * lost ending; what is said is all of them, as the table and the picture count.
   */
  static List<Finding> dropped(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : evidence.players) {
      int dropped = evidence.droppedElsewhere(player);
      if (many(dropped, player)) {
        findings.add(
            new Finding(
                "dropped",
                Matter.NOTES,
                player.name(),
                (double) dropped / player.review.written(),
                Said.of(
                    "notes.dropped",
                    player.name(),
                    player.review.dropped(),
                    player.review.written()),
                Advice.SLOWER));
      }
    }
    return findings;
  }

  /**
   * "Jonas added 7 notes." Faint ones are said as what they are, since a pad may have sent them.
   */
  static List<Finding> added(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : evidence.players) {
      int added = evidence.addedElsewhere(player);
      if (!many(added, player)) {
        continue;
      }
      int faint = faint(evidence, player);
      boolean pad = 2 * faint > added;
      String key = !pad ? "notes.added" : faint == added ? "notes.allFaint" : "notes.faint";
      findings.add(
          new Finding(
              "added",
              pad ? Matter.CAVEAT : Matter.NOTES,
              player.name(),
              (double) added / player.review.written(),
              Said.of(key, player.name(), added, faint),
              pad ? Advice.CHECK_THE_PAD : Advice.GAPPED_ANDS));
    }
    return findings;
  }

  /** "Mina's pad sent 13 doubled attacks; they are set aside." */
  static List<Finding> doubled(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    List<Attack> attacks = evidence.take().attacks();
    for (Chairful player : evidence.players) {
      int doubles = player.doubles(attacks);
      if (many(doubles, player)) {
        findings.add(
            new Finding(
                "doubled",
                Matter.CAVEAT,
                player.name(),
                doubles,
                Said.of("caveat.doubled", player.name(), doubles),
                Advice.CHECK_THE_PAD));
      }
    }
    return findings;
  }

  private static int faint(Evidence evidence, Chairful player) {
    List<Attack> attacks = evidence.take().attacks();
    List<Integer> loud = player.velocities(attacks, Kind.MATCHED).stream().sorted().toList();
    if (loud.isEmpty() || loud.get(loud.size() / 2) < 2 * FAINT) {
      return 0;
    }
    return (int)
        player.velocities(attacks, Kind.ADDED).stream()
            .filter(velocity -> velocity <= FAINT)
            .count();
  }

  private static boolean many(int count, Chairful player) {
    return count >= FEWEST && count >= SHARE * player.review.written();
  }
}
