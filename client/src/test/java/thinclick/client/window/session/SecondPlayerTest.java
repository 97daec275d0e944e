package thinclick.client.window.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.client.link.PlayedAttack;
import thinclick.protocol.message.ClientMessage.ClockState;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.material.Stock;

/** Two chairs at one computer in a real room: a part each, on one clock. */
class SecondPlayerTest {
  @TempDir Path folder;

  private final ExecutorService window = Executors.newSingleThreadExecutor();
  private Session session;

  @AfterEach
  void close() throws Exception {
    on(
        () -> {
          session.close();
          return null;
        });
    window.shutdown();
  }

  @Test
  void bothAreDealtAPartAndPlayItOnOneClock() throws Exception {
    session = new Session(window, MonotonicClock.SYSTEM, folder);
    run(() -> session.openHere("Ana", false));
    until(() -> session.state().clock().state() == ClockState.STEADY);
    run(() -> session.addGuest("Ben", says -> {}));
    until(() -> ben() != null && ben().uncertaintyMicros() != null);
    assertThat(on(() -> session.hasGuest())).isTrue();

    run(
        () ->
            session
                .lead()
                .chooseAndDeal(
                    new Lead.Hand(
                        Stock.find("Even eighths"),
                        100,
                        1,
                        List.of(session.state().myId(), ben().playerId()))));
    until(() -> session.state().phase() == Phase.DEALT && ben().ready());
    assertThat(on(() -> session.state().dealt().parts().size())).isEqualTo(2);
    run(() -> session.lead().countIn());
    until(() -> session.state().takeRuns());
    long now = System.nanoTime();
    run(
        () -> {
          session.play(PlayedAttack.tap(now));
          session.playGuest(PlayedAttack.tap(now));
        });
    until(() -> session.take().of(ben().playerId()).size() == 1);
    long own = on(() -> session.take().own().get(0));
    long guests = on(() -> session.take().of(ben().playerId()).get(0));
    assertThat(Math.abs(own - guests)).as("one instant, one clock, microseconds").isLessThan(300);

    run(() -> session.lead().stop());
    until(() -> session.state().phase() == Phase.REVIEW);
    run(() -> session.removeGuest());
    until(() -> ben() == null || !ben().connected());
  }

  @Test
  void aNameThatIsTakenIsSaid() throws Exception {
    session = new Session(window, MonotonicClock.SYSTEM, folder);
    run(() -> session.openHere("Ana", false));
    until(() -> session.state().inside());
    StringBuffer said = new StringBuffer();
    run(() -> session.addGuest("Ana", said::append));
    until(() -> said.length() > 0);
    assertThat(said.toString()).contains("Ana");
  }

  private Person ben() {
    return session.state().people().stream()
        .filter(person -> person.name().equals("Ben"))
        .findFirst()
        .orElse(null);
  }

  private void run(Runnable does) throws Exception {
    window.submit(does).get();
  }

  private <T> T on(Callable<T> asked) throws Exception {
    return window.submit(asked).get();
  }

  private void until(Callable<Boolean> holds) {
    await().atMost(Duration.ofSeconds(30)).until(() -> on(holds));
  }
}
