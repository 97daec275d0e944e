package thinclick.client.window.session;

import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.Executor;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.link.CommandRefused;
import thinclick.client.link.LinkState;
import thinclick.client.link.RoomLink;
import thinclick.protocol.message.AnswerMessage.CourseSoFar;
import thinclick.protocol.message.AnswerMessage.Fewest;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.TakeNews.ReviewReady;
import thinclick.server.history.FewestClicks;

/**
 * What takes before say: the room's host is asked, whether it is in this window or elsewhere. All
 * methods on the window's thread.
 */
public final class PastTakes {
  private static final Logger LOG = LoggerFactory.getLogger(PastTakes.class);

  private final Executor windowThread;
  private final Supplier<@Nullable RoomLink> link;
  private final ReadOnlyObjectWrapper<Told> told = new ReadOnlyObjectWrapper<>(Told.NOTHING);
  private @Nullable CourseSoFar heard;
  private @Nullable Fewest fewest;
  private boolean asking;
  private boolean askAgain;

  /** How far a question has come. */
  public enum State {
    /** The answer is not there yet. */
    ASKED,
    /** It is there. */
    TOLD,
    /** The host is of an older kind and does not know the question. */
    OLDER_HOST,
    /** It could not be answered now. */
    NOT_NOW
  }

  /**
   * How it went up to the take that was reviewed last.
   *
   * @param takeId that take; empty where none was reviewed
   * @param course null where it has not been told
   */
  public record Told(String takeId, State state, @Nullable CourseSoFar course) {
    static final Told NOTHING = new Told("", State.NOT_NOW, null);
  }

  /** Hears the fewest clicks that were held. */
  @FunctionalInterface
  public interface FewestHeard {
    /**
     * The answer.
     *
     * @param found null where nothing was held, or nothing was told
     */
    void heard(State state, @Nullable FewestClicks found);
  }

  /**
   * @param link the way into the room, null outside one
   */
  PastTakes(Executor windowThread, Supplier<@Nullable RoomLink> link) {
    this.windowThread = windowThread;
    this.link = link;
  }

  /** How it went up to the take that was reviewed last; asked for by itself with each review. */
  public ReadOnlyObjectProperty<Told> toldProperty() {
    return told.getReadOnlyProperty();
  }

  /** The same, now. */
  public Told told() {
    return told.get();
  }

  void follow(RoomState old, RoomState now) {
    if (!now.inside()) {
      told.set(Told.NOTHING);
      heard = null;
      asking = false;
      askAgain = false;
    } else if (!Objects.equals(old.review(), now.review())) {
      ReviewReady review = now.review();
      boolean mayAsk = review != null && (now.leader() || now.ownPart() != null);
      if (review == null || !mayAsk) {
        told.set(Told.NOTHING);
      } else {
        ask(review.takeId());
      }
    } else if (old.link() != LinkState.ONLINE && now.link() == LinkState.ONLINE) {
      Told before = told.get();
      if (before.state() == State.NOT_NOW && !before.takeId().isEmpty()) {
        ask(before.takeId()); // the line was cut before the answer came
      }
    }
  }

  private void ask(String takeId) {
    RoomLink room = link.get();
    if (room == null) {
      return;
    }
    if (!told.get().takeId().equals(takeId)) {
      told.set(new Told(takeId, State.ASKED, null)); // else what is known stays until it is better
    }
    if (asking) {
      askAgain = true; // the host answers one at a time
      return;
    }
    asking = true;
    CompletableFuture<?> unused =
        room.askCourse(takeId)
            .whenCompleteAsync(
                (revision, refused) -> answered(room, takeId, refused), windowThread);
  }

  private void answered(RoomLink room, String takeId, @Nullable Throwable refused) {
    if (room != link.get()) {
      return; // of a room that was left
    }
    asking = false;
    CourseSoFar course = heard;
    boolean here = refused == null && course != null && course.takeId().equals(takeId);
    String wanted = told.get().takeId();
    if (wanted.equals(takeId) && (here || told.get().course() == null)) {
      told.set(new Told(takeId, here ? State.TOLD : state(refused), here ? course : null));
    }
    if (askAgain && !wanted.isEmpty()) {
      askAgain = false;
      ask(wanted);
    }
  }

  /** Looks up the fewest clicks that this band held at a drill and tempo. */
  public void fewestClicks(String title, double tempo, FewestHeard listener) {
    RoomLink room = link.get();
    if (room == null) {
      listener.heard(State.NOT_NOW, null);
      return;
    }
    CompletableFuture<?> unused =
        room.askFewest(title, tempo)
            .whenCompleteAsync(
                (revision, refused) -> {
                  Fewest found = fewest;
                  boolean here =
                      refused == null
                          && found != null
                          && found.title().equals(title)
                          && found.tempo() == tempo;
                  listener.heard(here ? State.TOLD : state(refused), here ? read(found) : null);
                },
                windowThread);
  }

  private static @Nullable FewestClicks read(@Nullable Fewest found) {
    return found == null || found.held() == null ? null : FewestClicks.of(found.held());
  }

  private static State state(@Nullable Throwable refused) {
    Throwable why = refused instanceof CompletionException ? refused.getCause() : refused;
    if (why instanceof CommandRefused command && command.code() == ErrorCode.UNKNOWN_TYPE) {
      return State.OLDER_HOST;
    }
    LOG.debug("not told of takes before: {}", why == null ? "another answer" : why.getMessage());
    return State.NOT_NOW;
  }

  // ---------------------------------------------------------------- what the link tells

  void heard(CourseSoFar course) {
    heard = course;
  }

  void heard(Fewest found) {
    fewest = found;
  }
}
