package thinclick.client.window;

import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.review.ReviewModel;
import thinclick.client.window.session.FurtherSeat;
import thinclick.client.window.session.Seat;
import thinclick.client.window.stand.StandModel;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.PreparingMessage.InputKind;
import thinclick.protocol.time.MonotonicClock;

/**
 * One chair at this computer: who sits there, what they tap on, what it is late by, their part,
 * their review.
 */
final class Chair {
  private final Seat seat;
  private final ReadOnlyObjectWrapper<ChairInput> input =
      new ReadOnlyObjectWrapper<>(new ChairInput(Taps.KEYS, InputKind.KEYS));
  private final ChairDelay delay;
  private final StandModel stand;
  private final ReviewModel review;

  Chair(Seat seat, SoundDesk sound, Words words) {
    this.seat = seat;
    inputIs(Taps.KEYS);
    delay = new ChairDelay(seat, sound, input.getReadOnlyProperty(), words);
    stand = new StandModel(seat, MonotonicClock.SYSTEM);
    review = new ReviewModel(seat, words, WindowThread.INSTANCE);
  }

  Seat seat() {
    return seat;
  }

  /** The further player's seat, null for the player whose window this is. */
  @Nullable FurtherSeat further() {
    return seat instanceof FurtherSeat further ? further : null;
  }

  /** Whose chair it is; empty for the player whose window this is, until the room knows them. */
  String name() {
    FurtherSeat further = further();
    return further == null ? seat.state().nameOf(seat.state().myId()) : further.name();
  }

  /** What is tapped on here. */
  ReadOnlyObjectProperty<ChairInput> inputProperty() {
    return input.getReadOnlyProperty();
  }

  /** An input as it is called for this chair. */
  ChairInput inputOf(String base) {
    InputKind kind =
        switch (base) {
          case Taps.KEYS -> InputKind.KEYS;
          case Taps.TOUCH -> InputKind.TOUCH;
          default -> InputKind.MIDI;
        };
    FurtherSeat further = further();
    return new ChairInput(further == null ? base : base + ": " + further.name(), kind);
  }

  /** The input that is played on from now on. */
  void inputIs(String base) {
    input.set(inputOf(base));
  }

  ChairDelay delay() {
    return delay;
  }

  StandModel stand() {
    return stand;
  }

  ReviewModel review() {
    return review;
  }

  /** Nobody sits here any more. */
  void close() {
    delay.close();
    stand.close();
    review.close();
  }
}
