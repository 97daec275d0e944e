package thinclick.client.window;

import java.util.concurrent.CompletableFuture;
import java.util.function.LongConsumer;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.jspecify.annotations.Nullable;
import thinclick.client.sound.ClickPlayer;
import thinclick.client.sound.CountIn;
import thinclick.client.sound.CueSheet;
import thinclick.client.sound.Loudness;
import thinclick.client.sound.RoomTimes;
import thinclick.client.sound.SoundEar;
import thinclick.client.sound.SoundState;
import thinclick.client.sound.Voice;
import thinclick.client.window.check.CheckSound;
import thinclick.client.window.review.ListenSound;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.settings.SoundSettings;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Hearing;

/** The click of this window: plays what the room announces, at the level that is set. */
final class SoundDesk implements SoundEar, CheckSound, ListenSound, AutoCloseable {
  private final Session session;
  private final TakeClick take;
  private final Words words;
  private final DoubleProperty level = new SimpleDoubleProperty(Loudness.FIRST_DBFS);
  private final BooleanProperty muted = new SimpleBooleanProperty();
  private final ReadOnlyStringWrapper says = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper sounding = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper audible = new ReadOnlyBooleanWrapper();
  private final ObjectProperty<Hearing.@Nullable Mode> hearing = new SimpleObjectProperty<>();
  private final ObjectProperty<CountIn> countIn = new SimpleObjectProperty<>(CountIn.CLICKED);
  private final StringProperty output = new SimpleStringProperty("");
  private final ObservableList<String> outputs = FXCollections.observableArrayList();

  private SoundSettings settings;

  /** The output whose level {@link #level} is: what sounds, or sounded last. */
  private String levelOf;

  private @Nullable ClickPlayer player;
  private Runnable measured = () -> {};
  private SoundState state = SoundState.UNTRIED;
  private boolean interrupted;
  private boolean heardBefore;
  private boolean checking;
  private boolean stumbledInCheck;

  SoundDesk(Session session, Words words, SoundSettings settings) {
    this.settings = settings;
    output.set(settings.output());
    levelOf = settings.output();
    hearing.set(settings.hearing());
    countIn.set(settings.countsIn());
    muted.set(settings.silentHere());
    level.set(settings.opening(settings.output()).dbfs());
    this.session = session;
    take = new TakeClick(session);
    this.words = words;
    session.stateProperty().addListener((any, old, now) -> follow(now));
    level.addListener(any -> levelChanged());
    muted.addListener(any -> mutedChanged());
    output.addListener(any -> outputChosen());
    tell();
  }

  /** Opens the output; the window is up by then. */
  void start() {
    ClickPlayer started = ClickPlayer.start(this, output.get(), loudness());
    player = started;
    started.mute(muted.get());
    CompletableFuture<Void> unused =
        CompletableFuture.supplyAsync(ClickPlayer::outputs)
            .thenAcceptAsync(outputs::setAll, WindowThread.INSTANCE);
    follow(session.state());
  }

  @Override
  public DoubleProperty levelProperty() {
    return level;
  }

  @Override
  public BooleanProperty mutedProperty() {
    return muted;
  }

  @Override
  public ReadOnlyStringProperty saysProperty() {
    return says.getReadOnlyProperty();
  }

  @Override
  public ObservableList<String> outputs() {
    return outputs;
  }

  @Override
  public StringProperty outputProperty() {
    return output;
  }

  @Override
  public ReadOnlyStringProperty soundingProperty() {
    return sounding.getReadOnlyProperty();
  }

  @Override
  public ReadOnlyBooleanProperty audibleProperty() {
    return audible.getReadOnlyProperty();
  }

  @Override
  public ObjectProperty<Hearing.@Nullable Mode> hearingProperty() {
    return hearing;
  }

  /** How the count-in sounds, from the next one on. */
  ObjectProperty<CountIn> countInProperty() {
    return countIn;
  }

  /** Keeps the output's buffer shallow, so that others can be heard as they arrive. */
  void shallow(boolean wanted) {
    if (player != null) {
      player.shallow(wanted);
    }
  }

  /** True where this computer's click stumbled in a take, not being silent here. */
  boolean stumbledIn(String takeId) {
    return take.stumbledIn(takeId);
  }

  /** Sounds a partner's note at a room time, or as soon as it can; told when it comes out. */
  void strike(Voice voice, long micros, LongConsumer heard) {
    if (player != null && !muted.get()) {
      player.strike(voice, micros, heard);
    }
  }

  /** What is to be remembered, as it stands now. */
  SoundSettings settings() {
    return settings
        .choosing(output.get(), muted.get(), hearing.get())
        .counting(countIn.get())
        .withLevel(levelOf, level.get());
  }

  /** Takes what was measured. */
  void remember(SoundSettings with) {
    settings = with;
    measured.run();
  }

  /** Who is told that something was measured. */
  void onMeasured(Runnable does) {
    measured = does;
  }

  @Override
  public void playForCheck(CueSheet cues, RoomTimes times) {
    ClickPlayer sounds = player;
    if (sounds != null) {
      checking = true;
      interrupted = false;
      stumbledInCheck = state != SoundState.SOUNDING;
      sounds.mute(false);
      sounds.play(cues, times);
      tell();
    }
  }

  @Override
  public boolean checkOver() {
    ClickPlayer sounds = player;
    if (sounds != null && checking) {
      checking = false;
      interrupted = false;
      heardBefore = true;
      sounds.stop();
      sounds.mute(muted.get());
      tell();
    }
    return stumbledInCheck;
  }

  @Override
  public void playAgain(CueSheet cues, RoomTimes times) {
    ClickPlayer sounds = player;
    if (sounds != null && !take.runs()) {
      sounds.play(cues, times);
    }
  }

  @Override
  public void stopAgain() {
    ClickPlayer sounds = player;
    if (sounds != null && !take.runs()) {
      sounds.stop();
    }
  }

  private void outputChosen() {
    ClickPlayer sounds = player;
    if (sounds != null) {
      settings = settings();
      sounds.output(output.get());
    }
  }

  private Loudness loudness() {
    return Loudness.nearest(level.get());
  }

  private void levelChanged() {
    if (player != null) {
      player.loudness(loudness());
    }
    tell();
  }

  private void mutedChanged() {
    if (player != null) {
      player.mute(muted.get());
    }
    tell();
  }

  private void follow(RoomState room) {
    ClickPlayer sounds = player;
    if (sounds != null && take.follow(room, sounds, countIn.get())) {
      heardBefore = true;
      interrupted = false;
      tell();
    }
  }

  @Override
  public void soundChanged(SoundState now, String name) {
    WindowThread.INSTANCE.execute(
        () -> {
          if (now == SoundState.SOUNDING && !name.equals(levelOf)) {
            settings = settings();
            levelOf = name;
            level.set(settings.opening(name).dbfs());
          }
          state = now;
          stumbledInCheck |= checking;
          sounding.set(now == SoundState.SOUNDING ? name : "");
          audible.set(now == SoundState.SOUNDING);
          tell();
        });
  }

  @Override
  public void clickInterrupted(long fromMicros, long toMicros) {
    WindowThread.INSTANCE.execute(
        () -> {
          interrupted |= checking || take.runs(); // else nothing was to be heard
          stumbledInCheck |= checking;
          if (!checking && !muted.get()) {
            take.interrupted(fromMicros, toMicros);
          }
          tell();
        });
  }

  private void tell() {
    says.set(
        switch (state) {
          case UNTRIED -> words.say("sound.untried");
          case NONE ->
              words.say(outputs.isEmpty() ? "sound.none" : "sound.none.such", output.get());
          case LOST -> words.say("sound.lost");
          case SOUNDING -> sounding();
        });
  }

  private String sounding() {
    if (muted.get() && !checking) {
      return words.say("sound.muted");
    }
    if (!heardBefore && take.runs()) { // a check has it beside what begins it
      return words.say("care.first");
    }
    if (interrupted) {
      return words.say(checking ? "sound.interrupted.check" : "sound.interrupted");
    }
    if (loudness().raised()) {
      return words.say("care.raised");
    }
    return words.say("sound.level", words.whole(Math.round(level.get())));
  }

  @Override
  public void close() {
    if (player != null) {
      player.close();
    }
  }
}
