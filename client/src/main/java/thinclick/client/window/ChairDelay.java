package thinclick.client.window;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import javafx.beans.InvalidationListener;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import thinclick.client.check.Verdict;
import thinclick.client.check.Verdict.How;
import thinclick.client.check.Verdict.Known;
import thinclick.client.link.RoomLink;
import thinclick.client.window.session.Seat;
import thinclick.client.window.settings.SoundSettings;
import thinclick.client.window.settings.SoundSettings.Chair;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.PreparingMessage.InputKind;
import thinclick.protocol.message.PreparingMessage.SoundCheck;

/**
 * What this chair is late by, for the output and the input in use together; void as soon as either
 * changes, until that pair is measured or known from before. Stamps are corrected at once, the room
 * is told between takes.
 */
final class ChairDelay {
  private final Seat seat;
  private final SoundDesk sound;
  private final ReadOnlyObjectProperty<ChairInput> input;
  private final Words words;
  private final ReadOnlyStringWrapper says = new ReadOnlyStringWrapper("");

  /** Measured against the room's one loudspeaker, by input; in this room alone. */
  private final Map<String, Chair> inRoom = new HashMap<>();

  private @Nullable RoomLink toldLink;
  private @Nullable SoundCheck told;

  private final InvalidationListener changed = any -> apply();

  ChairDelay(Seat seat, SoundDesk sound, ReadOnlyObjectProperty<ChairInput> input, Words words) {
    this.seat = seat;
    this.sound = sound;
    this.input = input;
    this.words = words;
    sound.soundingProperty().addListener(changed);
    sound.mutedProperty().addListener(changed);
    input.addListener(changed);
    seat.stateProperty().addListener(changed);
    apply();
  }

  /** Nobody sits here any more. */
  void close() {
    sound.soundingProperty().removeListener(changed);
    sound.mutedProperty().removeListener(changed);
    seat.stateProperty().removeListener(changed);
  }

  /** What holds now, a sentence. */
  ReadOnlyStringProperty saysProperty() {
    return says.getReadOnlyProperty();
  }

  /** A check was judged; what was measured before for that pair no longer holds either way. */
  void judged(String measured, Verdict verdict) {
    String output = sound.soundingProperty().get();
    SoundSettings remembered = sound.settings();
    sound.remember(
        verdict instanceof Known known
            ? remembered.withChair(
                new Chair(
                    output,
                    measured,
                    known.how(),
                    known.latencyMillis(),
                    known.uncertaintyMillis(),
                    known.taps()))
            : remembered.withoutChair(output, measured));
    apply();
  }

  /**
   * A check with everybody in the room was judged: where this computer is silent it holds for the
   * room's loudspeaker, else for this computer's own output.
   */
  void judgedInRoom(String measured, Verdict verdict) {
    if (!sound.mutedProperty().get()) {
      judged(measured, verdict);
      return;
    }
    if (verdict instanceof Known known) {
      inRoom.put(
          measured,
          new Chair(
              "",
              measured,
              known.how(),
              known.latencyMillis(),
              known.uncertaintyMillis(),
              known.taps()));
    } else {
      inRoom.remove(measured);
    }
    apply();
  }

  /** What is known of the output that is heard and the input in use. */
  private @Nullable Chair known() {
    return sound.mutedProperty().get()
        ? inRoom.get(input.get().name())
        : sound.settings().chair(sound.soundingProperty().get(), input.get().name()).orElse(null);
  }

  private String key(@Nullable Chair chair) {
    boolean elsewhere = sound.mutedProperty().get();
    if (chair == null) {
      return elsewhere ? "chair.unmeasured.room" : "chair.unmeasured";
    }
    if (elsewhere) {
      return "chair.room";
    }
    return chair.how() == How.MICROPHONE ? "chair.microphone" : "chair.taps";
  }

  private void apply() {
    if (!Objects.equals(seat.link(), toldLink)) {
      inRoom.clear();
    }
    Chair chair = known();
    says.set(
        chair == null
            ? words.say(key(null))
            : words.say(
                key(chair),
                words.whole(Math.round(chair.latencyMillis())),
                Math.max(1, Math.round(chair.uncertaintyMillis()))));
    RoomLink link = seat.link();
    if (link == null) {
      toldLink = null;
      told = null;
      return;
    }
    link.chairDelay(chair == null ? 0 : chair.latencyMillis());
    if (!link.equals(toldLink)) {
      told = null;
      toldLink = link;
    }
    InputKind kind = input.get().kind();
    SoundCheck wanted =
        chair == null
            ? SoundCheck.unmeasured(kind)
            : new SoundCheck(kind, chair.latencyMillis(), chair.uncertaintyMillis(), chair.taps());
    boolean unknownAnyway = chair == null && told == null;
    if (seat.state().betweenTakes() && !wanted.equals(told) && !unknownAnyway) {
      told = wanted;
      link.soundCheck(wanted);
    }
  }
}
