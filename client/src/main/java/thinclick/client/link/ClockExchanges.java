package thinclick.client.link;

import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import thinclick.client.clock.ClockFollower;
import thinclick.client.clock.ClockView;
import thinclick.protocol.file.Span;
import thinclick.protocol.message.AnswerMessage.ClockAnswer;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.PreparingMessage.ClockReport;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.time.Timers;

/** Asks the server for its time when the follower wants it and reports how well it is known. */
final class ClockExchanges {
  private static final long REPORT_NANOS = 1_000_000_000L;
  private static final long TAKE_OVER_NANOS = 100_000_000L;
  private static final long QUIET_REPORT_NANOS = 5_000_000_000L;

  private final LinkLoop loop;
  private final Consumer<ClientMessage> out;
  private final Consumer<ClockView> changed;
  private final ClockFollower follower;
  private final Consumer<Span> slept;
  private final @Nullable Shared shared;
  private @Nullable Span sharedSleep;
  private Timers.Pending next = () -> {};
  private boolean online;
  private long epoch;
  private boolean reported;
  private long reportedNanos;
  private ClockState reportedState = ClockState.FINDING;

  /** What another link of this computer knows of its clock. */
  interface Shared {
    /** What is believed of room time. */
    ClockView view();

    /** When the computer slept last, room time; null where it did not. */
    @Nullable Span sleep();
  }

  /**
   * @param seed spreads the questions of many players apart
   * @param out sends a message at once
   * @param changed is told each new belief
   * @param slept is told when this computer slept, room time, once it is awake and knows
   * @param shared another link of this computer, whose belief is taken over as it is; null where
   *     this one asks for itself
   */
  ClockExchanges(
      LinkLoop loop,
      long seed,
      Consumer<ClientMessage> out,
      Consumer<ClockView> changed,
      Consumer<Span> slept,
      @Nullable Shared shared) {
    this.loop = loop;
    this.out = out;
    this.changed = changed;
    this.slept = slept;
    this.shared = shared;
    this.sharedSleep = shared == null ? null : shared.sleep();
    this.follower = new ClockFollower(loop.nanos(), seed);
  }

  /**
   * Welcomed: exchanges may pass.
   *
   * @param now the room's epoch; what is believed of another is not reported
   */
  void online(long now) {
    online = true;
    epoch = now;
    reported = false;
    if (shared != null) {
      takeOver(shared);
      return;
    }
    follower.online(loop.nanos());
    ask();
  }

  void offline() {
    if (online && shared == null) {
      follower.offline(loop.nanos(), loop.wallMillis());
    }
    online = false;
    next.cancel();
  }

  private void ask() {
    next.cancel();
    if (online) {
      out.accept(follower.ask(loop.nanos(), loop.wallMillis()));
      next = loop.at(follower.dueNanos(), this::ask);
    }
  }

  /** Takes the other link's belief, often enough that both stamp alike. */
  private void takeOver(Shared other) {
    next.cancel();
    if (online) {
      ClockView view = other.view();
      Span sleep = other.sleep();
      if (sleep != null && !sleep.equals(sharedSleep)) {
        sharedSleep = sleep;
        slept.accept(sleep);
      }
      changed.accept(view);
      long now = loop.nanos();
      if (!reported || now - reportedNanos >= REPORT_NANOS) {
        report(view, now);
      }
      next = loop.at(now + TAKE_OVER_NANOS, () -> takeOver(other));
    }
  }

  /** A take was announced; its span is on the mapping in use. */
  void hold(long countInMicros, long startMicros) {
    follower.hold(countInMicros, startMicros);
  }

  /** The take is over. */
  void release() {
    if (shared != null) {
      return;
    }
    follower.release(loop.nanos());
    changed.accept(follower.view());
  }

  void answered(ClockAnswer answer, long arrivedNanos) {
    follower.answered(answer, arrivedNanos);
    Span sleep = follower.slept();
    if (sleep != null) {
      slept.accept(sleep);
    }
    ClockView view = follower.view();
    changed.accept(view);
    long since = arrivedNanos - reportedNanos;
    boolean due =
        view.state() != reportedState ? since >= REPORT_NANOS : since >= QUIET_REPORT_NANOS;
    if (!reported || due) {
      report(view, arrivedNanos);
    }
  }

  private void report(ClockView view, long nowNanos) {
    if (view.epoch() != epoch) {
      return; // no answer of this epoch has come in time yet
    }
    reported = true;
    reportedNanos = nowNanos;
    reportedState = view.state();
    double skew = Math.max(-500, Math.min(500, view.mapping().skewPpm()));
    out.accept(
        new ClockReport(
            view.epoch(),
            view.state(),
            Math.round(view.uncertaintyMicros()),
            Math.round(view.spreadMicros()),
            skew,
            Math.round(view.roundTripMicros()),
            Math.round(view.roundTripMicros() - view.bestRoundTripMicros())));
  }
}
