package thinclick.server.host;

import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Take;
import thinclick.protocol.invite.Fingerprint;
import thinclick.protocol.invite.JoinLink;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.time.Daemon;
import thinclick.server.history.Entry;
import thinclick.server.net.HostParts;
import thinclick.server.net.Listener;
import thinclick.server.net.Port;
import thinclick.server.room.Shelf;
import thinclick.server.store.Store;
import thinclick.server.watch.HostMeters;
import thinclick.server.watch.PauseWatch;
import thinclick.server.words.Speaker;

/** A running host of rooms: one port, one database, any number of rooms. */
public final class RehearsalHost implements AutoCloseable {
  private final HostLock lock;
  private final Store store;
  private final ExecutorService reviewPool;
  private final Chores chores;
  private final ClassBook classes;
  private final PauseWatch pauses;
  private final Listener listener;
  private final Threshold threshold;
  private final @Nullable Announcement announcement;
  private final WarmUp warmUp;
  private final AtomicBoolean closed = new AtomicBoolean();

  private RehearsalHost(
      HostLock lock,
      Store store,
      ExecutorService reviewPool,
      Chores chores,
      ClassBook classes,
      PauseWatch pauses,
      Listener listener,
      Threshold threshold,
      @Nullable Announcement announcement,
      WarmUp warmUp) {
    this.lock = lock;
    this.store = store;
    this.reviewPool = reviewPool;
    this.chores = chores;
    this.classes = classes;
    this.pauses = pauses;
    this.listener = listener;
    this.threshold = threshold;
    this.announcement = announcement;
    this.warmUp = warmUp;
  }

  /**
   * Opens the database, brings back the rooms in it, listens, and answers once all is done.
   *
   * @throws BadInput where the address, the port or the database cannot be had, in one line
   */
  public static RehearsalHost start(HostOptions options) {
    return start(options, Port.bind(options.reach().host(), options.reach().port()));
  }

  /**
   * The same on a port that was bound before, for those options; it is let go where the start
   * fails.
   */
  public static RehearsalHost start(HostOptions options, Port port) {
    try {
      return startAt(port, options);
    } catch (RuntimeException problem) {
      port.close();
      throw problem;
    }
  }

  private static RehearsalHost startAt(Port port, HostOptions options) {
    Store.checkPlace(options.database());
    BackupSchedule.check(options);
    Deque<Runnable> ends = new ArrayDeque<>();
    try {
      return begin(port, options, ends);
    } catch (RuntimeException problem) {
      ends.forEach(Runnable::run);
      throw problem;
    }
  }

  /**
   * @param ends told how to end each thing that has begun, so that the last is the first to end
   *     where a later one fails
   */
  private static RehearsalHost begin(Port port, HostOptions options, Deque<Runnable> ends) {
    HostMeters meters = new HostMeters();
    AtomicReference<@Nullable Listener> listening = new AtomicReference<>();
    Speaker speaker = Speaker.of(options.language());
    Shelf shelf = HostMaterial.shelf(options.material());
    Threshold threshold = Threshold.of(options);
    HostLock lock = HostLock.of(options.database());
    ends.push(lock::close);
    Consumer<Boolean> availability =
        available -> {
          Listener listener = listening.get();
          if (listener != null) {
            listener.storeChanged(available);
          }
        };
    InstantSource wallClock = options.keeping().wallClock();
    Store store =
        options.timers() == null
            ? Store.open(options.database(), wallClock, availability)
            : Store.openInLockStep(options.database(), wallClock, availability);
    ends.push(store::close);
    meters.storeRefusals(store::refusals);
    PurgeSchedule purges = PurgeSchedule.atStart(store, options);
    Instant begun = wallClock.instant();
    ExecutorService reviewPool =
        Executors.newSingleThreadExecutor(Daemon.called("thinclick-review"));
    ends.push(reviewPool::shutdown);
    HostParts parts =
        new HostParts(
            options.clock(),
            options.timers(),
            store,
            shelf,
            HostMaterial.dealer(speaker),
            new Reviewer(speaker, key -> KeptHistory.entries(store, key, begun, speaker))::review,
            new PastAnswers(store)::answer,
            threshold.door(),
            reviewPool,
            meters,
            options.news(),
            options.reach().metricsToAll());
    Listener listener = Listener.open(port, threshold.lines(), parts);
    ends.push(listener::close);
    listening.set(listener);
    WarmUp warmUp = new WarmUp(shelf, parts.dealer());
    reviewPool.execute(warmUp::once); // there is nothing to review yet
    Chores chores = new Chores();
    ends.push(chores::close);
    purges.goOn(chores);
    BackupSchedule.begin(chores, options);
    ClassBook classes =
        ClassBook.of(
            store, shelf, options.database(), options.backupFolder(), speaker, listener::renamed);
    PauseWatch pauses = PauseWatch.start(meters::paused);
    ends.push(pauses::close);
    return new RehearsalHost(
        lock,
        store,
        reviewPool,
        chores,
        classes,
        pauses,
        listener,
        threshold,
        Announcement.of(options.reach(), listener.port(), threshold.encrypted()),
        warmUp);
  }

  /**
   * Gets through all that rooms do, so that the first who come are served as fast as the last; on a
   * thread of its own, for a second or so. For a host that stays.
   */
  public void warmUp() {
    Daemon.called("thinclick-warm-up").newThread(() -> warmUp.run(port())).start();
  }

  /**
   * What brings somebody into a room of this host, or to the host where {@code word} is null; by
   * the first of {@link #addresses()}.
   */
  public JoinLink link(@Nullable String word) {
    return link(addresses().get(0), word);
  }

  /** The same by another name or number of this computer. */
  public JoinLink link(String address, @Nullable String word) {
    boolean plain = !threshold.encrypted();
    return new JoinLink(address, port(), word, plain ? null : threshold.fingerprint(), plain);
  }

  /** The numbers by which others reach this host, the likeliest first; never none. */
  public List<String> addresses() {
    return threshold.addresses();
  }

  /** True where it is reached from this computer only. */
  public boolean here() {
    return threshold.here();
  }

  /** True where other computers are let in by an encrypted line only. */
  public boolean encrypted() {
    return threshold.encrypted();
  }

  /** Of the certificate that this host shows; null where it shows none. */
  public @Nullable Fingerprint fingerprint() {
    return threshold.fingerprint();
  }

  /** The port it listens on. */
  public int port() {
    return listener.port();
  }

  /**
   * A take with all that is stored of it, also while it runs; empty where none has this id. Waits
   * for the store.
   */
  public Optional<Take> take(String takeId) {
    return store.take(takeId).join();
  }

  /** All takes that have ended, the oldest first, with their reviews; waits for the store. */
  public List<Entry> history() {
    return classes.history();
  }

  /** The classes that are kept here, and what they have played. */
  public ClassBook classes() {
    return classes;
  }

  /** Takes no new rooms, and ends each that is there after the take that runs in it. */
  public void drain() {
    listener.drain();
  }

  /** Completes once all rooms have ended after a drain, whoever asked for it. */
  public CompletableFuture<Void> drained() {
    return listener.drained();
  }

  /**
   * Completes when everything that had reached the host before this call has been worked through:
   * events handled, rows committed, reviews made, answers handed to the sockets. For tests that
   * move the clock in lock step; bytes still under way in a socket are not seen.
   */
  public CompletableFuture<Void> settled() {
    return listener.settled();
  }

  /**
   * Tells the rooms, ends their takes, writes what is left, and lets the port go. Does nothing the
   * second time.
   */
  @Override
  public void close() {
    if (closed.getAndSet(true)) {
      return;
    }
    if (announcement != null) {
      announcement.close();
    }
    listener.close();
    reviewPool.shutdown();
    chores.close();
    store.close();
    lock.close();
    pauses.close();
  }
}
