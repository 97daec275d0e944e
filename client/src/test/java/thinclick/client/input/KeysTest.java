package thinclick.client.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import thinclick.protocol.time.VirtualTime;

/** Which presses are attacks, and how late their stamps may be. */
class KeysTest {
  @Test
  void aHeldKeyIsOneAttack() {
    KeyTaps keys = new KeyTaps();
    assertThat(keys.pressed("F")).isTrue();
    assertThat(keys.pressed("F")).isFalse();
    assertThat(keys.pressed("F")).isFalse();
    assertThat(keys.pressed("J")).isTrue();
    keys.released("F");
    assertThat(keys.pressed("F")).isTrue();
  }

  @Test
  void aKeyHeldWhenTheFocusWentTapsAgainAfterwards() {
    KeyTaps keys = new KeyTaps();
    keys.pressed("F");
    keys.focusLost();
    assertThat(keys.pressed("F")).isTrue();
  }

  @Test
  void everyLetterBelongsToOneHand() {
    for (char letter = 'A'; letter <= 'Z'; letter++) {
      assertThat(KeyHalf.ALL.has(letter)).isTrue();
      assertThat(KeyHalf.LEFT.has(letter)).as("%s", letter).isNotEqualTo(KeyHalf.RIGHT.has(letter));
    }
    assertThat(KeyHalf.LEFT.has('F')).isTrue();
    assertThat(KeyHalf.RIGHT.has('J')).isTrue();
    assertThat(KeyHalf.ALL.has(' ')).isFalse();
  }

  @Test
  void aStampIsLateByAtMostTheTimeSinceTheThreadWasFree() {
    VirtualTime time = new VirtualTime(0);
    List<Runnable> queue = new ArrayList<>();
    try (Heartbeat heartbeat = new Heartbeat(time, queue::add)) {
      heartbeat.beat();
      time.advanceTo(3_000_000);
      queue.remove(0).run();
      time.advanceTo(7_500_000);
      assertThat(heartbeat.lateByMillis(time.nanos())).isCloseTo(4.5, within(1e-9));
      heartbeat.beat();
      heartbeat.beat();
      assertThat(queue).as("a busy thread is asked once").hasSize(1);
      time.advanceTo(60_000_000);
      assertThat(heartbeat.lateByMillis(time.nanos())).isCloseTo(57, within(1e-9));
    }
  }

  @Test
  void aDevicesStampsTakeTheJitterOutOfTheArrival() {
    Random random = new Random(3);
    StampMapper mapper = new StampMapper();
    long deviceAhead = 5_000_000_000L;
    for (int i = 0; i < 400; i++) {
      long truth = 1_000_000_000L + i * 50_000_000L;
      long arrival = truth + 400_000 + (long) (random.nextDouble() * 4_000_000);
      long stamp = mapper.stamp(arrival, (truth + deviceAhead) / 1_000);
      assertThat(stamp).isLessThanOrEqualTo(arrival);
      if (i > 50) {
        assertThat(stamp - truth).as("seed 3, note %d", i).isBetween(400_000L, 800_000L);
      }
    }
  }

  @Test
  void withoutTheDevicesStampsTheArrivalStands() {
    StampMapper mapper = new StampMapper();
    assertThat(mapper.stamp(10_000_000, -1)).isEqualTo(10_000_000);
    assertThat(mapper.stamp(20_000_000, 5_000)).isEqualTo(20_000_000);
    assertThat(mapper.stamp(30_000_000, 4_000)).as("backwards").isEqualTo(30_000_000);
    assertThat(mapper.stamp(90_000_000, 5_000)).isEqualTo(90_000_000);
    assertThat(mapper.stamp(190_000_000, 6_000)).as("strayed").isEqualTo(190_000_000);
  }
}
