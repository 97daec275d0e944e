package thinclick.client.window.session;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.StepGrid;
import thinclick.server.scoring.LiveScorer;
import thinclick.server.scoring.LiveScorer.Judgement;
import thinclick.server.scoring.LiveScorer.Kind;

/**
 * Attacks against the pulse that the band shares, as far as the others are heard. Judged as they
 * come, from what came before; the review afterwards sees everything.
 */
final class PulseMarks {
  private final StepGrid grid;
  private final String own;
  private final LiveScorer scorer;
  private final Map<String, Part> parts;
  private final Set<String> heard = new HashSet<>();

  /** By player, then by instant. */
  private final Map<String, NavigableMap<Long, Judgement>> judged = new HashMap<>();

  /**
   * @param take the take before its first attack
   * @param own the own part
   */
  PulseMarks(Take take, Part own) {
    this.grid = take.grid();
    this.own = own.player();
    this.scorer = new LiveScorer(take);
    this.parts = take.parts().stream().collect(Collectors.toMap(Part::player, part -> part));
  }

  /** One attack, in the order of time as far as it is known. */
  void hear(String player, long micros) {
    if (!parts.containsKey(player)) {
      return;
    }
    heard.add(player);
    if (BarMarks.beforeBarOne(grid, micros)) {
      return;
    }
    for (Judgement one : scorer.judge(player, micros)) {
      judged.computeIfAbsent(one.player(), any -> new TreeMap<>()).put(one.micros(), one);
    }
  }

  /** True once somebody else has been heard; one alone has no pulse to be held against. */
  boolean known() {
    return heard.size() > 1 || (heard.size() == 1 && !heard.contains(own));
  }

  /** The own marks of a bar, in order. */
  List<BarMark> of(int bar, double plainMillis) {
    return marks(own, bar, plainMillis, Double.POSITIVE_INFINITY);
  }

  /**
   * What was heard of another player in a bar, in order. How early or late they are is theirs to
   * know and no mark says it; and since what they play may still be on its way, nothing counts as
   * dropped until something later was heard.
   */
  List<BarMark> heardOf(String player, int bar) {
    NavigableMap<Long, Judgement> theirs = judged.get(player);
    Part part = parts.get(player);
    if (theirs == null || part == null || part.freeAt(bar)) {
      return List.of();
    }
    return marks(player, bar, Double.POSITIVE_INFINITY, (double) theirs.lastKey());
  }

  /**
   * @param lastMicros what is written after it is not known to be dropped
   */
  private List<BarMark> marks(String player, int bar, double plainMillis, double lastMicros) {
    int first = bar * grid.stepsPerBar();
    int end = first + grid.stepsPerBar();
    Part part = parts.get(player);
    List<Integer> written = part == null ? List.of() : part.attackSteps();
    Map<Integer, List<BarMark>> marks = new TreeMap<>();
    Set<Integer> answered = new HashSet<>();
    for (Judgement one : judged.getOrDefault(player, new TreeMap<>()).values()) {
      Integer step = one.writtenStep();
      Double off = one.asynchronyMillis();
      if (one.kind() == Kind.SET_ASIDE || one.kind() == Kind.FREE) {
        continue;
      }
      if (step != null && off != null && one.displacement() == 0 && answered.add(step)) {
        add(marks, judged(step, off, plainMillis));
      } else {
        int nearest = nearest(grid, one.micros());
        double beside = (one.micros() - grid.microsAt(nearest)) / 1e3;
        add(marks, mark(BarMark.Kind.ADDED, nearest, beside));
      }
    }
    for (int step : written) {
      if (!answered.contains(step) && grid.microsAt(step) < lastMicros) {
        add(marks, mark(BarMark.Kind.DROPPED, step, 0));
      }
    }
    return marks.entrySet().stream()
        .filter(entry -> entry.getKey() >= first && entry.getKey() < end)
        .flatMap(entry -> entry.getValue().stream())
        .toList();
  }

  private BarMark judged(int step, double offMillis, double plainMillis) {
    if (Math.abs(offMillis) <= plainMillis) {
      return mark(BarMark.Kind.PLACED, step, offMillis);
    }
    return mark(offMillis < 0 ? BarMark.Kind.EARLY : BarMark.Kind.LATE, step, offMillis);
  }

  private BarMark mark(BarMark.Kind kind, int step, double offMillis) {
    return new BarMark(kind, step, offMillis, offMillis * 1e3 / grid.stepMicros());
  }

  private static void add(Map<Integer, List<BarMark>> marks, BarMark mark) {
    marks.computeIfAbsent(mark.step(), step -> new ArrayList<>()).add(mark);
  }

  /** The step whose sounding place is nearest to an instant. */
  static int nearest(StepGrid grid, long micros) {
    int guess = (int) Math.floor((micros - grid.startMicros()) / grid.stepMicros());
    int best = Math.max(0, guess);
    for (int step = Math.max(0, guess - 1); step <= guess + 1; step++) {
      if (Math.abs(micros - grid.microsAt(step)) < Math.abs(micros - grid.microsAt(best))) {
        best = step;
      }
    }
    return best;
  }
}
