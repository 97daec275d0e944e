package thinclick.client.window.session;

import java.util.List;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import thinclick.client.link.RoomLink;
import thinclick.client.link.RoomListener;
import thinclick.protocol.time.MonotonicClock;

/** Who else plays at this computer, in the order in which they came. On the window's thread. */
final class FurtherSeats {
  private final Executor windowThread;
  private final MonotonicClock clock;
  private final ObservableList<FurtherSeat> seats = FXCollections.observableArrayList();
  private final ObservableList<FurtherSeat> seen = FXCollections.unmodifiableObservableList(seats);

  FurtherSeats(Executor windowThread, MonotonicClock clock) {
    this.windowThread = windowThread;
    this.clock = clock;
  }

  ObservableList<FurtherSeat> seen() {
    return seen;
  }

  /**
   * Lets one in, where there is a place.
   *
   * @param join makes the link that tells what it hears
   * @param says told why not, where they are not let in or not any more
   */
  void add(String name, Function<RoomListener, RoomLink> join, Consumer<String> says) {
    if (seats.size() < Session.MOST_FURTHER) {
      seats.add(
          new FurtherSeat(
              name,
              windowThread,
              clock,
              join,
              (seat, why) -> {
                if (seats.remove(seat)) {
                  says.accept(why);
                }
              }));
    }
  }

  /** One goes. */
  void remove(FurtherSeat seat) {
    if (seats.remove(seat)) {
      seat.close();
    }
  }

  /** All go. */
  void removeAll() {
    List.copyOf(seats).forEach(this::remove);
  }
}
