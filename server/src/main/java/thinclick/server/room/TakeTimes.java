package thinclick.server.room;

import thinclick.protocol.file.Take;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.StepGrid;

/**
 * When the stages of a take begin and when it ends, room time of the take's own epoch: worked out
 * once for what is written, since a room asks at every event.
 */
final class TakeTimes {
  /** When the last bar is over by the written grid. */
  final long nominalEndMicros;

  /** When the take is ended: two beats later, at least a second, for a band that drags. */
  final long endMicros;

  private final long[] stageMicros;
  private final long saidBeforeMicros;

  TakeTimes(Take written) {
    StepGrid grid = written.grid();
    ClickPlan plan = written.plan();
    stageMicros = new long[plan.stages().size()];
    for (int stage = 0; stage < stageMicros.length; stage++) {
      stageMicros[stage] = grid.instantOf((long) plan.fromBar(stage) * grid.stepsPerBar());
    }
    saidBeforeMicros = Math.round(2 * grid.stepsPerBar() * grid.stepMicros());
    nominalEndMicros = grid.instantOf((long) plan.bars() * grid.stepsPerBar());
    endMicros = nominalEndMicros + Math.max(1_000_000, Math.round(2 * grid.beatMicros()));
  }

  int stages() {
    return stageMicros.length;
  }

  /** When the first step of a stage is. */
  long stageMicros(int stage) {
    return stageMicros[stage];
  }

  /** A stage is said two bars ahead. */
  long stageSaidMicros(int stage) {
    return stageMicros[stage] - saidBeforeMicros;
  }
}
