package thinclick.client.link;

import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.ServerMessage;

/** Who somebody is in a room and what proves it. The link's thread only, but for the word. */
final class Pass {
  private final String name;
  private final Role role;
  private volatile @Nullable String word;
  private @Nullable String token;
  private @Nullable String leaderToken;
  private boolean opens;

  /**
   * @param word null where a room is to be opened
   */
  Pass(String name, Role role, @Nullable String word) {
    this.name = name;
    this.role = role;
    this.word = word;
    this.opens = word == null;
  }

  /** Of somebody who was in the room before. */
  static Pass of(JournalFile.Bearer bearer) {
    Pass pass = new Pass(bearer.name(), bearer.role(), bearer.room());
    pass.token = bearer.token();
    pass.leaderToken = bearer.role() == Role.LEADER ? bearer.token() : null;
    return pass;
  }

  String name() {
    return name;
  }

  /** The room's word, null until a room that is being opened has one; from any thread. */
  @Nullable String word() {
    return word;
  }

  /**
   * What is said first on a line.
   *
   * @param revision the last one seen of the room
   */
  ClientMessage firstWords(LinkOptions options, long revision) {
    int version = MessageCodec.VERSION;
    String known = word;
    if (opens || known == null) {
      return new ClientMessage.OpenRoom(version, version, options.hostKey(), name);
    }
    String proof = role == Role.LEADER ? leaderToken : token;
    Long seen = token == null ? null : (Long) revision;
    return new ClientMessage.Join(
        version, version, known, name, role, proof, seen, options.standIn());
  }

  /** Let in. */
  void welcomed(ServerMessage.Welcome welcome) {
    opens = false;
    token = welcome.token();
    leaderToken = welcome.leaderToken() == null ? leaderToken : welcome.leaderToken();
    word = welcome.room();
  }

  /** What a later run of the program needs in order to go on as the same. */
  JournalFile.Bearer bearer(RoomAddress address, ServerMessage.Welcome welcome) {
    return new JournalFile.Bearer(
        JournalFile.Bearer.FORMAT,
        1,
        address.link(null).toString(),
        welcome.room(),
        name,
        role,
        leaderToken == null ? welcome.token() : leaderToken);
  }
}
