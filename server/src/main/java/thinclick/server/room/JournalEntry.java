package thinclick.server.room;

import java.util.List;
import java.util.Map;
import thinclick.protocol.file.Span;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.TakeMessage.AttackLength;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews.StopReason;
import tools.jackson.databind.JsonNode;

/** What a room writes down, in the order in which it happened. */
public sealed interface JournalEntry {
  /** The room as it now is; takes the place of the one before. */
  record State(RoomState state) implements JournalEntry {}

  /**
   * A take was announced.
   *
   * @param written the take without attacks
   * @param seats the name in the take by playerId
   */
  record TakeBegun(String takeId, Take written, Map<String, String> seats)
      implements JournalEntry {}

  /**
   * A take's click was changed or broke off, or how somebody hears the others; the take without
   * attacks as it now is.
   */
  record Rewritten(String takeId, Take written) implements JournalEntry {}

  /** Attacks of one player, numbered from {@code firstSeq} on. */
  record Played(String takeId, String playerId, long firstSeq, List<WireAttack> attacks)
      implements JournalEntry {
    /** The number of the last one. */
    public long lastSeq() {
      return firstSeq + attacks.size() - 1;
    }
  }

  /** How long stored attacks of one player were held; an attack's first length stays. */
  record Lengths(String takeId, String playerId, List<AttackLength> items)
      implements JournalEntry {}

  /** A player was not there. */
  record Away(String takeId, String playerId, Span span) implements JournalEntry {}

  /** A player has sent everything. */
  record PlayedThrough(String takeId, String playerId, long lastSeq) implements JournalEntry {}

  /** A take is over; {@code atMicros} is room time of the take's own epoch. */
  record TakeEnded(String takeId, long atMicros, StopReason reason) implements JournalEntry {}

  /** A review of a take; takes the place of the one before. */
  record Reviewed(String takeId, boolean provisional, JsonNode review) implements JournalEntry {}

  /** A player's name in a take that has ended was put right. */
  record Renamed(String takeId, String from, String to) implements JournalEntry {}

  /** The room is over; its word is free again. */
  record Closed() implements JournalEntry {}
}
