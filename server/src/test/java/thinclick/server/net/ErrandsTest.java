package thinclick.server.net;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import io.netty.channel.embedded.EmbeddedChannel;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.room.Effect;
import thinclick.server.room.PastQuestion;
import thinclick.server.room.Room;
import thinclick.server.room.RoomDrive;
import thinclick.server.room.RoomEvent;
import thinclick.server.store.Store;
import thinclick.server.watch.HostMeters;

/** What becomes of an errand where whoever is sent fails or is gone. */
class ErrandsTest {
  private static final Effect.Recall RECALL =
      new Effect.Recall(1, 7, new PastQuestion.FewestAt("Beats and ands", 120, Set.of("Mina")));

  @TempDir Path folder;
  private final EmbeddedChannel line = new EmbeddedChannel();
  private final ExecutorService pool = Executors.newSingleThreadExecutor();
  private final Busy busy = new Busy();
  private final List<RoomEvent> heard = new ArrayList<>();
  private Store store;

  @BeforeEach
  void open() {
    store = Store.open(folder.resolve("room.db"), InstantSource.system(), available -> {});
  }

  @AfterEach
  void close() {
    pool.shutdown();
    store.close();
    line.finishAndReleaseAll();
  }

  private Errands errands(Consumer<RoomEvent> ear) {
    HostParts parts =
        BareHost.parts(MonotonicClock.SYSTEM, null, store, pool, new HostMeters(), RoomNews.NONE);
    Room room = Room.fresh("room", "balumi", 1, RoomDrive.DRILLS, RoomDrive.DEALER);
    return new Errands(room, line.eventLoop(), parts, busy, ear);
  }

  private void untilIdle() {
    await()
        .until(
            () -> {
              line.runPendingTasks();
              return busy.idle();
            });
  }

  @Test
  void questionThatIsAnsweredIsHeardOnTheRoomsLoop() {
    errands(heard::add).recall(RECALL);
    assertThat(busy.idle()).isFalse();
    untilIdle();

    assertThat(heard)
        .containsExactly(new RoomEvent.Recalled(RECALL, null, "the take has no review yet"));
  }

  @Test
  void questionToAPoolThatTakesNoMoreIsAnsweredWithAReason() {
    pool.shutdown();
    errands(heard::add).recall(RECALL);
    untilIdle();

    assertThat(heard)
        .containsExactly(new RoomEvent.Recalled(RECALL, null, "the takes before cannot be read"));
  }

  @Test
  void takeThatNobodyStoredIsAnsweredWithAReason() {
    Effect.ReadTake wanted = new Effect.ReadTake(1, 7, "t9", null, null);
    Errands errands = errands(heard::add);
    errands.read(wanted);
    errands.review("t9");
    untilIdle();

    assertThat(heard)
        .contains(new RoomEvent.TakeRead(wanted, null, "the take cannot be read"))
        .anySatisfy(event -> assertThat(event).isInstanceOf(RoomEvent.ReviewFailed.class))
        .hasSize(2);
  }

  @Test
  void faultInWhatFollowsKeepsTheHostFromBeingIdleForNoLonger() {
    Errands errands =
        errands(
            event -> {
              throw new IllegalStateException("a fault");
            });
    errands.recall(RECALL);

    untilIdle();
    assertThatThrownBy(line::checkException).hasMessage("a fault");
  }
}
