package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.RejectedExecutionException;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ChoresTest {
  private final Chores chores = new Chores();
  private final List<String> done = new CopyOnWriteArrayList<>();

  @Test
  void areDoneOneAfterAnotherAndAllOfThemBeforeTheEnd() {
    CountDownLatch closing = new CountDownLatch(1);
    chores.once("the first", closing::await);
    IntStream.range(0, 20).forEach(i -> chores.once("more", () -> done.add("chore " + i)));
    assertThat(done).isEmpty();
    closing.countDown();
    chores.close();

    assertThat(done)
        .containsExactlyElementsOf(IntStream.range(0, 20).mapToObj(i -> "chore " + i).toList());
  }

  @Test
  void oneThatFailsKeepsNoOtherFromBeingDone() {
    chores.once(
        "deleting",
        () -> {
          throw new IOException("the disk is gone");
        });
    chores.once("a backup", () -> done.add("a backup"));
    chores.close();

    assertThat(done).containsExactly("a backup");
  }

  @Test
  void whatIsDueLaterIsLeftOutAtTheEnd() throws InterruptedException {
    CountDownLatch begun = new CountDownLatch(1);
    chores.every("a backup", 0, 24, () -> done.add("at the start"));
    chores.every("deleting", 24, 24, () -> done.add("tomorrow"));
    chores.once("what comes behind it", begun::countDown);
    begun.await();
    chores.close();

    assertThat(done).containsExactly("at the start");
    assertThatThrownBy(() -> chores.once("too late", () -> {}))
        .isInstanceOf(RejectedExecutionException.class);
  }
}
