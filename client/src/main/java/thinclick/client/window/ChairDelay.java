package thinclick.client.window;

import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import thinclick.client.check.Verdict;
import thinclick.client.check.Verdict.How;
import thinclick.client.check.Verdict.Known;
import thinclick.client.link.RoomLink;
import thinclick.client.window.session.Session;
import thinclick.client.window.settings.SoundSettings;
import thinclick.client.window.settings.SoundSettings.Chair;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ClientMessage.InputKind;
import thinclick.protocol.message.ClientMessage.SoundCheck;

/**
 * What this chair is late by, for the output and the input in use together; void as soon as either
 * changes, until that pair is measured or known from before. Stamps are corrected at once, the room
 * is told between takes.
 */
final class ChairDelay {
  private final Session session;
  private final SoundDesk sound;
  private final Taps taps;
  private final Words words;
  private final ReadOnlyStringWrapper says = new ReadOnlyStringWrapper("");

  private @Nullable RoomLink toldLink;
  private @Nullable SoundCheck told;

  ChairDelay(Session session, SoundDesk sound, Taps taps, Words words) {
    this.session = session;
    this.sound = sound;
    this.taps = taps;
    this.words = words;
    sound.soundingProperty().addListener(any -> apply());
    taps.inputProperty().addListener(any -> apply());
    session.stateProperty().addListener(any -> apply());
    apply();
  }

  /** What holds now, a sentence. */
  ReadOnlyStringProperty saysProperty() {
    return says.getReadOnlyProperty();
  }

  /** A check was judged; what was measured before for that pair no longer holds either way. */
  void judged(String input, Verdict verdict) {
    String output = sound.soundingProperty().get();
    SoundSettings remembered = sound.settings();
    sound.remember(
        verdict instanceof Known known
            ? remembered.withChair(
                new Chair(
                    output,
                    input,
                    known.how(),
                    known.latencyMillis(),
                    known.uncertaintyMillis(),
                    known.taps()))
            : remembered.withoutChair(output, input));
    taps.inputIs(input);
    apply();
  }

  private void apply() {
    Chair chair =
        sound
            .settings()
            .chair(sound.soundingProperty().get(), taps.inputProperty().get())
            .orElse(null);
    says.set(
        chair == null
            ? words.say("chair.unmeasured")
            : words.say(
                chair.how() == How.MICROPHONE ? "chair.microphone" : "chair.taps",
                Math.round(chair.latencyMillis()),
                Math.max(1, Math.round(chair.uncertaintyMillis()))));
    RoomLink link = session.link();
    if (link == null) {
      toldLink = null;
      told = null;
      return;
    }
    link.chairDelay(chair == null ? 0 : chair.latencyMillis());
    if (!link.equals(toldLink)) {
      told = null;
    }
    InputKind kind = kind(taps.inputProperty().get());
    SoundCheck wanted =
        chair == null
            ? SoundCheck.unmeasured(kind)
            : new SoundCheck(kind, chair.latencyMillis(), chair.uncertaintyMillis(), chair.taps());
    boolean unknownAnyway = chair == null && told == null;
    if (session.state().betweenTakes() && !wanted.equals(told) && !unknownAnyway) {
      toldLink = link;
      told = wanted;
      link.soundCheck(wanted);
    }
  }

  private static InputKind kind(String input) {
    return switch (input) {
      case Taps.KEYS -> InputKind.KEYS;
      case Taps.TOUCH -> InputKind.TOUCH;
      default -> InputKind.MIDI;
    };
  }
}
