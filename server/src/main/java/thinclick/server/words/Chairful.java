package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Analysis.Fate;
import thinclick.server.scoring.Analysis.Kind;
import thinclick.server.scoring.PlayerReview;

/** One player's side of the evidence: figures, fates, and where the edges of the playing lie. */
final class Chairful {
  final PlayerReview review;
  final Part part;
  final List<Analysis.Written> written;
  final List<Analysis.Played> played;
  private final int stepsPerBar;

  /** The written attacks that count, in order. */
  private final List<Analysis.Written> counted;

  Chairful(PlayerReview review, Part part, Analysis.PlayerAnalysis analysis, int stepsPerBar) {
    this.review = review;
    this.part = part;
    this.stepsPerBar = stepsPerBar;
    written = analysis.written();
    played = analysis.played();
    counted =
        written.stream()
            .filter(one -> one.fate() != Fate.AWAY && one.fate() != Fate.AFTER_THE_STOP)
            .toList();
  }

  String name() {
    return review.player();
  }

  /** True where everything written was played at home and nothing else was. */
  boolean faultless() {
    return review.dropped() == 0 && review.added() == 0 && review.displacements().isEmpty();
  }

  /** True where none of the written attacks was played. */
  boolean silent() {
    return !counted.isEmpty() && review.dropped() == review.written();
  }

  /** How many of the first written attacks were dropped before the first that was played. */
  int droppedFirst() {
    int count = 0;
    while (count < counted.size() && counted.get(count).fate() == Fate.DROPPED) {
      count++;
    }
    return silent() ? 0 : count;
  }

  /** How many of the last written attacks were dropped after the last that was played. */
  int droppedLast() {
    int count = 0;
    while (count < counted.size()
        && counted.get(counted.size() - 1 - count).fate() == Fate.DROPPED) {
      count++;
    }
    return silent() ? 0 : count;
  }

  /** The bar, from 0, of the first written attack that counts. */
  int firstBar() {
    return barOf(counted.get(0));
  }

  /** The bar, from 0, of the first written attack that was played. */
  int enteredAt() {
    return barOf(counted.get(droppedFirst()));
  }

  /** The bar, from 0, of the last written attack that was played. */
  int lastPlayedAt() {
    return barOf(counted.get(counted.size() - 1 - droppedLast()));
  }

  int barOf(Analysis.Written one) {
    return one.step() / stepsPerBar;
  }

  /** Bars with written attacks that are not counted since the player was away; from, to. */
  @Nullable BarSpan away() {
    List<Integer> bars =
        written.stream().filter(one -> one.fate() == Fate.AWAY).map(this::barOf).toList();
    return bars.isEmpty() ? null : new BarSpan(bars.get(0), bars.get(bars.size() - 1) + 1);
  }

  /** Attacks that sound twice: set aside though their key is that of the one before. */
  int doubles(List<Attack> attacks) {
    int count = 0;
    @Nullable Attack kept = null;
    for (Analysis.Played one : played) {
      Attack attack = attacks.get(one.attack());
      if (one.kind() != Kind.SET_ASIDE) {
        kept = attack;
      } else if (kept != null && (kept.pitch() == null || kept.pitch().equals(attack.pitch()))) {
        count++;
      }
    }
    return count;
  }

  /** The velocities of attacks of one kind, of those that have any. */
  List<Integer> velocities(List<Attack> attacks, Kind kind) {
    List<Integer> found = new ArrayList<>();
    for (Analysis.Played one : played) {
      Integer velocity = attacks.get(one.attack()).velocity();
      if (one.kind() == kind && velocity != null) {
        found.add(velocity);
      }
    }
    return found;
  }

  /**
   * Bars from 0.
   *
   * @param from the first
   * @param to the first after
   */
  record BarSpan(int from, int to) {
    boolean contains(int bar) {
      return bar >= from && bar < to;
    }

    boolean overlaps(int otherFrom, int otherTo) {
      return from < otherTo && otherFrom < to;
    }
  }
}
