package thinclick.client.window;

import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import org.jspecify.annotations.Nullable;
import thinclick.client.link.RoomLink;
import thinclick.client.sound.ClickPlayer;
import thinclick.client.sound.CueSheet;
import thinclick.client.sound.Loudness;
import thinclick.client.sound.RoomTimes;
import thinclick.client.sound.SoundEar;
import thinclick.client.sound.SoundState;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Announced;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.StepGrid;

/** The click of this window: plays what the room announces, at the level that is set. */
final class SoundDesk implements SoundEar, AutoCloseable {
  private final Session session;
  private final Words words;
  private final DoubleProperty level = new SimpleDoubleProperty(Loudness.FIRST_DBFS);
  private final BooleanProperty muted = new SimpleBooleanProperty();
  private final ReadOnlyStringWrapper says = new ReadOnlyStringWrapper("");

  private @Nullable ClickPlayer player;
  private SoundState state = SoundState.UNTRIED;
  private boolean interrupted;
  private String playingTake = "";
  private @Nullable ClickPlan playingPlan;

  SoundDesk(Session session, Words words, Loudness opening) {
    level.set(opening.dbfs());
    this.session = session;
    this.words = words;
    session.stateProperty().addListener((any, old, now) -> follow(now));
    level.addListener(any -> levelChanged());
    muted.addListener(any -> mutedChanged());
    tell();
  }

  /** Opens the output; the window is up by then. */
  void start() {
    player = ClickPlayer.start(this, loudness());
    follow(session.state());
  }

  /** The click's level in decibels below full scale. */
  DoubleProperty levelProperty() {
    return level;
  }

  /** True where this computer stays silent. */
  BooleanProperty mutedProperty() {
    return muted;
  }

  /** Where the sound stands, a sentence; empty where there is nothing to say. */
  ReadOnlyStringProperty saysProperty() {
    return says.getReadOnlyProperty();
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
    ClickPlayer sounding = player;
    if (sounding == null) {
      return;
    }
    Announced announced = room.announced();
    if (!room.takeRuns() || announced == null) {
      if (!playingTake.isEmpty()) {
        playingTake = "";
        sounding.stop();
        interrupted = false;
        tell();
      }
      return;
    }
    StepGrid grid = room.grid();
    ClickPlan plan = room.plan();
    RoomLink link = session.link();
    if (grid == null || plan == null || link == null) {
      return;
    }
    if (!announced.takeId().equals(playingTake) || !plan.equals(playingPlan)) {
      playingTake = announced.takeId();
      playingPlan = plan;
      sounding.play(CueSheet.ofTake(grid, announced.countInBars(), plan), times(link));
    }
  }

  private static RoomTimes times(RoomLink link) {
    return new RoomTimes() {
      @Override
      public long nanosOf(long micros) {
        return link.nanosOf(micros);
      }

      @Override
      public long roomMicros(long nanos) {
        return link.roomMicros(nanos);
      }
    };
  }

  @Override
  public void soundChanged(SoundState now, String output) {
    WindowThread.INSTANCE.execute(
        () -> {
          state = now;
          tell();
        });
  }

  @Override
  public void clickInterrupted(long fromMicros, long toMicros) {
    WindowThread.INSTANCE.execute(
        () -> {
          interrupted = true;
          tell();
        });
  }

  private void tell() {
    says.set(
        switch (state) {
          case UNTRIED -> words.say("sound.untried");
          case NONE -> words.say("sound.none");
          case LOST -> words.say("sound.lost");
          case SOUNDING -> sounding();
        });
  }

  private String sounding() {
    if (muted.get()) {
      return words.say("sound.muted");
    }
    if (interrupted) {
      return words.say("sound.interrupted");
    }
    if (loudness().raised()) {
      return words.say("care.raised");
    }
    return words.say("sound.level", Math.round(level.get()));
  }

  @Override
  public void close() {
    if (player != null) {
      player.close();
    }
  }
}
