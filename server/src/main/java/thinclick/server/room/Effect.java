package thinclick.server.room;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Phase;

/** What a room wants done, in order, by the edge that owns it. */
public sealed interface Effect {
  /** Send one message to these connections. */
  record Send(List<Long> connections, ServerMessage message) implements Effect {}

  /** Say goodbye and close. */
  record Close(long connection, CloseCode code, String says) implements Effect {}

  /** Write to the journal; attacks are answered by {@link RoomEvent.Journaled}. */
  record Append(JournalEntry entry) implements Effect {}

  /** Make a review of a take as it is stored once everything appended before is. */
  record MakeReview(String takeId) implements Effect {}

  /**
   * Read a take as it is stored, for somebody who keeps it; answered by {@link RoomEvent.TakeRead}.
   *
   * @param only whose part alone, by its name in the take; null for the whole
   * @param piece which piece of it, from 1; null for one frame or none
   */
  record ReadTake(
      long connection,
      long requestId,
      String takeId,
      @Nullable String only,
      @Nullable Integer piece)
      implements Effect {}

  /** Look what takes before say; answered by {@link RoomEvent.Recalled}. */
  record Recall(long connection, long requestId, PastQuestion question) implements Effect {}

  /** Find a word that no room has; answered by {@link RoomEvent.WordGiven}. */
  record WantWord(long connection, long requestId) implements Effect {}

  /** For the log: the phase has changed. */
  record PhaseChanged(Phase from, Phase to, String why) implements Effect {}

  /** The room is over and can be forgotten. */
  record Ended(String why) implements Effect {}
}
