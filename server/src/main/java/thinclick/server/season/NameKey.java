package thinclick.server.season;

import thinclick.protocol.json.BadInput;
import thinclick.server.room.Nickname;

/** By what names are told apart from week to week: as in a room, where looks alone count. */
public final class NameKey {
  private NameKey() {}

  /** Equal for names that people cannot tell apart; a name that no room would take is itself. */
  public static String of(String name) {
    try {
      return Nickname.of(name).key();
    } catch (BadInput notFromARoom) {
      return name;
    }
  }
}
