package thinclick.server.room;

import java.util.concurrent.CompletableFuture;

/**
 * Finds the room of a word. With one machine the answer is never another node; callers treat all
 * answers all the same.
 *
 * @param <R> how a room that is here is reached
 */
public interface RoomDirectory<R> {
  /** Looks a room up by its word, as {@link RoomWord#normal} writes it. */
  CompletableFuture<Place<R>> find(String word);

  /** Where a room is. */
  sealed interface Place<R> {
    /** In this process. */
    record Here<R>(R room) implements Place<R> {}

    /** On another node, to be joined at that address. */
    record Elsewhere<R>(String node) implements Place<R> {}

    /** It exists but cannot be reached now. */
    record Unavailable<R>(String says) implements Place<R> {}

    /** No room of that word. */
    record Nowhere<R>() implements Place<R> {}
  }
}
