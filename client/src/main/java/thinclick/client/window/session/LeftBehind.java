package thinclick.client.window.session;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executor;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.link.LeftRoom;
import thinclick.client.link.LinkState;
import thinclick.client.link.RoomLink;
import thinclick.client.link.RoomListener;
import thinclick.client.window.words.Refused;
import thinclick.protocol.json.BadInput;

/**
 * What an earlier run of the program left behind: the rooms it was in when it ended without
 * leaving, and the attacks that its journals still hold. Those are brought to the hosts they belong
 * to, as long as this run lasts. What no host can be asked about stays; what its host will never
 * take is told once, and given up. On the window's thread.
 */
final class LeftBehind implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(LeftBehind.class);

  private final Executor windowThread;
  private final BiFunction<Path, RoomListener, RoomLink> resume;
  private final Map<Path, RoomLink> bringing = new LinkedHashMap<>();
  private final Consumer<Refused> refused;
  private final ReadOnlyIntegerWrapper journals = new ReadOnlyIntegerWrapper(0);
  private List<LeftRoom> rooms = List.of();

  /**
   * @param resume takes up a journal where it was left
   * @param refused told on the window's thread what no host takes any more
   */
  LeftBehind(
      Executor windowThread,
      BiFunction<Path, RoomListener, RoomLink> resume,
      Consumer<Refused> refused) {
    this.windowThread = windowThread;
    this.resume = resume;
    this.refused = refused;
  }

  /** What is said of attacks that a host will never take. */
  static Refused givenUp(int attacks, String says) {
    return new Refused(null, "given up " + attacks + " attacks: " + says);
  }

  /** How many earlier rooms are still waiting for attacks from here. */
  ReadOnlyIntegerProperty journalsProperty() {
    return journals.getReadOnlyProperty();
  }

  /** The rooms that it was in, the last one first. */
  List<LeftRoom> rooms() {
    return rooms;
  }

  /**
   * Looks at what lies in a folder and begins to bring it.
   *
   * @param now the wall clock
   */
  void bring(Path folder, Instant now) {
    rooms = LeftRoom.in(folder, now); // first: what is being brought cannot be looked at
    List<Path> left;
    try {
      left = RoomLink.unsent(folder);
    } catch (IOException unreadable) {
      LOG.warn("the attacks left in {} cannot be read: {}", folder, unreadable.getMessage());
      return;
    }
    for (Path journal : left) {
      try {
        bringing.put(journal, resume.apply(journal, listener(journal)));
      } catch (BadInput taken) {
        LOG.info("left as it is: {}", taken.getMessage());
      }
    }
    journals.set(bringing.size());
  }

  private RoomListener listener(Path journal) {
    return new RoomListener() {
      @Override
      public void waitingChanged(int waiting) {
        if (waiting == 0) {
          windowThread.execute(() -> over(journal));
        }
      }

      @Override
      public void attacksRefused(int attacks, String says) {
        windowThread.execute(() -> refused.accept(givenUp(attacks, says)));
      }

      @Override
      public void linkChanged(LinkState state, String says) {
        if (state == LinkState.CLOSED) {
          windowThread.execute(() -> over(journal));
        }
      }
    };
  }

  /** Leaves a room to somebody who goes back into it; what its journal still holds stays there. */
  void letGo(LeftRoom room) {
    over(room.journal());
    rooms = rooms.stream().filter(one -> one != room).toList();
  }

  private void over(Path journal) {
    RoomLink link = bringing.remove(journal);
    if (link != null) {
      link.close();
    }
    journals.set(bringing.size());
  }

  @Override
  public void close() {
    bringing.values().forEach(RoomLink::close);
    bringing.clear();
  }
}
