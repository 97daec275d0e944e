package thinclick.client.clock;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Span;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.PreparingMessage;
import thinclick.protocol.message.PreparingMessage.ClockState;

/**
 * The packets' level: when to ask, which answers count, what is believed, and how the mapping in
 * use follows the belief. Time comes in with every call; all calls come from one thread.
 */
public final class ClockFollower {
  /** An exchange that took longer is worth nothing. */
  static final long GIVEN_UP_NANOS = 1_000_000_000L;

  /** A question that leaves so much later than it was due means that the computer slept. */
  static final long SLEPT_NANOS = 1_000_000_000L;

  /** A wall clock that moved so much more than the monotonic one means that one of them jumped. */
  static final long WALL_JUMP_MILLIS = 250;

  /** Further out than this within a take, the mapping no longer holds. */
  static final double LOST_MICROS = 20_000;

  /** How far two good clocks part while nobody asks (RFC 5905's PHI is 15), parts in a million. */
  static final double AGEING_PPM = 5;

  private static final int STEADY_AFTER = 8;

  private final long zeroNanos;
  private final AskSchedule schedule;
  private final ExchangeWindow window = new ExchangeWindow();
  private final Map<Long, Long> sentNanos = new HashMap<>();
  private long nextId = 1;
  private long dueNanos;
  private boolean asked;
  private long wallMillis;
  private long wallAtNanos;
  private long epoch;
  private @Nullable Hold hold;
  private @Nullable Gap gap;
  private @Nullable Span slept;
  private boolean known;
  private double heldPpm;
  private ClockView view;

  /** From the count-in on the mapping stands still, from bar 1 on it may be bent. */
  private record Hold(long fromMicros, long startMicros) {}

  /**
   * Nothing ran here for a while; how long that was in room time is known once the clock is.
   *
   * @param fromMicros room time when it last ran
   * @param wokeNanos the monotonic clock, which may have stood still, when it ran again
   */
  private record Gap(double fromMicros, long wokeNanos, long epoch) {}

  /** Starts asking at once; {@code seed} spreads the questions of many players apart. */
  public ClockFollower(long nowNanos, long seed) {
    zeroNanos = nowNanos;
    schedule = new AskSchedule(nowNanos, seed);
    dueNanos = nowNanos;
    view = ClockView.unknown(nowNanos);
  }

  /** When the next question is due. */
  public long dueNanos() {
    return dueNanos;
  }

  /** What is believed now. */
  public ClockView view() {
    return view;
  }

  /** A connection was made: ask often again, and count neither the gap nor old questions. */
  public void online(long nowNanos) {
    asked = false;
    sentNanos.clear();
    schedule.restart(nowNanos);
    dueNanos = nowNanos;
  }

  /**
   * The connection is lost; a computer that slept may find that out before it asks again.
   *
   * @param wallMillis the wall clock
   */
  public void offline(long nowNanos, long wallMillis) {
    if (asked && ranOn(nowNanos, wallMillis)) {
      gapBefore(nowNanos);
    }
    asked = false;
  }

  /**
   * The question to send now.
   *
   * @param wallMillis the wall clock, to notice a computer that slept
   */
  public PreparingMessage.Clock ask(long nowNanos, long wallMillis) {
    if (asked && ranOn(nowNanos, wallMillis)) {
      gapBefore(nowNanos);
      distrust(nowNanos);
    }
    asked = true;
    this.wallMillis = wallMillis;
    wallAtNanos = nowNanos;
    sentNanos.values().removeIf(sent -> nowNanos - sent > GIVEN_UP_NANOS);
    long id = nextId++;
    sentNanos.put(id, nowNanos);
    dueNanos = schedule.nextNanos(nowNanos);
    return new PreparingMessage.Clock(id, (nowNanos - zeroNanos) / 1_000);
  }

  /** True where time has gone on without this computer, or a clock of it jumped. */
  private boolean ranOn(long nowNanos, long wall) {
    long wallMoved = wall - wallMillis - (nowNanos - wallAtNanos) / 1_000_000;
    return nowNanos - dueNanos > SLEPT_NANOS || Math.abs(wallMoved) > WALL_JUMP_MILLIS;
  }

  private void gapBefore(long nowNanos) {
    Gap open = gap;
    if (open != null) {
      gap = new Gap(open.fromMicros(), nowNanos, open.epoch()); // slept again before it was known
    } else if (view.state() == ClockState.STEADY) {
      gap = new Gap(view.mapping().roomAt(wallAtNanos), nowNanos, epoch);
    }
  }

  /**
   * When this computer slept, room time; told once, as soon as the clock is known again. Null where
   * it did not, or for no longer than a second.
   */
  public @Nullable Span slept() {
    Span told = slept;
    slept = null;
    return told;
  }

  private void closeGap() {
    Gap open = gap;
    if (open == null || view.state() != ClockState.STEADY) {
      return;
    }
    gap = null;
    double to = view.mapping().roomAt(open.wokeNanos());
    if (open.epoch() == epoch && (to - open.fromMicros()) * 1e3 > SLEPT_NANOS) {
      slept = new Span(Math.max(0, Math.round(open.fromMicros())), Math.round(to));
    }
  }

  /** Takes an answer that was read at {@code arrivedNanos}; a late or unasked one is dropped. */
  public void answered(AnswerMessage.ClockAnswer answer, long arrivedNanos) {
    Long sent = sentNanos.remove(answer.id());
    if (sent == null || arrivedNanos - sent > GIVEN_UP_NANOS) {
      return;
    }
    Exchange exchange = new Exchange(sent, answer.t2Micros(), answer.t3Micros(), arrivedNanos);
    if (answer.epoch() != epoch) {
      epoch = answer.epoch();
      hold = null;
      distrust(arrivedNanos);
    } else if (contradicts(exchange)) {
      distrust(arrivedNanos);
    }
    window.add(exchange);
    view = look(arrivedNanos);
    closeGap();
  }

  /**
   * A take was announced: from its count-in on the mapping in use does not jump.
   *
   * @param countInMicros room time of the count-in's first click
   * @param startMicros room time of bar 1
   */
  public void hold(long countInMicros, long startMicros) {
    hold = new Hold(countInMicros, startMicros);
  }

  /** The take is over: the mapping may jump to what is believed. */
  public void release(long nowNanos) {
    hold = null;
    if (window.size() > 0) {
      view = look(nowNanos);
    }
  }

  /**
   * The computer slept or a clock jumped: what was measured before says nothing of now, and even
   * within a take the mapping is found anew, since nobody can play on by the old one.
   */
  private void distrust(long nowNanos) {
    window.clear();
    known = false;
    schedule.restart(nowNanos);
    view =
        new ClockView(
            view.mapping(),
            view.state() == ClockState.FINDING ? ClockState.FINDING : ClockState.LOST,
            epoch,
            ClockView.UNKNOWN_MICROS,
            ClockView.UNKNOWN_MICROS,
            ClockView.UNKNOWN_MICROS,
            ClockView.UNKNOWN_MICROS);
  }

  /**
   * True where the exchange and those before it cannot both be right, whatever the line did:
   * intervals that certainly hold the offset have nothing in common, however far the clocks may
   * have parted since.
   */
  private boolean contradicts(Exchange exchange) {
    if (window.size() == 0) {
      return false;
    }
    List<Exchange> used = window.used();
    Skew skew = window.skew();
    Ways before = Ways.of(used, exchange.arrivedNanos(), skew.ppm());
    Ways now = Ways.of(List.of(exchange), exchange.arrivedNanos(), skew.ppm());
    double apartSeconds = (exchange.arrivedNanos() - used.get(0).sentNanos()) / 1e9;
    double allowed = apartSeconds * (100 + skew.errorPpm());
    return now.low() > before.high() + allowed || now.high() < before.low() - allowed;
  }

  private ClockView look(long nowNanos) {
    List<Exchange> used = window.used();
    Skew skew = window.skew();
    OffsetEstimate offset = OffsetEstimator.estimate(Ways.of(used, nowNanos, skew.ppm()));
    double reachSeconds = (nowNanos - used.get(0).sentNanos()) / 1e9;
    double ageing = Math.max(AGEING_PPM, skew.errorPpm()) * reachSeconds;
    double uncertainty = offset.worstMicros() + ageing;
    ClockMapping wanted =
        new ClockMapping(nowNanos, nowNanos / 1e3 + offset.offsetMicros(), skew.ppm());
    ClockMapping mapping = inUse(wanted, nowNanos);
    double out = Math.abs(mapping.roomAt(nowNanos) - wanted.roomAt(nowNanos));
    double[] delays = used.stream().mapToDouble(Exchange::delayMicros).sorted().toArray();
    return new ClockView(
        mapping,
        state(out),
        epoch,
        uncertainty + out,
        offset.spreadMicros(),
        delays[0],
        Numbers.middle(delays));
  }

  private ClockState state(double outMicros) {
    if (outMicros > LOST_MICROS) {
      return ClockState.LOST;
    }
    return window.size() < STEADY_AFTER ? ClockState.FINDING : ClockState.STEADY;
  }

  private ClockMapping inUse(ClockMapping wanted, long nowNanos) {
    double used = view.mapping().roomAt(nowNanos);
    boolean bound = known && hold != null && used >= hold.fromMicros();
    known = true;
    if (!bound || hold == null) {
      heldPpm = wanted.skewPpm();
      return wanted;
    }
    return used < hold.startMicros()
        ? view.mapping()
        : Slew.towards(view.mapping(), wanted, heldPpm, nowNanos);
  }
}
