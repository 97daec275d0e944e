package thinclick.client.window;

import org.jspecify.annotations.Nullable;
import thinclick.client.link.RoomLink;
import thinclick.client.sound.ClickPlayer;
import thinclick.client.sound.CountIn;
import thinclick.client.sound.CueSheet;
import thinclick.client.sound.RoomTimes;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.StepGrid;

/** The click of the room's takes: begun, planned anew and ended as the room says. */
final class TakeClick {
  private final Session session;
  private String takeId = "";
  private String stumbledIn = "";
  private @Nullable ClickPlan plan;

  TakeClick(Session session) {
    this.session = session;
  }

  /** True while a take's click sounds. */
  boolean runs() {
    return !takeId.isEmpty();
  }

  /**
   * The room has changed.
   *
   * @return true where a take's click has just ended
   */
  boolean follow(RoomState room, ClickPlayer player, CountIn countIn) {
    Announced announced = room.announced();
    if (!room.takeRuns() || announced == null) {
      boolean over = runs();
      if (over) {
        takeId = "";
        player.stop();
      }
      return over;
    }
    StepGrid grid = room.grid();
    ClickPlan planned = room.plan();
    RoomLink link = session.link();
    if (grid == null || planned == null || link == null) {
      return false;
    }
    if (!announced.takeId().equals(takeId) || !planned.equals(plan)) {
      takeId = announced.takeId();
      plan = planned;
      player.play(
          CueSheet.ofTake(grid, announced.countInBars(), countIn, planned),
          RoomTimes.of(link::nanosOf, link::roomMicros));
    }
    return false;
  }

  /** True where this take's click, the running or the last one's, did not all sound as planned. */
  boolean stumbledIn(String asked) {
    return asked.equals(stumbledIn);
  }

  /** What did not sound as planned belongs into the take. */
  void interrupted(long fromMicros, long toMicros) {
    Announced announced = session.state().announced();
    RoomLink link = session.link();
    if (announced != null && link != null && announced.takeId().equals(takeId)) {
      stumbledIn = takeId;
      link.clickInterrupted(announced, fromMicros, toMicros);
    }
  }
}
