package thinclick.client.window.check;

import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.ObservableList;
import org.jspecify.annotations.Nullable;
import thinclick.client.sound.CueSheet;
import thinclick.client.sound.RoomTimes;
import thinclick.protocol.file.Hearing;

/** What the sound check needs of the window's sound. */
public interface CheckSound {
  /** The outputs of this computer by name; filled in a moment after the window is up. */
  ObservableList<String> outputs();

  /** The chosen output; empty for the system's own choice. */
  StringProperty outputProperty();

  /** The output that sounds now; empty for the system's own choice, and where none does. */
  ReadOnlyStringProperty soundingProperty();

  /** True where an output sounds, so that a click can be heard. */
  ReadOnlyBooleanProperty audibleProperty();

  /** Where the sound stands, a sentence. */
  ReadOnlyStringProperty saysProperty();

  /** The click's level in decibels below full scale. */
  DoubleProperty levelProperty();

  /** True where this computer stays silent. */
  BooleanProperty mutedProperty();

  /** How the others are heard; null where nothing was chosen. */
  ObjectProperty<Hearing.@Nullable Mode> hearingProperty();

  /** Sounds these for the check, also where this computer is silent otherwise. */
  void playForCheck(CueSheet cues, RoomTimes times);

  /** The check is over; answers whether the output stumbled meanwhile. */
  boolean checkOver();
}
