package thinclick.client.window.lectern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.client.link.RoomAddress;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.invite.JoinLink;
import thinclick.protocol.time.MonotonicClock;

/** How pupils come into a room that was opened in a window. */
class InviteModelTest {
  private static final Duration PATIENCE = Duration.ofSeconds(20);

  @TempDir Path folder;

  private final ExecutorService windowThread = Executors.newSingleThreadExecutor();
  private final Words words = Words.in(Locale.ENGLISH);
  private Session leader;
  private Session pupil;
  private InviteModel invite;

  @BeforeEach
  void twoComputers() throws IOException {
    leader = session("leader");
    pupil = session("pupil");
    invite = new InviteModel(leader, words);
  }

  private Session session(String whose) throws IOException {
    Path data = Files.createDirectory(folder.resolve(whose));
    return new Session(windowThread, MonotonicClock.SYSTEM, data);
  }

  @AfterEach
  void close() {
    run(pupil::close);
    run(leader::close);
    windowThread.shutdown();
  }

  @Test
  void roomForThisComputerAloneSaysSoAndOffersNoLink() {
    run(() -> leader.openHere("Frau Ott", false));
    until(() -> leader.state().inside());

    assertThat(ask(invite::address))
        .startsWith("This room is on this computer alone (127.0.0.1:")
        .contains(leader.state().word());
    assertThat(ask(invite::link)).isNull();
    assertThat(ask(invite::firewall)).isEmpty();
  }

  @Test
  void roomForOthersIsEnteredByItsLink() {
    run(() -> leader.openHere("Frau Ott", true));
    until(() -> leader.state().inside());
    JoinLink link = ask(invite::link);
    assumeThat(link.host()).as("an address beside the loop").isNotEqualTo("127.0.0.1");

    assertThat(ask(invite::address))
        .isEqualTo(
            "Others come in at %s:%d with the room word %s."
                .formatted(link.host(), link.port(), leader.state().word()));
    assertThat(ask(invite::firewall))
        .contains("TCP port " + link.port())
        .contains("UDP port 5353")
        .contains(link.pin().said());
    run(() -> pupil.join(RoomAddress.of(JoinLink.parse(link.toString())), link.word(), "Mina"));
    until(() -> pupil.state().inside() && leader.state().people().size() == 2);
  }

  private void run(Runnable task) {
    ask(
        () -> {
          task.run();
          return true;
        });
  }

  private <T> T ask(Callable<T> question) {
    try {
      return windowThread.submit(question).get();
    } catch (Exception problem) {
      throw new AssertionError(problem);
    }
  }

  private void until(Callable<Boolean> holds) {
    await().atMost(PATIENCE).until(() -> ask(holds));
  }
}
