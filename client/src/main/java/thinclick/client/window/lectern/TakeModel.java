package thinclick.client.window.lectern;

import javafx.beans.property.BooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.session.Lead.Hand;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Phase;

/** The take in the leader's hand: counted in, stopped, paused, gone on with. */
public final class TakeModel {
  private final Session session;
  private final LecternModel lectern;
  private final BooleanProperty asHeld = new SimpleBooleanProperty();

  /** The take that this leader paused; empty for none. */
  private String paused = "";

  private @Nullable Rest rest;

  /** The rest that is being dealt, to be counted in as soon as it is; null for none. */
  private @Nullable Hand countsIn;

  TakeModel(Session session, LecternModel lectern) {
    this.session = session;
    this.lectern = lectern;
    session.stateProperty().addListener((any, old, now) -> follow(now));
  }

  private void follow(RoomState now) {
    Hand counts = countsIn;
    if (!now.inside()) {
      paused = "";
      rest = null;
      countsIn = null;
    } else if (pausedJustNow(now)) {
      Hand last = lectern.lastDealt();
      rest = last == null ? null : Rest.of(now, last);
    } else if (counts != null
        && now.phase() == Phase.DEALT
        && now.dealt() != null
        && now.dealt().stages().equals(counts.drill().stages())) {
      countsIn = null;
      session.lead().countIn();
    }
  }

  private boolean pausedJustNow(RoomState now) {
    Hand last = lectern.lastDealt();
    return now.announced() != null
        && now.announced().takeId().equals(paused)
        && now.stopped() != null
        && now.dealt() != null
        && countsIn == null
        && rest == null
        && last != null
        && last.drill().title().equals(now.dealt().title());
  }

  /** True where the count-in can be announced. */
  public boolean canCountIn() {
    RoomState room = session.state();
    return room.leader() && room.inside() && room.phase() == Phase.DEALT;
  }

  /** Counts in. */
  public void countIn() {
    if (canCountIn()) {
      session.lead().countIn();
    }
  }

  /** True where there is something to stop. */
  public boolean canStop() {
    return session.state().leader() && session.state().takeRuns();
  }

  /** Stops. */
  public void stop() {
    if (canStop()) {
      session.lead().stop();
    }
  }

  /** Stops the take so that it can be gone on with; what was played is kept. */
  public void pause() {
    RoomState room = session.state();
    if (canStop() && room.announced() != null) {
      paused = room.announced().takeId();
      rest = null;
      session.lead().stop();
    }
  }

  /** True where the last take was paused, whether or not its rest is played. */
  boolean wasPaused(String takeId) {
    return takeId.equals(paused);
  }

  /** What is left of a take that was paused; null for nothing, or where something else is dealt. */
  @Nullable Rest rest() {
    Rest left = rest;
    Dealt now = session.state().dealt();
    return left != null && lectern.canChoose() && now != null && now.dealId().equals(left.dealId())
        ? left
        : null;
  }

  /** Deals what is left of the paused take to the same chairs, and counts in. */
  public void goOn() {
    Rest left = rest();
    if (left != null) {
      rest = null;
      countsIn = left.hand();
      lectern.dealRest(left.hand());
    }
  }

  /** Whether the click of a take follows what is held. */
  public BooleanProperty asHeldProperty() {
    return asHeld;
  }
}
