package thinclick.protocol.time;

import java.util.OptionalLong;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;

/**
 * A clock that stands still until it is moved, with the timers that hang on it: a rehearsal runs in
 * lock step, as fast as the computer can.
 *
 * <p>Tasks run on the thread that moves the clock, in the order of their instants and, at one
 * instant, in the order in which they were asked for. Reading and asking are safe from any thread.
 */
public final class VirtualTime implements MonotonicClock, Timers {
  private final PriorityQueue<Task> tasks = new PriorityQueue<>();
  private long nowNanos;
  private long asked;

  /**
   * @param startNanos where the clock stands at first
   */
  public VirtualTime(long startNanos) {
    nowNanos = startNanos;
  }

  @Override
  public synchronized long nanos() {
    return nowNanos;
  }

  @Override
  public synchronized Pending at(long nanos, Runnable task) {
    Task made = new Task(Math.max(nanos, nowNanos), asked++, task);
    tasks.add(made);
    return () -> cancel(made);
  }

  private synchronized void cancel(Task task) {
    tasks.remove(task);
  }

  /** The instant of the earliest task, empty where nothing waits. */
  public synchronized OptionalLong next() {
    Task first = tasks.peek();
    return first == null ? OptionalLong.empty() : OptionalLong.of(first.atNanos);
  }

  /**
   * Moves the clock forward to {@code nanos}, running what falls due on the way, each task with the
   * clock at its own instant; tasks that are asked for on the way are run too where they fall due.
   * An instant that is past leaves the clock where it is.
   */
  public void advanceTo(long nanos) {
    for (Task due = due(nanos); due != null; due = due(nanos)) {
      due.run.run();
    }
  }

  /**
   * Runs the earliest task alone, with the clock moved to its instant; false where it comes after
   * {@code nanos} or none waits, and the clock then stands at {@code nanos}.
   */
  public boolean runNext(long nanos) {
    Task first = due(nanos);
    if (first != null) {
      first.run.run();
    }
    return first != null;
  }

  private synchronized @Nullable Task due(long nanos) {
    Task first = tasks.peek();
    if (first != null && first.atNanos <= nanos) {
      tasks.remove();
      nowNanos = Math.max(nowNanos, first.atNanos);
      return first;
    }
    nowNanos = Math.max(nowNanos, nanos);
    return null;
  }

  private record Task(long atNanos, long asked, Runnable run) implements Comparable<Task> {
    @Override
    public int compareTo(Task other) {
      int byInstant = Long.compare(atNanos, other.atNanos);
      return byInstant != 0 ? byInstant : Long.compare(asked, other.asked);
    }
  }
}
