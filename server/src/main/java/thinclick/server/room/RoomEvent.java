package thinclick.server.room;

import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ServerMessage;
import tools.jackson.databind.JsonNode;

/**
 * What can happen to a room. All that is random or slow comes in with an event, so that the same
 * events at the same instants give the same room again.
 */
public sealed interface RoomEvent {
  /**
   * A connection's first message.
   *
   * @param connection the edge's number for it
   * @param message {@code openRoom} or {@code join}
   * @param freshToken for the player, where a new one is needed
   * @param freshLeaderToken for the one who opens the room
   */
  record Came(long connection, ClientMessage message, String freshToken, String freshLeaderToken)
      implements RoomEvent {}

  /** A later message of a connection that came in. */
  record Said(long connection, ClientMessage message) implements RoomEvent {}

  /**
   * A connection is gone, whoever closed it.
   *
   * @param silentMicros for how long nothing had come from it where that is why; else 0
   */
  record Gone(long connection, long silentMicros) implements RoomEvent {}

  /** The instant of {@link Room#wakeMicros} has come, or passed. */
  record Woken() implements RoomEvent {}

  /** The journal has answered. */
  record Journaled(JournalEntry entry, RoomJournal.Outcome outcome) implements RoomEvent {}

  /** The disk cannot be written, or can be written again. */
  record StoreChanged(boolean available) implements RoomEvent {}

  /** A review was made of what was stored when it was asked for. */
  record Reviewed(String takeId, JsonNode review) implements RoomEvent {}

  /** A review could not be made. */
  record ReviewFailed(String takeId, String why) implements RoomEvent {}

  /**
   * A take was read for somebody who keeps it.
   *
   * @param answer the take or a piece of it, as it may be seen; null where it cannot be had
   * @param why it cannot; empty where it can
   */
  record TakeRead(Effect.ReadTake asked, @Nullable ServerMessage answer, String why)
      implements RoomEvent {}

  /**
   * The host has looked what takes before say.
   *
   * @param answer null where there is none
   * @param why there is none; empty where there is
   */
  record Recalled(Effect.Recall asked, @Nullable ServerMessage answer, String why)
      implements RoomEvent {}

  /**
   * A name was put right in the class that the room is held for.
   *
   * @param from in any case and composition
   * @param takeId where one take is meant alone; null for the room and all it remembers
   */
  record Renamed(String from, String to, @Nullable String takeId) implements RoomEvent {}

  /** A word that no other room has, as was asked for. */
  record WordGiven(String word, long connection, long requestId) implements RoomEvent {}

  /** The host is going. */
  record HostGoing() implements RoomEvent {}
}
