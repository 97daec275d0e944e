package thinclick.client.window.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.material.Stock;

/** What is dealt to somebody who practises alone. */
class PracticeTest extends PlainThread {
  @TempDir Path folder;
  private Session session;

  @BeforeEach
  void atTheDoor() {
    session = on(() -> new Session(windowThread, MonotonicClock.SYSTEM, folder));
  }

  @AfterEach
  void leave() {
    run(session::close);
    windowThread.shutdownNow();
  }

  private List<Integer> dealt(Drill drill) {
    run(() -> session.practise("Ana", new Company(drill, 90, 0, List.of())));
    until(() -> session.state().phase() == Phase.DEALT);
    return on(() -> session.state().dealt().parts().get(0).attackSteps());
  }

  @Test
  void aDrillOfOnesOwnWithTheNameOfOneOfTheStockIsPlayedAsItIsWritten() {
    Drill stock = Stock.find("Even eighths");
    Drill.Cell ones = new Drill.Cell(8, List.of(0), null, null, null, null, null);
    Drill own = stock.withChairs(List.of(stock.chairs().get(0).edited().cell(ones).chair()));

    assertThat(dealt(own)).isNotEmpty().allMatch(step -> step % 8 == 0);
  }
}
