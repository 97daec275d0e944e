package thinclick.client.window.check;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import java.util.stream.IntStream;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import org.jspecify.annotations.Nullable;
import thinclick.client.check.MicrophoneCheck;
import thinclick.client.check.Recording;
import thinclick.client.check.TapCheck;
import thinclick.client.check.Verdict;
import thinclick.client.sound.CueSheet;
import thinclick.client.sound.Microphone;
import thinclick.client.sound.RoomTimes;
import thinclick.client.sound.Voice;
import thinclick.client.window.words.Words;
import thinclick.protocol.music.Click;

/** One sound check after the other: counts the taps, judges them, says what came of it. */
public final class CheckModel {
  private static final long BEAT_NANOS = Math.round(60e9 / TapCheck.TEMPO);

  /** From the order to begin to the first click. */
  private static final long LEAD_NANOS = 1_500_000_000L;

  /** A tap may come so long after the last click. */
  private static final long AFTER_NANOS = 700_000_000L;

  /** So long one may take for the taps into the microphone. */
  private static final long TAPPING_NANOS = 20_000_000_000L;

  private static final int MICROPHONE_SECONDS = 32;

  /** Where a check stands. */
  public enum Phase {
    /** Nothing runs. */
    IDLE,
    /** Clicks sound. */
    CLICKING,
    /** Taps are awaited in silence, for the microphone. */
    SILENT,
    /** What was gathered is looked at. */
    JUDGING
  }

  private final Words words;
  private final CheckSound sound;
  private final Executor windowThread;
  private final BiConsumer<String, Verdict> judged;
  private final ReadOnlyObjectWrapper<Phase> phase = new ReadOnlyObjectWrapper<>(Phase.IDLE);
  private final ReadOnlyObjectWrapper<@Nullable Verdict> verdict = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyStringWrapper says = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper progress = new ReadOnlyStringWrapper("");
  private final ReadOnlyIntegerWrapper sounded = new ReadOnlyIntegerWrapper();
  private final ReadOnlyBooleanWrapper microphoneThere = new ReadOnlyBooleanWrapper();
  private final BooleanProperty withMicrophone = new SimpleBooleanProperty();

  private long[] clicks = {};
  private final List<Long> taps = new ArrayList<>();
  private String input = "";
  private long endsNanos;
  private @Nullable Microphone microphone;

  /**
   * @param windowThread runs a task on the window's thread
   * @param judged told of each verdict and the input it is about
   */
  public CheckModel(
      Words words, CheckSound sound, Executor windowThread, BiConsumer<String, Verdict> judged) {
    this.words = words;
    this.sound = sound;
    this.windowThread = windowThread;
    this.judged = judged;
  }

  /** Looks for a microphone, off the window's thread. */
  public void start() {
    CompletableFuture<Void> unused =
        CompletableFuture.supplyAsync(Microphone::canBeHad)
            .thenAcceptAsync(microphoneThere::set, windowThread);
  }

  /** Where the check stands. */
  public ReadOnlyObjectProperty<Phase> phaseProperty() {
    return phase.getReadOnlyProperty();
  }

  /** What the last check came to, null before the first. */
  public ReadOnlyObjectProperty<@Nullable Verdict> verdictProperty() {
    return verdict.getReadOnlyProperty();
  }

  /** What came of it, or why it was not begun; a sentence or two, empty while it runs. */
  public ReadOnlyStringProperty saysProperty() {
    return says.getReadOnlyProperty();
  }

  /** What is to be done now, a sentence; empty where nothing runs. */
  public ReadOnlyStringProperty progressProperty() {
    return progress.getReadOnlyProperty();
  }

  /** How many clicks of the check have sounded by now; 0 where nothing runs. */
  public ReadOnlyIntegerProperty soundedProperty() {
    return sounded.getReadOnlyProperty();
  }

  /** True where this computer has a microphone. */
  public ReadOnlyBooleanProperty microphoneThereProperty() {
    return microphoneThere.getReadOnlyProperty();
  }

  /** Whether the microphone listens to the next check. */
  public BooleanProperty withMicrophoneProperty() {
    return withMicrophone;
  }

  /** True where a click can be heard, without which nothing is measured. */
  public ReadOnlyBooleanProperty audibleProperty() {
    return sound.audibleProperty();
  }

  /** True where taps are wanted. */
  public boolean listens() {
    return phase.get() == Phase.CLICKING || phase.get() == Phase.SILENT;
  }

  /**
   * Begins, where nothing runs.
   *
   * @param nowNanos the monotonic clock
   */
  public void begin(long nowNanos) {
    if (phase.get() != Phase.IDLE) {
      return;
    }
    if (!sound.audibleProperty().get()) {
      says.set(words.say("check.silence"));
      return; // without a click nobody can tap along, and without an output nothing is measured
    }
    taps.clear();
    input = "";
    microphone = withMicrophone.get() ? Microphone.open(MICROPHONE_SECONDS) : null;
    if (withMicrophone.get() && microphone == null) {
      says.set(words.say("check.microphone.gone"));
      return;
    }
    int count = microphone == null ? TapCheck.LEAD_IN + TapCheck.COUNTED : MicrophoneCheck.CLICKS;
    long first = nowNanos + LEAD_NANOS;
    clicks = IntStream.range(0, count).mapToLong(i -> first + i * BEAT_NANOS).toArray();
    List<Click> cues =
        IntStream.range(0, count)
            .mapToObj(i -> new Click(i, i * BEAT_NANOS / 1_000, 0, false))
            .toList();
    sound.playForCheck(CueSheet.of(cues, BEAT_NANOS / 1e3), RoomTimes.meeting(0, first));
    endsNanos = clicks[count - 1] + AFTER_NANOS;
    verdict.set(null);
    says.set("");
    phase.set(Phase.CLICKING);
    tell();
  }

  /**
   * A tap; only those of the input that tapped first count.
   *
   * @param from {@code keys}, or the name of a MIDI input
   */
  public void tapped(String from, long nanos) {
    boolean wanted = microphone == null ? phase.get() == Phase.CLICKING : silent();
    if (!wanted || (!input.isEmpty() && !input.equals(from))) {
      return;
    }
    input = from;
    taps.add(nanos);
    if (phase.get() == Phase.SILENT && taps.size() >= MicrophoneCheck.TAPS) {
      endsNanos = nanos + AFTER_NANOS;
    }
    tell();
  }

  private boolean silent() {
    return phase.get() == Phase.SILENT && taps.size() < MicrophoneCheck.TAPS;
  }

  /** Looks at the time; called often while the page is in view. */
  public void look(long nowNanos) {
    if (phase.get() == Phase.CLICKING) {
      int now = (int) IntStream.range(0, clicks.length).filter(i -> clicks[i] <= nowNanos).count();
      if (now != sounded.get()) {
        sounded.set(now);
        tell();
      }
    }
    if (!listens() || nowNanos - endsNanos < 0) {
      return;
    }
    if (phase.get() == Phase.CLICKING && microphone != null) {
      endsNanos = nowNanos + TAPPING_NANOS;
      phase.set(Phase.SILENT);
      tell();
    } else {
      judge();
    }
  }

  /** Ends without a verdict: the page is left, a take begins. */
  public void breakOff() {
    if (listens()) {
      boolean unused = sound.checkOver();
      closeMicrophone();
      phase.set(Phase.IDLE);
      tell();
      says.set(words.say("check.stopped"));
    }
  }

  private void judge() {
    phase.set(Phase.JUDGING);
    tell();
    boolean stumbled = sound.checkOver();
    long[] heardClicks = clicks;
    long[] stamps = taps.stream().sorted().mapToLong(Long::longValue).toArray();
    String from = input.isEmpty() ? "keys" : input;
    Microphone listened = microphone;
    Recording heard = listened == null ? null : listened.heard();
    closeMicrophone();
    CompletableFuture<Void> unused =
        CompletableFuture.supplyAsync(
                () ->
                    heard == null
                        ? TapCheck.judge(heardClicks, stamps, stumbled)
                        : MicrophoneCheck.judge(
                            heard, Voice.BEAT.shape(), heardClicks, stamps, stumbled))
            .thenAcceptAsync(found -> settle(from, found), windowThread);
  }

  private void settle(String from, Verdict found) {
    phase.set(Phase.IDLE);
    tell();
    says.set(CheckWords.say(words, found));
    judged.accept(from, found);
    verdict.set(found);
  }

  /** A check of the whole room came to this for the player whose window it is. */
  public void judgedElsewhere(Verdict found) {
    if (phase.get() == Phase.IDLE) {
      says.set(CheckWords.say(words, found));
      verdict.set(found);
    }
  }

  private void closeMicrophone() {
    Microphone listened = microphone;
    microphone = null;
    if (listened != null) {
      listened.close();
    }
  }

  private void tell() {
    if (phase.get() != Phase.CLICKING) {
      sounded.set(0);
    }
    progress.set(
        switch (phase.get()) {
          case IDLE -> "";
          case CLICKING -> clicking();
          case SILENT -> words.say("check.silent", taps.size(), MicrophoneCheck.TAPS);
          case JUDGING -> words.say("check.judging");
        });
  }

  private String clicking() {
    if (microphone != null) {
      return words.say("check.hearing");
    }
    return sounded.get() < TapCheck.LEAD_IN
        ? words.say("check.leadIn", TapCheck.LEAD_IN)
        : words.say("check.tapping", taps.size(), sounded.get(), clicks.length);
  }
}
