package thinclick.server.net;

import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.PreparingMessage;
import thinclick.protocol.message.TakeMessage;

/** What one connection may send: more than any honest client does, less than hurts the others. */
final class Traffic {
  /** A second, as {@code welcome} says. */
  static final int ATTACKS_PER_SECOND = 50;

  /** At once, for a resend after a cut. */
  static final int ATTACKS_AT_ONCE = 512;

  private static final int CLOCKS_PER_SECOND = 10;
  private static final int CLOCKS_AT_ONCE = 60;
  private static final int OTHERS_PER_SECOND = 10;
  private static final int OTHERS_AT_ONCE = 40;

  private final Allowance attacks;
  private final Allowance clocks;
  private final Allowance others;

  Traffic(long nowNanos) {
    attacks = new Allowance(ATTACKS_PER_SECOND, ATTACKS_AT_ONCE, nowNanos);
    clocks = new Allowance(CLOCKS_PER_SECOND, CLOCKS_AT_ONCE, nowNanos);
    others = new Allowance(OTHERS_PER_SECOND, OTHERS_AT_ONCE, nowNanos);
  }

  /** True where this message is still within what is allowed. */
  boolean allows(ClientMessage message, long nowNanos) {
    if (message instanceof TakeMessage.Attacks sent) {
      return attacks.take(sent.attacks().size(), nowNanos);
    }
    if (message instanceof PreparingMessage.Clock) {
      return clocks.take(1, nowNanos);
    }
    return others.take(1, nowNanos);
  }

  /** True where one more message that cannot be read is still within what is allowed. */
  boolean allowsUnread(long nowNanos) {
    return others.take(1, nowNanos);
  }
}
