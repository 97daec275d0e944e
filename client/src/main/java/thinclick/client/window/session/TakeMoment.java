package thinclick.client.window.session;

import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.StepGrid;

/**
 * Where a take stands at one instant, in bars and counts: all that a view may show while it runs.
 *
 * @param part which part of the take
 * @param secondsToCountIn whole seconds until the count-in, rounded up; 0 once it has begun
 * @param count the beat that is being counted, from 1; 0 outside the count-in
 * @param bar the bar, from 0; -1 before bar 1; the number of bars once it is over
 * @param stage the index of the stage; -1 outside the stages
 * @param barsToNextStage how many bars until the plan changes, this one included; 0 in the last
 *     stage and outside the stages
 */
public record TakeMoment(
    Part part, int secondsToCountIn, int count, int bar, int stage, int barsToNextStage) {
  /** The parts of a take. */
  public enum Part {
    /** No take. */
    NONE,
    /** Announced, the count-in is still to come. */
    BEFORE,
    /** The count-in sounds. */
    COUNT_IN,
    /** From bar 1 to the end of the stages. */
    PLAYING,
    /** The stages are over. */
    OVER
  }

  /** No take. */
  public static final TakeMoment NONE = new TakeMoment(Part.NONE, 0, 0, -1, -1, 0);

  /** The moment at an instant of room time. */
  public static TakeMoment at(StepGrid grid, ClickPlan plan, Announced announced, long roomMicros) {
    if (roomMicros < announced.countInMicros()) {
      double seconds = (announced.countInMicros() - roomMicros) / 1e6;
      return new TakeMoment(Part.BEFORE, (int) Math.ceil(seconds), 0, -1, -1, 0);
    }
    double beats = (roomMicros - grid.startMicros()) / grid.beatMicros();
    int beatsPerBar = grid.meter().beatsPerBar();
    if (beats < 0) {
      int count = Math.floorMod((int) Math.floor(beats), beatsPerBar) + 1;
      return new TakeMoment(Part.COUNT_IN, 0, count, -1, -1, 0);
    }
    int bar = (int) Math.min(plan.bars(), Math.floor(beats / beatsPerBar));
    int stage = plan.stageAt(bar);
    if (stage < 0) {
      return new TakeMoment(Part.OVER, 0, 0, plan.bars(), -1, 0);
    }
    boolean last = stage == plan.stages().size() - 1;
    int toNext = last ? 0 : plan.fromBar(stage + 1) - bar;
    return new TakeMoment(Part.PLAYING, 0, 0, bar, stage, toNext);
  }
}
