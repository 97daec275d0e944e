package thinclick.client.window.stand;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import thinclick.client.window.session.BarMark;
import thinclick.client.window.session.BarMark.Kind;
import thinclick.client.window.session.FurtherSeat;
import thinclick.client.window.session.TwoChairs;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.material.Stock;

/** Of whoever plays at this computer nothing is on its way: what they dropped is known at once. */
class HereTest extends TwoChairs {
  private static final long LATE_MICROS = 40_000;

  @Test
  void whatOneHereDroppedIsKnownThoughNothingWasHeardOfThem() {
    FurtherSeat ben = take(Stock.find("Even eighths"), 120);
    StandModel own = on(() -> new StandModel(session, MonotonicClock.SYSTEM));
    StandModel near = on(() -> new StandModel(ben, MonotonicClock.SYSTEM));
    assertThat(others(own, List.of(own)))
        .as("somebody elsewhere, of whom all may be on its way")
        .isEmpty();
    List<BarMark> silent = others(own, List.of(own, near)).get("Ben");
    assertThat(silent).isNotEmpty().extracting(BarMark::kind).containsOnly(Kind.DROPPED);
    assertThat(others(own, List.of(own, near))).as("the others alone").containsOnlyKeys("Ben");

    int first = on(() -> ben.state().ownPart().attackSteps().get(0));
    run(() -> ben.play(attack(ben, first, LATE_MICROS)));
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
}
