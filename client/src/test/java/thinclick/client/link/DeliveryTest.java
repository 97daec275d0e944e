package thinclick.client.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import thinclick.protocol.message.TakeMessage.Attacks;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.time.VirtualTime;

/** When what a host does not store is sent again, on a clock that the test moves. */
class DeliveryTest {
  private static final long SECOND = 1_000_000_000L;

  private final VirtualTime time = new VirtualTime(0);
  private final LinkLoop loop = LinkLoop.start(time);
  private final List<Long> sentAtSeconds = new CopyOnWriteArrayList<>();
  private final List<Integer> told = new CopyOnWriteArrayList<>();
  private final Delivery delivery =
      new Delivery(
          loop,
          () -> true,
          message -> {
            if (message instanceof Attacks) {
              sentAtSeconds.add(time.nanos() / SECOND);
            }
          },
          told::add);

  @AfterEach
  void close() {
    onTheLoop(delivery::close);
    loop.close();
  }

  @Test
  void aHostThatRefusesEveryTimeIsAskedLessAndLessOften() {
    onTheLoop(() -> play("r-t1"));
    onTheLoop(delivery::storeUnavailable);
    refusingUntil(185);

    assertThat(sentAtSeconds).containsExactly(0L, 1L, 3L, 7L, 15L, 31L, 63L, 123L, 183L);
    onTheLoop(() -> delivery.stored(new TakeNews.Stored("r-t1", 1)));
    onTheLoop(() -> play("r-t1"));
    onTheLoop(delivery::storeUnavailable);
    refusingUntil(189);
    assertThat(sentAtSeconds).as("it wrote in between").endsWith(183L, 185L, 186L, 188L);
  }

  @Test
  void aTakeThatIsRefusedForGoodIsSentNoMoreAndAnotherIs() {
    onTheLoop(() -> play("r-t1"));
    onTheLoop(() -> play("r-t2"));
    List<Integer> lost = new ArrayList<>();
    onTheLoop(() -> lost.add(delivery.refusedForGood("r-t1", "expected one of the last takes")));
    onTheLoop(() -> lost.add(delivery.refusedForGood("r-t1", "once more, for its end")));
    sentAtSeconds.clear();
    time.advanceTo(5 * SECOND);
    onTheLoop(() -> {});

    assertThat(lost).containsExactly(1, 0);
    assertThat(told).endsWith(1);
    assertThat(sentAtSeconds).as("take 2 alone").containsExactly(5L);
  }

  private void play(String takeId) {
    delivery.begin(takeId, 1, 0);
    delivery.add(WireAttack.tap(1_000), PlayedAttack.tap(time.nanos()));
  }

  private void refusingUntil(long second) {
    int refused = sentAtSeconds.size();
    while (time.runNext(second * SECOND)) {
      onTheLoop(() -> {}); // what was run hands its work to the loop
      if (sentAtSeconds.size() > refused) {
        refused = sentAtSeconds.size();
        onTheLoop(delivery::storeUnavailable);
      }
    }
  }

  private void onTheLoop(Runnable task) {
    CompletableFuture.runAsync(task, loop::run).join();
  }
}
