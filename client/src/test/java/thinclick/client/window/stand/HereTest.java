package thinclick.client.window.stand;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.client.link.PlayedAttack;
import thinclick.client.window.session.BarMark;
import thinclick.client.window.session.BarMark.Kind;
import thinclick.client.window.session.FurtherSeat;
import thinclick.client.window.session.Lead;
import thinclick.client.window.session.PlainThread;
import thinclick.client.window.session.Seat;
import thinclick.client.window.session.Session;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.material.Stock;

/** Of whoever plays at this computer nothing is on its way: what they dropped is known at once. */
class HereTest extends PlainThread {
  private static final long LATE_MICROS = 40_000;

  @TempDir Path folder;

  private Session session;

  @BeforeEach
  void begin() {
    session = new Session(windowThread, MonotonicClock.SYSTEM, folder);
  }

  @AfterEach
  void end() {
    run(session::close);
    windowThread.shutdownNow();
  }

  @Test
  void whatOneHereDroppedIsKnownThoughNothingWasHeardOfThem() {
    run(() -> session.openHere("Ana", false));
    until(() -> session.state().clock().state() == ClockState.STEADY);
    run(() -> session.addSeat("Ben", why -> {}));
    until(() -> session.state().people().size() == 2);
    List<String> all = on(() -> session.state().people().stream().map(Person::playerId).toList());
    run(() -> session.lead().chooseAndDeal(new Lead.Hand(Stock.find("Even eighths"), 120, 1, all)));
    FurtherSeat ben = on(() -> session.further().get(0));
    until(() -> session.state().phase() == Phase.DEALT && ben.state().ownPart() != null);
    run(() -> session.lead().countIn());
    until(() -> session.state().takeRuns() && ben.state().takeRuns());

    StandModel own = on(() -> new StandModel(session, MonotonicClock.SYSTEM));
    StandModel near = on(() -> new StandModel(ben, MonotonicClock.SYSTEM));
    assertThat(others(own, List.of(own)))
        .as("somebody elsewhere, of whom all may be on its way")
        .isEmpty();
    List<BarMark> silent = others(own, List.of(own, near)).get("Ben");
    assertThat(silent).isNotEmpty().extracting(BarMark::kind).containsOnly(Kind.DROPPED);
    assertThat(others(own, List.of(own, near))).as("the others alone").containsOnlyKeys("Ben");

    run(() -> playFirst(ben));
    List<BarMark> played = others(own, List.of(own, near)).get("Ben");
    assertThat(played).hasSameSizeAs(silent);
    assertThat(played.get(0).kind()).as("how late it was is Ben's to know").isEqualTo(Kind.PLACED);
    assertThat(played.get(0).offMillis()).as("yet on its true place").isGreaterThan(30);
    assertThat(played.subList(1, played.size()))
        .extracting(BarMark::kind)
        .containsOnly(Kind.DROPPED);
  }

  private Map<String, List<BarMark>> others(StandModel own, List<StandModel> here) {
    return on(
        () -> {
          own.hear(0);
          return own.others(0, here);
        });
  }

  private static void playFirst(Seat seat) {
    int step = seat.state().ownPart().attackSteps().get(0);
    long micros = Math.round(seat.state().grid().microsAt(step)) + LATE_MICROS;
    seat.play(new PlayedAttack(seat.link().nanosOf(micros), 90, 60, null, null));
  }
}
