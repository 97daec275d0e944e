package thinclick.server.words;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Attack;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Analysis.Fate;
import thinclick.server.scoring.Analysis.Kind;

/**
 * A player who plays what is written for another, from one bar to another. The scorer judges each
 * player against the own part alone and then sees drops, additions and shifts; somebody who stands
 * before the band sees two people with swapped sheets.
 *
 * @param player who plays
 * @param owner whose part it is
 * @param bars where
 * @param mutual true where the owner plays the player's part meanwhile
 * @param sat the share of the owner's written attacks that the player sounded within tolerance
 */
record OtherPart(
    Chairful player, Chairful owner, Chairful.BarSpan bars, boolean mutual, double sat) {
  /** Fewer bars could be chance. */
  private static final int FEWEST_BARS = 3;

  /** Fewer attacks could be chance. */
  private static final int FEWEST_ATTACKS = 8;

  /** A bar follows the other part where so many of its attacks, written and played, agree. */
  private static final double BAR_AGREES = 0.75;

  /** So much of the whole run must agree, as the harmonic mean of written and played. */
  private static final double AGREES = 0.9;

  /** The own part, at whatever shift the scorer found, must explain the run worse by so much. */
  private static final double WORSE = 0.1;

  /** All of them; each player appears once at most. */
  static List<OtherPart> find(Analysis analysis, List<Chairful> players, int stepsPerBar) {
    List<OtherPart> candidates = new ArrayList<>();
    for (Chairful player : players) {
      if (player.faultless()) {
        continue;
      }
      for (Chairful owner : players) {
        if (player != owner && !player.part.attackSteps().equals(owner.part.attackSteps())) {
          candidates.addAll(new Comparison(analysis, player, owner, stepsPerBar).runs());
        }
      }
    }
    List<OtherPart> found = new ArrayList<>();
    for (OtherPart one : candidates) {
      OtherPart answered =
          candidates.stream()
              .filter(
                  other ->
                      other.player == one.owner
                          && other.owner == one.player
                          && other.bars.overlaps(one.bars.from(), one.bars.to()))
              .findFirst()
              .orElse(null);
      boolean mutual = answered != null;
      if (mutual || one.beatsOwnPart(analysis, stepsPerBar)) {
        found.add(new OtherPart(one.player, one.owner, one.bars, mutual, one.sat));
      }
    }
    found.sort(
        Comparator.comparingInt((OtherPart one) -> one.bars.from() - one.bars.to())
            .thenComparing(one -> one.mutual ? 0 : 1));
    List<OtherPart> once = new ArrayList<>();
    for (OtherPart one : found) {
      if (once.stream().noneMatch(earlier -> earlier.player == one.player)) {
        once.add(one);
      }
    }
    return List.copyOf(once);
  }

  private boolean beatsOwnPart(Analysis analysis, int stepsPerBar) {
    Comparison comparison = new Comparison(analysis, player, owner, stepsPerBar);
    return comparison.ownAgreement(bars) <= comparison.agreement(bars) - WORSE;
  }

  /** One player's attacks laid on another's part, bar by bar. */
  private static final class Comparison {
    private final Chairful player;
    private final Chairful owner;
    private final int[] written;
    private final int[] hits;
    private final int[] attacks;
    private final int[] ownWritten;
    private final int[] ownMatched;
    private final int[] ownHome;

    Comparison(Analysis analysis, Chairful player, Chairful owner, int stepsPerBar) {
      this.player = player;
      this.owner = owner;
      List<@Nullable Double> pulse = analysis.pulseMillis();
      int bars = (pulse.size() + stepsPerBar - 1) / stepsPerBar;
      written = new int[bars];
      hits = new int[bars];
      attacks = new int[bars];
      ownWritten = new int[bars];
      ownMatched = new int[bars];
      ownHome = new int[bars];
      double[] times = times(analysis, player);
      NavigableMap<Double, Integer> stepAt = new TreeMap<>();
      for (int step = 0; step < pulse.size(); step++) {
        Double at = pulse.get(step);
        if (at != null) {
          stepAt.put(at, step);
        }
      }
      for (double time : times) {
        int step = nearestStep(stepAt, time);
        if (step >= 0) {
          attacks[step / stepsPerBar]++;
        }
      }
      double tolerance = analysis.review().toleranceMillis();
      for (Analysis.Written one : owner.written) {
        Double at = pulse.get(one.step());
        if (at != null && one.fate() != Fate.AFTER_THE_STOP) {
          written[one.step() / stepsPerBar]++;
          hits[one.step() / stepsPerBar] += isNear(times, at, tolerance) ? 1 : 0;
        }
      }
      for (Analysis.Written one : player.written) {
        int bar = one.step() / stepsPerBar;
        ownWritten[bar]++;
        ownMatched[bar] += one.attack() != null ? 1 : 0;
        ownHome[bar] += one.attack() != null && one.displacement() == 0 ? 1 : 0;
      }
    }

    /** Ascending, ms from step 0. */
    private static double[] times(Analysis analysis, Chairful player) {
      long start = analysis.take().startMicros();
      List<Attack> attacks = analysis.take().attacks();
      return player.played.stream()
          .filter(one -> one.kind() == Kind.MATCHED || one.kind() == Kind.ADDED)
          .mapToDouble(one -> (attacks.get(one.attack()).micros() - start) / 1_000.0)
          .sorted()
          .toArray();
    }

    private static int nearestStep(NavigableMap<Double, Integer> stepAt, double time) {
      Map.Entry<Double, Integer> before = stepAt.floorEntry(time);
      Map.Entry<Double, Integer> after = stepAt.ceilingEntry(time);
      if (before == null || after == null) {
        return before != null ? before.getValue() : after != null ? after.getValue() : -1;
      }
      return time - before.getKey() <= after.getKey() - time ? before.getValue() : after.getValue();
    }

    private static boolean isNear(double[] times, double at, double tolerance) {
      int index = Arrays.binarySearch(times, at - tolerance);
      int first = index >= 0 ? index : -index - 1;
      return first < times.length && times[first] <= at + tolerance;
    }

    /** Runs of bars that follow the other part. */
    List<OtherPart> runs() {
      List<OtherPart> runs = new ArrayList<>();
      int from = -1;
      for (int bar = 0; bar <= written.length; bar++) {
        boolean agrees =
            bar < written.length
                && hits[bar] >= BAR_AGREES * written[bar]
                && hits[bar] >= BAR_AGREES * attacks[bar];
        if (agrees && from < 0) {
          from = bar;
        } else if (!agrees && from >= 0) {
          Chairful.BarSpan span = new Chairful.BarSpan(from, bar);
          if (bar - from >= FEWEST_BARS
              && sum(hits, span) >= FEWEST_ATTACKS
              && agreement(span) >= AGREES
              && homeAgreement(span) <= agreement(span) - WORSE) {
            double sat = (double) sum(hits, span) / Math.max(1, sum(written, span));
            runs.add(new OtherPart(player, owner, span, false, sat));
          }
          from = -1;
        }
      }
      return runs;
    }

    double agreement(Chairful.BarSpan span) {
      return 2.0 * sum(hits, span) / Math.max(1, sum(written, span) + sum(attacks, span));
    }

    /** How well the own part explains the same as it is written: two chairs may share a figure. */
    private double homeAgreement(Chairful.BarSpan span) {
      return 2.0 * sum(ownHome, span) / Math.max(1, sum(ownWritten, span) + sum(attacks, span));
    }

    /** How well the own part explains the same, at whatever shift the scorer found. */
    double ownAgreement(Chairful.BarSpan span) {
      return 2.0 * sum(ownMatched, span) / Math.max(1, sum(ownWritten, span) + sum(attacks, span));
    }

    private static int sum(int[] values, Chairful.BarSpan span) {
      int sum = 0;
      for (int bar = span.from(); bar < span.to(); bar++) {
        sum += values[bar];
      }
      return sum;
    }
  }
}
