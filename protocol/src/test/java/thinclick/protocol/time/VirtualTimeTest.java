package thinclick.protocol.time;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class VirtualTimeTest {
  private final VirtualTime time = new VirtualTime(1_000);
  private final List<String> ran = new ArrayList<>();

  @Test
  void tasksRunInTheOrderOfTheirInstantsAndThenOfAsking() {
    time.at(1_300, () -> ran.add("third at " + time.nanos()));
    time.at(1_200, () -> ran.add("first at " + time.nanos()));
    time.at(1_200, () -> ran.add("second at " + time.nanos()));

    time.advanceTo(1_300);

    assertThat(ran).containsExactly("first at 1200", "second at 1200", "third at 1300");
    assertThat(time.next()).isEmpty();
  }

  @Test
  void tasksOfOneInstantCanBeRunOneByOne() {
    time.at(1_200, () -> ran.add("first"));
    time.at(1_200, () -> ran.add("second"));

    assertThat(time.runNext(1_300)).isTrue();
    assertThat(ran).containsExactly("first");
    assertThat(time.nanos()).isEqualTo(1_200);

    assertThat(time.runNext(1_300)).isTrue();
    assertThat(time.runNext(1_300)).isFalse();
    assertThat(ran).containsExactly("first", "second");
    assertThat(time.nanos()).isEqualTo(1_300);
  }

  @Test
  void whatIsAskedForOnTheWayRunsOnTheWay() {
    time.at(1_100, () -> time.at(1_150, () -> ran.add("at " + time.nanos())));

    time.advanceTo(1_200);

    assertThat(ran).containsExactly("at 1150");
    assertThat(time.nanos()).isEqualTo(1_200);
  }

  @Test
  void whatIsCancelledOrNotYetDueDoesNotRun() {
    Timers.Pending cancelled = time.at(1_100, () -> ran.add("cancelled"));
    time.at(1_201, () -> ran.add("later"));
    cancelled.cancel();

    time.advanceTo(1_200);

    assertThat(ran).isEmpty();
    assertThat(time.next()).hasValue(1_201);
  }

  @Test
  void theClockNeverGoesBack() {
    time.advanceTo(500);
    time.at(400, () -> ran.add("at " + time.nanos()));
    time.advanceTo(600);

    assertThat(time.nanos()).isEqualTo(1_000);
    assertThat(ran).isEmpty();
    time.advanceTo(1_000);
    assertThat(ran).containsExactly("at 1000");
  }
}
