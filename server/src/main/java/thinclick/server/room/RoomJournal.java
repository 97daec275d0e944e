package thinclick.server.room;

import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;

/**
 * Where rooms write what must not be lost. Opening a room gives a number, its epoch, that fences
 * off every earlier opener: what an earlier one still appends is refused.
 */
public interface RoomJournal {
  /**
   * Opens a room for writing.
   *
   * @param roomId a new id or one that the journal has
   * @param word the room word, used where the room is new
   */
  CompletableFuture<Opened> open(String roomId, String word);

  /** Appends one entry; completes once it is on the disk or refused. Entries keep their order. */
  CompletableFuture<Outcome> append(String roomId, long epoch, JournalEntry entry);

  /**
   * What opening found.
   *
   * @param epoch greater than every earlier one of this room
   * @param state as last written; null for a new room
   * @param takes what is stored of the takes that the state remembers, by takeId
   */
  record Opened(long epoch, @Nullable RoomState state, Map<String, StoredTake> takes) {}

  /**
   * What is stored of a take.
   *
   * @param seqs the numbers of stored attacks by playerId, ascending
   * @param lastMicros room time of the latest attack, in the take's own epoch; null where none is
   */
  record StoredTake(Map<String, List<Long>> seqs, @Nullable Long lastMicros) {}

  /** How an append went. */
  sealed interface Outcome {
    /** It is on the disk. */
    record Stored() implements Outcome {}

    /** All of it was there already, with the same content. */
    record Duplicate() implements Outcome {}

    /**
     * It is on the disk except for numbers that were there with other content, which stays.
     *
     * @param seqs those numbers
     */
    record Conflict(List<Long> seqs) implements Outcome {}

    /** Somebody has opened the room since; nothing was written. */
    record Fenced() implements Outcome {}

    /**
     * It cannot be written, now or later.
     *
     * @param why in a word or two, for whoever reads the log or the error
     */
    record Refused(String why) implements Outcome {}
  }
}
