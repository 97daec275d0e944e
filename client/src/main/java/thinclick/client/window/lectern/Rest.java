package thinclick.client.window.lectern;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.session.Lead.Hand;
import thinclick.client.window.session.RoomState;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.TakeNews.StopReason;
import thinclick.protocol.message.TakeNews.Stopped;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.server.material.Thinning;

/**
 * What is left of a take that was paused: the same deal from the start of the period that was being
 * played, with the click plan as it then stood. It is played as a take of its own.
 *
 * @param dealId the deal that was played
 * @param stoppedBar the bar, from 0, in which it was paused
 * @param fromBar the bar, from 0, from which it goes on
 * @param hand what is dealt for it
 */
record Rest(String dealId, int stoppedBar, int fromBar, Hand hand) {
  /** A leader who stops at a bar line has heard the bar before it (DEVELOPERS, decision 31). */
  private static final double STOPPED_AT = 0.25;

  /**
   * The rest of the last take; null where it was not stopped by the leader.
   *
   * @param played what the take was dealt from
   */
  static @Nullable Rest of(RoomState room, Hand played) {
    Stopped stopped = room.stopped();
    StepGrid grid = room.grid();
    ClickPlan plan = room.plan();
    Dealt dealt = room.dealt();
    if (stopped == null
        || stopped.reason() != StopReason.LEADER
        || grid == null
        || plan == null
        || dealt == null) {
      return null;
    }
    double step = (stopped.atMicros() - grid.startMicros()) / grid.stepMicros() - Rest.STOPPED_AT;
    int bar = (int) Math.floor(step / grid.stepsPerBar());
    bar = Math.max(0, Math.min(plan.bars() - 1, bar));
    int from = bar - bar % played.drill().periodBars();
    List<Stage> left = Thinning.restOf(plan, from);
    return new Rest(
        dealt.dealId(),
        bar,
        from,
        new Hand(
            played.drill().withStages(left),
            played.tempo(),
            played.seed(),
            played.chairs(),
            played.levels()));
  }
}
