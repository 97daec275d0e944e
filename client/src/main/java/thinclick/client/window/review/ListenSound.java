package thinclick.client.window.review;

import javafx.beans.property.ReadOnlyBooleanProperty;
import thinclick.client.sound.CueSheet;
import thinclick.client.sound.RoomTimes;

/** What sounds when a take is listened to again; silent while a take runs. */
public interface ListenSound {
  /** Plays; what was playing ends. */
  void playAgain(CueSheet cues, RoomTimes times);

  /** Ends it. */
  void stopAgain();

  /** Whether what is played is heard. */
  ReadOnlyBooleanProperty audibleProperty();
}
