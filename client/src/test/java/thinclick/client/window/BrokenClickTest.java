package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.sound.CueSheet;
import thinclick.client.sound.RoomTimes;
import thinclick.client.sound.SoundState;
import thinclick.client.window.session.Lead;
import thinclick.client.window.session.Session;
import thinclick.client.window.settings.SoundSettings;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Span;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.command.ServerMain;
import thinclick.server.material.Stock;

/** A click that broke off at this computer stands in the take; not where silence was chosen. */
class BrokenClickTest {
  @TempDir Path folder;

  private Session session;
  private SoundDesk sound;

  @BeforeEach
  void play() throws Exception {
    FxToolkit.registerPrimaryStage();
    on(
        () -> {
          session = new Session(WindowThread.INSTANCE, MonotonicClock.SYSTEM, folder);
          sound = new SoundDesk(session, Words.in(Locale.ENGLISH), SoundSettings.FIRST);
          sound.start();
          session.openHere("Ana", false);
          return null;
        });
    until(() -> session.state().clock().state() == ClockState.STEADY);
    on(
        () -> {
          session
              .lead()
              .chooseAndDeal(
                  new Lead.Hand(
                      Stock.find("Even eighths"), 100, 1, List.of(session.state().myId())));
          return null;
        });
    until(() -> session.state().phase() == Phase.DEALT);
    on(
        () -> {
          session.lead().countIn();
          return null;
        });
    until(() -> session.state().takeRuns());
  }

  @AfterEach
  void close() throws Exception {
    on(
        () -> {
          sound.close();
          session.close();
          return null;
        });
    FxToolkit.cleanupStages();
  }

  @Test
  void theSpanIsWrittenAndTheSentenceSaysSo() throws Exception {
    long start = on(() -> session.state().announced().startMicros());
    sound.soundChanged(SoundState.SOUNDING, "speakers");
    until(() -> sound.saysProperty().get().contains("set the level so that it is comfortable"));
    sound.clickInterrupted(start, start + 400_000);
    until(() -> sound.saysProperty().get().startsWith("The click"));
    on(
        () -> {
          sound.mutedProperty().set(true);
          return null;
        });
    sound.clickInterrupted(start + 500_000, start + 600_000); // silent here: nothing broke off
    stopTheTake();
    on(
        () -> {
          sound.mutedProperty().set(false);
          sound.levelProperty().set(-9);
          return null;
        });
    assertThat(on(() -> sound.saysProperty().get())).as("above -12").contains("level is raised");
    on(
        () -> {
          sound.levelProperty().set(-20);
          return null;
        });
    assertThat(on(() -> sound.saysProperty().get())).doesNotContain("raised");
    assertThat(written().clickInterrupted()).containsExactly(new Span(start, start + 400_000));
  }

  /** A check that it broke off in does not count; what broke off in silence is not told at all. */
  @Test
  void theSentenceSaysWhetherItMatters() throws Exception {
    sound.soundChanged(SoundState.SOUNDING, "speakers");
    stopTheTake();
    on(
        () -> {
          sound.playForCheck(
              CueSheet.of(List.of(), 600_000), RoomTimes.meeting(0, System.nanoTime()));
          return null;
        });
    sound.clickInterrupted(0, 1_000);
    until(
        () -> sound.saysProperty().get().equals("The click stumbled: this check will not count."));
    assertThat(on(sound::checkOver)).as("stumbled").isTrue();
    assertThat(on(() -> sound.saysProperty().get())).startsWith("Click level");
    sound.clickInterrupted(0, 1_000);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(on(() -> sound.saysProperty().get())).startsWith("Click level");
  }

  private Take written() throws IOException {
    Path file = folder.resolve("take.json");
    int exit =
        ServerMain.commandLine()
            .execute(
                "take",
                "export",
                session.state().announced().takeId(),
                file.toString(),
                "--db",
                folder.resolve("rooms.db").toString());
    assertThat(exit).isZero();
    return FileCodec.readTake(Files.readAllBytes(file));
  }

  private static void until(Callable<Boolean> holds) {
    await().atMost(Duration.ofSeconds(30)).until(() -> on(holds));
  }

  private static <T> T on(Callable<T> asked) {
    return WaitForAsyncUtils.waitForAsyncFx(10_000, asked);
  }

  private void stopTheTake() throws Exception {
    on(
        () -> {
          session.lead().stop();
          return null;
        });
    until(() -> session.state().phase() == Phase.REVIEW);
  }
}
