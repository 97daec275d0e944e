package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Span;

/** One part with its player's attacks, cleaned of what does not count. */
final class Chair {
  final Part part;

  /** Written steps that count, ascending: neither while away nor after the take was stopped. */
  final int[] steps;

  /** For each of {@link #steps}, its index in the part. */
  final int[] writtenIndex;

  /** Written attacks while away. */
  final int awayCount;

  /** Attacks that count, ms from step 0, ascending. */
  final double[] attacks;

  /** For each of {@link #attacks}, its index in the take. */
  final int[] takeIndex;

  /** Indices in the take of attacks that belong to another attack. */
  final int[] setAside;

  /** Indices in the take of attacks deep inside free spans, which answer nothing. */
  final int[] freely;

  /** Which attacks are played freely. */
  final FreePlay freePlay;

  /** Indices in the take of attacks played while away. */
  final int[] whileAway;

  /**
   * How far this chair's lean may be off, ms: clock, sound check, and how late its stamps may be on
   * the average.
   */
  final double uncertaintyMillis;

  Chair(Sheet sheet, Part part, List<Integer> played) {
    this.part = part;
    freePlay = new FreePlay(sheet, part.free());
    List<Attack> all = sheet.take.attacks();
    List<Integer> ordered = new ArrayList<>(played);
    ordered.sort((a, b) -> Sheet.inOrder(all.get(a), all.get(b)));
    List<Span> away = new ArrayList<>(part.away());
    away.addAll(unsureSpans(sheet, all, ordered));

    List<Integer> kept = new ArrayList<>();
    List<Integer> aside = new ArrayList<>();
    List<Integer> absent = new ArrayList<>();
    List<Integer> free = new ArrayList<>();
    Onsets onsets = new Onsets();
    for (int index : ordered) {
      Attack attack = all.get(index);
      double at = sheet.millis(attack.micros());
      if (Sheet.inside(away, (double) attack.micros())) {
        absent.add(index);
        continue;
      }
      if (onsets.aside(at, attack.pitch(), attack.setAside())) {
        aside.add(index);
        continue;
      }
      (freePlay.deep(at) ? free : kept).add(index);
    }
    takeIndex = ints(kept);
    setAside = ints(aside);
    whileAway = ints(absent);
    freely = ints(free);
    double late =
        kept.stream()
            .map(index -> all.get(index).lateByMillis())
            .mapToDouble(millis -> millis == null ? 0 : millis)
            .average()
            .orElse(0);
    uncertaintyMillis = Math.hypot(part.uncertaintyMillis(), late);
    attacks = new double[kept.size()];
    for (int i = 0; i < attacks.length; i++) {
      attacks[i] = sheet.millis(all.get(takeIndex[i]).micros());
    }

    List<Integer> counted = new ArrayList<>();
    int missed = 0;
    for (int k = 0; k < part.attackSteps().size(); k++) {
      if (part.attackSteps().get(k) > sheet.lastCountedStep) {
        break;
      }
      double micros = sheet.grid.microsAt(part.attackSteps().get(k));
      if (Sheet.inside(away, micros)) {
        missed++;
      } else {
        counted.add(k);
      }
    }
    awayCount = missed;
    writtenIndex = ints(counted);
    steps = new int[counted.size()];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = part.attackSteps().get(writtenIndex[i]);
    }
  }

  /**
   * Runs of attacks whose clock was not trusted are time away: neither right nor wrong, and what is
   * written there is not counted.
   */
  private static List<Span> unsureSpans(Sheet sheet, List<Attack> all, List<Integer> ordered) {
    List<Span> spans = new ArrayList<>();
    long margin = Math.round(sheet.stepMillis * 500);
    int from = -1;
    for (int i = 0; i <= ordered.size(); i++) {
      boolean unsure = i < ordered.size() && all.get(ordered.get(i)).unsure();
      if (unsure && from < 0) {
        from = i;
      } else if (!unsure && from >= 0) {
        long first = all.get(ordered.get(from)).micros() - margin;
        long last = all.get(ordered.get(i - 1)).micros() + margin;
        spans.add(new Span(Math.max(first, -(1L << 53) + 1), Math.min(last, (1L << 53) - 1)));
        from = -1;
      }
    }
    return spans;
  }

  private static int[] ints(List<Integer> values) {
    return values.stream().mapToInt(Integer::intValue).toArray();
  }
}
