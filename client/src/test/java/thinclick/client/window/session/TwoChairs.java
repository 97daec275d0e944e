package thinclick.client.window.session;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import thinclick.client.link.PlayedAttack;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.time.MonotonicClock;

/** A room in this window where Ana leads and Ben has the second chair at her computer. */
public abstract class TwoChairs extends PlainThread {
  @TempDir Path folder;

  protected Session session;

  @BeforeEach
  final void begin() {
    session = new Session(windowThread, MonotonicClock.SYSTEM, folder);
  }

  @AfterEach
  final void end() {
    run(session::close);
    windowThread.shutdownNow();
  }

  /** Opens the room, deals a drill to both and has it counted in; Ben's seat. */
  protected final FurtherSeat take(Drill drill, double tempo) {
    run(() -> session.openHere("Ana", false));
    until(() -> session.state().clock().state() == ClockState.STEADY);
    run(() -> session.addSeat("Ben", why -> {}));
    until(() -> session.state().people().size() == 2);
    run(
        () -> {
          List<String> all = session.state().people().stream().map(Person::playerId).toList();
          session.lead().chooseAndDeal(new Lead.Hand(drill, tempo, 1, all));
        });
    FurtherSeat ben = on(() -> session.further().get(0));
    until(() -> session.state().phase() == Phase.DEALT && ben.state().ownPart() != null);
    run(() -> session.lead().countIn());
    until(() -> session.state().takeRuns() && ben.state().takeRuns());
    return ben;
  }

  /** An attack on a step of the take, so late. */
  protected static PlayedAttack attack(Seat seat, int step, long lateMicros) {
    long micros = Math.round(seat.state().grid().microsAt(step)) + lateMicros;
    return new PlayedAttack(seat.link().nanosOf(micros), 90, 60, null, null);
  }
}
