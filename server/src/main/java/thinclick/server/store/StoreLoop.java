package thinclick.server.store;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The one thread that speaks SQL. It takes whatever waits, runs it in one transaction, commits, and
 * only then answers, so that many waiting writers share one flush of the disk.
 *
 * <p>Where the disk is at fault the group is kept, the connection opened anew, and the same tried
 * again; nobody is answered meanwhile. What can never succeed is found among its group, logged, and
 * fails alone.
 */
final class StoreLoop implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(StoreLoop.class);
  private static final int LARGEST_GROUP = 512;

  /**
   * The time from one commit to the next is at least this: every commit costs the same whether it
   * carries one row or fifty. Who writes after a silence waits for nobody.
   */
  static final long COMMIT_GAP_NANOS = TimeUnit.MILLISECONDS.toNanos(12);

  private static final long FIRST_RETRY_MILLIS = 100;
  private static final long LONGEST_RETRY_MILLIS = 2_000;

  /** So many refusals are not logged again. */
  private static final int REMEMBERED = 1_000;

  /** How much may wait before readers are asked to pause. */
  static final int FULL_AT = 4_096;

  private final Database database;
  private final LinkedBlockingQueue<Job<?>> queue = new LinkedBlockingQueue<>();
  private final AtomicLong unanswered = new AtomicLong();
  private final AtomicLong commits = new AtomicLong();
  private final AtomicLong refusals = new AtomicLong();
  private final Set<String> logged = new HashSet<>();
  private final List<Runnable> waitingForRoom = new ArrayList<>();
  private final Consumer<Boolean> availability;
  private final Thread thread;
  private volatile boolean closing;
  private volatile long giveUpNanos = Long.MAX_VALUE;
  private final long gapNanos;
  private long committedNanos;
  private boolean available = true;
  private @Nullable Session session;

  /** Something to do inside the group's transaction; run again where the group is tried again. */
  interface Work<T> {
    T run(Session session) throws Exception;
  }

  private static final class Job<T> {
    final Supplier<String> what;
    final Work<T> work;
    final CompletableFuture<T> answer = new CompletableFuture<>();
    @Nullable T result;

    Job(Supplier<String> what, Work<T> work) {
      this.what = what;
      this.work = work;
    }

    void run(Session session) throws Exception {
      result = work.run(session);
    }

    @SuppressWarnings("NullAway") // a work that answers null is one whose type allows it
    void complete() {
      answer.complete(result);
    }
  }

  /**
   * @param gapNanos the least time from one commit to the next, 0 for none
   * @param availability told whether the disk can be written, at each change, on the loop's thread
   */
  StoreLoop(Database database, long gapNanos, Consumer<Boolean> availability) {
    this.database = database;
    this.gapNanos = gapNanos;
    this.committedNanos = System.nanoTime() - gapNanos;
    this.availability = availability;
    this.thread = new Thread(this::run, "thinclick-store");
    this.thread.setDaemon(true);
    this.thread.start();
  }

  /** Queues what somebody asked for; its answer comes after the commit. */
  <T> CompletableFuture<T> submit(Work<T> work) {
    return submit(() -> "a request", work);
  }

  /**
   * Queues work; its answer comes after the commit.
   *
   * @param what names it in the log where it can never succeed; one name is logged once
   */
  <T> CompletableFuture<T> submit(Supplier<String> what, Work<T> work) {
    Job<T> job = new Job<>(what, work);
    if (closing) {
      job.answer.completeExceptionally(new IllegalStateException("the store is closed"));
      return job.answer;
    }
    unanswered.incrementAndGet();
    queue.add(job);
    return job.answer;
  }

  /** True while little enough waits. */
  boolean hasRoom() {
    return queue.size() < FULL_AT;
  }

  /** Calls once there is room again, at once where there is. */
  void whenRoom(Runnable call) {
    synchronized (waitingForRoom) {
      if (!hasRoom()) {
        waitingForRoom.add(call);
        return;
      }
    }
    call.run();
  }

  /** Transactions committed since the start. */
  long commits() {
    return commits.get();
  }

  /** How much could not be done, and never will be. */
  long refusals() {
    return refusals.get();
  }

  /** What was submitted and not yet answered. */
  long unanswered() {
    return unanswered.get();
  }

  private void run() {
    List<Job<?>> group = new ArrayList<>();
    while (true) {
      try {
        Job<?> first = queue.poll(closing ? 0 : 200, TimeUnit.MILLISECONDS);
        if (first == null) {
          if (closing) {
            break;
          }
          continue;
        }
        group.add(first);
        waitForOthers();
        queue.drainTo(group, LARGEST_GROUP - 1);
        commit(group);
      } catch (InterruptedException stopped) {
        break;
      } finally {
        group.clear();
      }
      tellRoom();
    }
    closeSession();
  }

  private void waitForOthers() throws InterruptedException {
    long left = committedNanos + gapNanos - System.nanoTime();
    if (left > 0 && !closing && queue.size() < LARGEST_GROUP) {
      TimeUnit.NANOSECONDS.sleep(left);
    }
  }

  private void tellRoom() {
    List<Runnable> calls;
    synchronized (waitingForRoom) {
      if (waitingForRoom.isEmpty() || queue.size() > FULL_AT / 2) {
        return;
      }
      calls = List.copyOf(waitingForRoom);
      waitingForRoom.clear();
    }
    calls.forEach(StoreLoop::call);
  }

  private void commit(List<Job<?>> group) throws InterruptedException {
    long waitMillis = FIRST_RETRY_MILLIS;
    int failures = 0;
    while (true) {
      boolean fresh = session == null;
      try {
        transact(group);
        becomeAvailable(true);
        group.forEach(this::answer);
        return;
      } catch (Exception problem) {
        closeSession(); // also rolls back; after a full disk the transaction is already gone
        Failure failure = Failure.of(problem);
        if (failure.kind() == Failure.Kind.OF_THE_CONNECTION && !fresh) {
          continue;
        }
        if (failure.kind() != Failure.Kind.PASSING) {
          apart(group, problem, failure);
          return;
        }
        becomeAvailable(false);
        if (Integer.bitCount(++failures) == 1) { // the first, the second, the fourth ...
          LOG.atWarn()
              .addKeyValue("code", failure.code())
              .addKeyValue("failures", failures)
              .log("cannot write, trying again in {} ms", waitMillis);
        }
        if (System.nanoTime() - giveUpNanos >= 0) {
          group.forEach(job -> fail(job, problem));
          return;
        }
        Thread.sleep(waitMillis);
        waitMillis = Math.min(LONGEST_RETRY_MILLIS, 2 * waitMillis);
      }
    }
  }

  private void transact(List<Job<?>> group) throws Exception {
    Session open = session;
    if (open == null) {
      open = new Session(database.handle());
      session = open;
    }
    open.begin();
    for (Job<?> job : group) {
      job.run(open);
    }
    open.commit();
    committedNanos = System.nanoTime();
    commits.incrementAndGet();
  }

  /** One job of the group is at fault: halves are tried until it is alone, and it alone fails. */
  private void apart(List<Job<?>> group, Exception problem, Failure failure)
      throws InterruptedException {
    int half = group.size() / 2;
    if (half > 0) {
      commit(group.subList(0, half));
      commit(group.subList(half, group.size()));
      return;
    }
    Job<?> faulty = group.get(0);
    refusals.incrementAndGet();
    log(faulty.what.get(), problem, failure);
    fail(faulty, problem);
  }

  /** Whoever cannot be helped asks again and again; the log says it once. */
  private void log(String what, Exception problem, Failure failure) {
    if (logged.size() >= REMEMBERED) {
      logged.clear();
    }
    if (logged.add(what + failure.code())) {
      LOG.atError()
          .addKeyValue("what", what)
          .addKeyValue("code", failure.code())
          .setCause(problem)
          .log("the database refuses this for good");
    }
  }

  private void answer(Job<?> job) {
    job.complete();
    unanswered.decrementAndGet();
  }

  private void fail(Job<?> job, Exception problem) {
    job.answer.completeExceptionally(problem);
    unanswered.decrementAndGet();
  }

  private void becomeAvailable(boolean now) {
    if (available != now) {
      available = now;
      if (now) {
        LOG.info("the disk can be written again");
      }
      call(() -> availability.accept(now));
    }
  }

  /** A host that is going takes no calls any more; what waits is written all the same. */
  private static void call(Runnable listener) {
    try {
      listener.run();
    } catch (RuntimeException deaf) {
      LOG.warn("whoever was to be told of the store did not listen", deaf);
    }
  }

  private void closeSession() {
    Session open = session;
    session = null;
    if (open != null) {
      open.close();
    }
  }

  /** Writes what waits, for at most 5 s where the disk is at fault, and ends the thread. */
  @Override
  public void close() {
    giveUpNanos = System.nanoTime() + TimeUnit.SECONDS.toNanos(5);
    closing = true;
    try {
      thread.join(TimeUnit.SECONDS.toMillis(10));
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }
}
