package thinclick.server.net;

import java.net.InetAddress;

/** What addresses may try before they have shown that they belong here; one for all loops. */
final class Strangers {
  private static final double MINUTE = 60;
  private static final int WRONG_WORDS = 20;
  private static final int WRONG_WORDS_OVERALL = 200;
  private static final int ROOMS = 3;
  private static final int REMEMBERED = 10_000;

  /**
   * A handshake costs about a millisecond of a loop that others share; a class comes in at once.
   */
  private static final int HANDSHAKES = 300;

  private static final int HANDSHAKES_AT_ONCE = 100;
  private static final int HANDSHAKES_A_SECOND_OVERALL = 100;
  private static final int HANDSHAKES_AT_ONCE_OVERALL = 400;

  private final Allowances<InetAddress> words = aMinute(WRONG_WORDS, WRONG_WORDS);
  private final Allowances<InetAddress> rooms = aMinute(ROOMS, ROOMS);
  private final Allowances<InetAddress> handshakes = aMinute(HANDSHAKES, HANDSHAKES_AT_ONCE);
  private final Allowance wordsOverall;
  private final Allowance handshakesOverall;

  Strangers(long nowNanos) {
    wordsOverall = new Allowance(WRONG_WORDS_OVERALL / MINUTE, WRONG_WORDS_OVERALL, nowNanos);
    handshakesOverall =
        new Allowance(HANDSHAKES_A_SECOND_OVERALL, HANDSHAKES_AT_ONCE_OVERALL, nowNanos);
  }

  private static Allowances<InetAddress> aMinute(int times, int atOnce) {
    return new Allowances<>(times / MINUTE, atOnce, REMEMBERED);
  }

  /**
   * True where this address may begin an encrypted line; this computer always may. Where all
   * together are refused, nothing is taken of the address.
   */
  synchronized boolean mayShakeHands(InetAddress from, long nowNanos) {
    return from.isLoopbackAddress()
        || (handshakesOverall.has(1, nowNanos)
            && handshakes.take(from, nowNanos)
            && handshakesOverall.take(1, nowNanos));
  }

  /**
   * True where this address may try a word. Nothing is taken yet: a class behind one address comes
   * in at once, and only wrong words cost something.
   */
  synchronized boolean mayTryWord(InetAddress from, long nowNanos) {
    return words.has(from, nowNanos) && wordsOverall.has(1, nowNanos);
  }

  /** The word was wrong. */
  synchronized void wordWasWrong(InetAddress from, long nowNanos) {
    words.take(from, nowNanos);
    wordsOverall.take(1, nowNanos);
  }

  /** True where this address may make a room; this computer always may. */
  synchronized boolean mayMakeRoom(InetAddress from, long nowNanos) {
    return from.isLoopbackAddress() || rooms.take(from, nowNanos);
  }

  /** How many allowances are kept; bounded, however many addresses come. */
  synchronized int remembered() {
    return words.size() + rooms.size() + handshakes.size();
  }
}
