package thinclick.client.clock;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.ClockState;
import thinclick.protocol.message.ServerMessage;

/**
 * The packets' level: when to ask, which answers count, what is believed. Time comes in with every
 * call; all calls come from one thread.
 */
public final class ClockFollower {
  private static final long GIVEN_UP_NANOS = 1_000_000_000L;
  private static final int KEPT = 64;
  private static final int STEADY_AFTER = 8;

  private final long zeroNanos;
  private final Map<Long, Long> sentNanos = new HashMap<>();
  private final Deque<Exchange> kept = new ArrayDeque<>();
  private long nextId = 1;
  private long begunNanos;
  private long dueNanos;
  private ClockView view;

  /** Starts asking at once. */
  public ClockFollower(long nowNanos) {
    zeroNanos = nowNanos;
    begunNanos = nowNanos;
    dueNanos = nowNanos;
    view = ClockView.unknown(nowNanos);
  }

  /** When the next question is due. */
  public long dueNanos() {
    return dueNanos;
  }

  /** The question to send now. */
  public ClientMessage.Clock ask(long nowNanos) {
    sentNanos.values().removeIf(sent -> nowNanos - sent > GIVEN_UP_NANOS);
    long id = nextId++;
    sentNanos.put(id, nowNanos);
    long age = nowNanos - begunNanos;
    dueNanos =
        nowNanos
            + (age < 2_000_000_000L
                ? 100_000_000L
                : age < 30_000_000_000L ? 200_000_000L : 500_000_000L);
    return new ClientMessage.Clock(id, (nowNanos - zeroNanos) / 1_000);
  }

  /** Takes an answer that was read at {@code arrivedNanos}; a late or unasked one is dropped. */
  public void answered(ServerMessage.ClockAnswer answer, long arrivedNanos) {
    Long sent = sentNanos.remove(answer.id());
    if (sent == null || arrivedNanos - sent > GIVEN_UP_NANOS) {
      return;
    }
    if (answer.epoch() != view.epoch()) {
      kept.clear();
    }
    kept.addLast(new Exchange(sent, answer.t2Micros(), answer.t3Micros(), arrivedNanos));
    if (kept.size() > KEPT) {
      kept.removeFirst();
    }
    view = look(answer.epoch(), arrivedNanos);
  }

  /** What is believed now. */
  public ClockView view() {
    return view;
  }

  private ClockView look(long epoch, long nowNanos) {
    List<Exchange> byDelay =
        kept.stream().sorted(Comparator.comparingDouble(Exchange::delayMicros)).toList();
    Exchange best = byDelay.get(0);
    double offset = best.offsetMicros();
    return new ClockView(
        new ClockMapping(nowNanos, nowNanos / 1e3 + offset, 0),
        kept.size() >= STEADY_AFTER ? ClockState.STEADY : ClockState.FINDING,
        epoch,
        best.delayMicros() / 2,
        0,
        best.delayMicros(),
        byDelay.get(byDelay.size() / 2).delayMicros());
  }
}
