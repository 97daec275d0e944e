package thinclick.server.net;

import org.jspecify.annotations.Nullable;
import thinclick.server.room.Room;

/**
 * How often one room may be entered: by all who belong there at once, as after a cut, but by nobody
 * who is closed and comes back all the time. Each coming costs the room more than a message does.
 * On the strangers' loop only.
 */
final class Comings {
  private static final double A_SECOND = 2;

  /** A line that breaks at every turn is back within seconds. */
  private static final double A_SECOND_WITH_ONE_TOKEN = .5;

  private static final double AT_ONCE_WITH_ONE_TOKEN = 5;

  /** Twice as many tokens as members: half of them may be made up. */
  private static final int REMEMBERED = 2 * Room.MAX_MEMBERS;

  private final Allowance all;
  private final Allowances<String> byToken =
      new Allowances<>(A_SECOND_WITH_ONE_TOKEN, AT_ONCE_WITH_ONE_TOKEN, REMEMBERED);

  Comings(long nowNanos) {
    all = new Allowance(A_SECOND, Room.MAX_MEMBERS, nowNanos);
  }

  /**
   * True where whoever shows that token may come in now; else nothing is taken, so that whoever
   * belongs here loses nothing by trying while others crowd the door.
   *
   * @param token as it was shown, genuine or not; null for somebody new
   */
  boolean allows(@Nullable String token, long nowNanos) {
    return all.has(1, nowNanos)
        && (token == null || byToken.take(token, nowNanos))
        && all.take(1, nowNanos);
  }

  /**
   * True where whoever shows that token has not come lately, so that their coming is paid for; who
   * comes again and again lives on what all strangers may take.
   */
  boolean paidFor(@Nullable String token, long nowNanos) {
    return token == null || byToken.full(token, nowNanos);
  }

  /** How many tokens are kept; bounded, however many are made up. */
  int remembered() {
    return byToken.size();
  }
}
