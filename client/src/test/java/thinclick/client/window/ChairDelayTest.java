package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

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
import thinclick.client.check.Verdict.How;
import thinclick.client.check.Verdict.Known;
import thinclick.client.sound.SoundState;
import thinclick.client.window.session.Session;
import thinclick.client.window.settings.SoundSettings;
import thinclick.client.window.words.Words;
import thinclick.protocol.time.MonotonicClock;

/** A measured chair in a real room: the room knows it, and forgets it with the output. */
class ChairDelayTest {
  @TempDir Path folder;

  private Session session;
  private SoundDesk sound;
  private Chair chair;

  @BeforeEach
  void open() throws Exception {
    FxToolkit.registerPrimaryStage();
    FxToolkit.setupFixture(
        () -> {
          Words words = Words.in(Locale.ENGLISH);
          session = new Session(WindowThread.INSTANCE, MonotonicClock.SYSTEM, folder);
          sound = new SoundDesk(session, words, SoundSettings.FIRST);
          chair = new Chair(session, sound, words);
          session.openHere("Ana", false);
        });
    sound.soundChanged(SoundState.SOUNDING, "speakers");
    until(() -> session.state().inside());
  }

  @AfterEach
  void close() throws Exception {
    FxToolkit.setupFixture(
        () -> {
          session.close();
        });
    FxToolkit.cleanupStages();
  }

  @Test
  void whatWasMeasuredIsInUseUntilTheOutputChanges() throws Exception {
    assertThat(roomKnows()).isFalse();
    FxToolkit.setupFixture(
        () -> chair.delay().judged(Taps.KEYS, new Known(How.TAPS, 42, 9, 36, List.of(42.0))));
    until(this::roomKnows);
    assertThat(on(() -> chair.delay().saysProperty().get()))
        .contains("42\u00a0ms, give or take 9\u00a0ms");

    sound.soundChanged(SoundState.SOUNDING, "headset");
    until(() -> !roomKnows());
    assertThat(on(() -> chair.delay().saysProperty().get())).contains("not measured");

    sound.soundChanged(SoundState.SOUNDING, "speakers");
    until(this::roomKnows);
    FxToolkit.setupFixture(() -> chair.inputIs("pad"));
    until(() -> !roomKnows());
  }

  /** The system's own output, where the named one has gone, is as new as any other. */
  @Test
  void anOutputThatWasNeverUsedOpensSoftlyWhateverThatBeforeWasSetTo() {
    on(
        () -> {
          sound.levelProperty().set(-8);
          return null;
        });
    sound.soundChanged(SoundState.LOST, "speakers");
    sound.soundChanged(SoundState.SOUNDING, "");
    until(() -> sound.levelProperty().get() == -24);
    sound.soundChanged(SoundState.SOUNDING, "speakers");
    until(() -> sound.levelProperty().get() == -12);
    assertThat(on(() -> sound.settings().levels()))
        .as("each with its own")
        .contains(new SoundSettings.Level("speakers", -12), new SoundSettings.Level("", -24));
  }

  @Test
  void everyStateOfTheOutputIsASentence() {
    sound.soundChanged(SoundState.NONE, "");
    until(() -> saysSound("No sound output: the click is only shown."));
    sound.soundChanged(SoundState.LOST, "speakers");
    until(() -> saysSound("The sound output is gone; the click comes back at a bar line"));
    sound.soundChanged(SoundState.SOUNDING, "speakers");
    until(() -> saysSound("\u221224\u00a0dB"));
    on(
        () -> {
          sound.mutedProperty().set(true);
          return null;
        });
    until(() -> saysSound("Silent here"));
  }

  private boolean saysSound(String part) {
    return sound.saysProperty().get().contains(part);
  }

  private boolean roomKnows() {
    return session.state().people().stream().anyMatch(person -> person.soundCheck());
  }

  private static void until(Callable<Boolean> holds) {
    await().atMost(Duration.ofSeconds(30)).until(() -> on(holds));
  }

  private static <T> T on(Callable<T> asked) {
    return WaitForAsyncUtils.waitForAsyncFx(10_000, asked);
  }
}
