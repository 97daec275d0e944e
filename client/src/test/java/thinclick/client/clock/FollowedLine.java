package thinclick.client.clock;

import java.util.Comparator;
import java.util.PriorityQueue;
import thinclick.protocol.message.AnswerMessage.ClockAnswer;

/** A follower that asks over a simulated line, with every instant under the test's hand. */
final class FollowedLine {
  private record Underway(long id, Exchange exchange) {}

  final ClockFollower follower;
  private final SimulatedLine line;
  private final PriorityQueue<Underway> underway =
      new PriorityQueue<>(Comparator.comparingLong((Underway u) -> u.exchange().arrivedNanos()));
  private long epoch = 1;
  private long nowNanos;
  private long wallJumpMillis;

  FollowedLine(SimulatedLine line, long seed) {
    this.line = line;
    this.follower = new ClockFollower(0, seed);
  }

  /** Asks and answers until {@code seconds} of this computer's clock. */
  FollowedLine until(double seconds) {
    long end = Math.round(seconds * 1e9);
    while (true) {
      long asks = follower.dueNanos();
      long arrives =
          underway.isEmpty() ? Long.MAX_VALUE : underway.peek().exchange().arrivedNanos();
      if (Math.min(asks, arrives) > end) {
        nowNanos = end;
        return this;
      }
      if (arrives <= asks) {
        nowNanos = Math.max(nowNanos, arrives);
        answer(underway.remove());
      } else {
        nowNanos = Math.max(nowNanos, asks);
        ask();
      }
    }
  }

  private void ask() {
    long id = follower.ask(nowNanos, nowNanos / 1_000_000 + wallJumpMillis).id();
    Exchange exchange = line.exchange(nowNanos);
    if (exchange != null) {
      underway.add(new Underway(id, exchange));
    }
  }

  private void answer(Underway done) {
    Exchange e = done.exchange();
    follower.answered(
        new ClockAnswer(done.id(), 0, e.receivedMicros(), e.answeredMicros(), epoch),
        e.arrivedNanos());
  }

  /** Nothing is asked or heard for a while: the computer sleeps with its clock running. */
  FollowedLine sleep(double seconds) {
    nowNanos += Math.round(seconds * 1e9);
    underway.clear();
    return this;
  }

  FollowedLine jumpWall(long millis) {
    wallJumpMillis += millis;
    return this;
  }

  FollowedLine restartServer() {
    epoch++;
    return this;
  }

  long nanos() {
    return nowNanos;
  }

  ClockView view() {
    return follower.view();
  }

  /** The mapping's error now, milliseconds, positive where it is ahead of the room. */
  double errorMillis() {
    return (view().mapping().roomAt(nowNanos) - nowNanos / 1e3 - line.trueOffset(nowNanos)) / 1e3;
  }

  /** What the mapping says of the room now, microseconds. */
  double roomNow() {
    return view().mapping().roomAt(nowNanos);
  }
}
