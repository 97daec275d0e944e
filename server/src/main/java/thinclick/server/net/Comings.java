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

  /** Whether somebody may come in now, and at whose cost. */
  enum Answer {
    /** They must wait; nothing was taken, so that trying in a crowd costs nobody. */
    WAIT,
    /** They may, on what all strangers may take: they come again and again. */
    AS_A_STRANGER,
    /** They may, and are no stranger's cost: they have not come lately. */
    WELCOME
  }

  /**
   * Whether whoever shows that token may come in now; where they may, it counts as one coming.
   *
   * @param token as it was shown, genuine or not; null for somebody new
   */
  Answer ask(@Nullable String token, long nowNanos) {
    boolean notLately = token == null || byToken.full(token, nowNanos); // before this one counts
    boolean allowed =
        all.has(1, nowNanos)
            && (token == null || byToken.take(token, nowNanos))
            && all.take(1, nowNanos);
    if (!allowed) {
      return Answer.WAIT;
    }
    return notLately ? Answer.WELCOME : Answer.AS_A_STRANGER;
  }

  /** How many tokens are kept; bounded, however many are made up. */
  int remembered() {
    return byToken.size();
  }
}
