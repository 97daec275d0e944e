package thinclick.protocol.message;

/** Why a connection is closed: the codes of RFC 6455 and, from 4400, our own. */
public enum CloseCode {
  /** The player left, or the room was closed by its leader. */
  LEFT(1000, "left"),
  /** The host is going; come back later. */
  GOING(1001, "the host is going"),
  /** A frame that RFC 6455 does not allow. */
  PROTOCOL(1002, "not a WebSocket frame"),
  /** A binary frame came; messages are text. */
  BINARY(1003, "expected text, found binary"),
  /** A text frame was not UTF-8. */
  NOT_UTF8(1007, "expected UTF-8"),
  /** A browser page that is not listed. */
  ORIGIN(1008, "this origin is not listed"),
  /** A frame over the limit. */
  TOO_BIG(1009, "expected at most 16384 bytes"),
  /** Something broke in the host. */
  FAULT(1011, "fault in the host"),
  /** The host cannot take more. */
  OVERLOAD(1013, "the host is full"),
  /** Not a message. */
  MALFORMED(4400, "not a message"),
  /** The token is not known here. */
  TOKEN(4401, "the token is not known"),
  /** The leader removed this player. */
  REMOVED(4403, "removed by the leader"),
  /** No room of that word. */
  ROOM(4404, "no room of that word"),
  /** No first message in time, or no sign of life. */
  TIMEOUT(4408, "nothing heard in time"),
  /** The same player came in by a newer connection. */
  REPLACED(4409, "replaced by a newer connection"),
  /** The room was closed. */
  CLOSED(4410, "the room was closed"),
  /** The receiver reads too slowly. */
  SLOW(4413, "read too slowly"),
  /** No common version. */
  VERSION(4426, "no common version"),
  /** Too many messages. */
  FLOOD(4429, "too many messages");

  private final int number;
  private final String says;

  CloseCode(int number, String says) {
    this.number = number;
    this.says = says;
  }

  /** The number in the close frame. */
  public int number() {
    return number;
  }

  /** The usual sentence; a close frame may carry a closer one. */
  public String says() {
    return says;
  }
}
