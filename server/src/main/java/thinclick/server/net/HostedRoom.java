package thinclick.server.net;

import io.netty.channel.EventLoop;
import io.netty.util.concurrent.ScheduledFuture;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Function;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.time.Timers;
import thinclick.server.room.Effect;
import thinclick.server.room.Room;
import thinclick.server.room.RoomEvent;

/** A room on the one event loop that owns it: events in, effects carried out. */
@SuppressWarnings("FutureReturnValueIgnored") // a write or timer that fails ends with its channel
final class HostedRoom {
  private static final Logger LOG = LoggerFactory.getLogger(HostedRoom.class);

  /** From a take's end to the room's, where the host is leaving: the last attacks, the review. */
  private static final long REVIEW_MILLIS = 10_000;

  private final Room room;
  private final EventLoop loop;
  private final HostParts parts;
  private final Errands errands;
  private final long originNanos;
  private final Function<HostedRoom, String> words;
  private final Consumer<HostedRoom> ended;

  private final Comings comings;
  private final Map<Long, Connection> connections = new HashMap<>();
  private final Flushes flushes;
  private boolean leaving;
  private volatile boolean playing;
  private Timers.Pending waking = () -> {};
  private long wakingMicros = Long.MAX_VALUE;

  /**
   * @param originNanos the clock's reading at which the room's epoch begins
   * @param words gives the room another word that no other has
   * @param ended told when the room is over
   */
  HostedRoom(
      Room room,
      EventLoop loop,
      Flushes flushes,
      HostParts parts,
      Busy busy,
      long originNanos,
      Function<HostedRoom, String> words,
      Consumer<HostedRoom> ended) {
    this.room = room;
    this.loop = loop;
    this.flushes = flushes;
    this.parts = parts;
    this.errands = new Errands(room, loop, parts, busy, this::handle);
    this.originNanos = originNanos;
    this.words = words;
    this.ended = ended;
    this.comings = new Comings(parts.clock().nanos());
  }

  String id() {
    return room.id();
  }

  long epoch() {
    return room.epoch();
  }

  /** On which everything of this room happens, and every line of its members. */
  EventLoop loop() {
    return loop;
  }

  /** Whether whoever says that first may come in now; on the strangers' loop. */
  Comings.Answer mayBeEntered(ClientMessage message) {
    String token = message instanceof ClientMessage.Join join ? join.token() : null;
    return comings.ask(token, parts.clock().nanos());
  }

  /** True while a take runs here; from any thread. */
  boolean playing() {
    return playing;
  }

  /** Room time at a reading of the host's clock. */
  long micros(long nanos) {
    return Math.floorDiv(nanos - originNanos, 1_000L);
  }

  /**
   * A connection wants in; from now on its number stands for it.
   *
   * @param answered called on the room's loop once it is in or refused
   */
  void come(Connection connection, RoomEvent.Came came, Runnable answered) {
    run(
        () -> {
          connections.put(connection.number(), connection);
          handle(came);
          if (room.knows(connection.number())) {
            connection.joined(true);
            parts.meters().inRoom(1);
          }
          answered.run();
        });
  }

  /** Something happened; from any thread. */
  void post(RoomEvent event) {
    run(() -> handle(event));
  }

  /** The connection is gone. */
  void left(Connection connection) {
    run(
        () -> {
          connections.remove(connection.number());
          if (connection.joined()) {
            connection.joined(false);
            parts.meters().inRoom(-1);
          }
          handle(new RoomEvent.Gone(connection.number(), connection.silentMicros()));
        });
  }

  /** Ends the room here: at once, or soon after the take that runs now. */
  void leave() {
    run(
        () -> {
          leaving = true;
          if (!takeRuns()) {
            goSoon(0);
          }
        });
  }

  private boolean takeRuns() {
    return room.phase() == Phase.COUNT_IN || room.phase() == Phase.TAKE;
  }

  private void goSoon(long millis) {
    Runnable going = () -> handle(new RoomEvent.HostGoing());
    Timers timers = parts.timers();
    if (timers != null && millis > 0) {
      timers.at(parts.clock().nanos() + millis * 1_000_000L, () -> run(going));
    } else {
      loop.schedule(going, millis, TimeUnit.MILLISECONDS);
    }
  }

  private void run(Runnable task) {
    if (loop.inEventLoop()) {
      task.run();
    } else {
      loop.execute(task);
    }
  }

  private void handle(RoomEvent event) {
    List<Effect> effects;
    try {
      effects = room.handle(event, micros(parts.clock().nanos()));
    } catch (RuntimeException fault) {
      fault(event, fault);
      return;
    }
    for (Effect effect : effects) {
      try {
        carryOut(effect);
      } catch (RuntimeException fault) {
        fault(event, fault); // what else was decided is done: it may be to be written down
      }
    }
    playing = takeRuns();
    flushes.inTime();
    wakeLater();
  }

  /** A fault of ours costs the sender the connection, and nobody else anything. */
  private void fault(RoomEvent event, RuntimeException fault) {
    LOG.error("room {}: a fault in {}", id(), event.getClass().getSimpleName(), fault);
    long number =
        event instanceof RoomEvent.Said said
            ? said.connection()
            : event instanceof RoomEvent.Came came ? came.connection() : -1;
    Connection sender = connections.get(number);
    if (sender != null) {
      sender.close(CloseCode.FAULT, CloseCode.FAULT.says(), null);
    }
  }

  private void carryOut(Effect effect) {
    if (effect instanceof Effect.Send send) {
      send(send);
    } else if (effect instanceof Effect.Append append) {
      errands.append(append.entry());
    } else if (effect instanceof Effect.Close close) {
      close(close);
    } else if (effect instanceof Effect.MakeReview review) {
      errands.review(review.takeId());
    } else if (effect instanceof Effect.ReadTake wanted) {
      errands.read(wanted);
    } else if (effect instanceof Effect.Recall wanted) {
      errands.recall(wanted);
    } else if (effect instanceof Effect.WantWord want) {
      String fresh = words.apply(this);
      loop.execute(
          () -> handle(new RoomEvent.WordGiven(fresh, want.connection(), want.requestId())));
    } else if (effect instanceof Effect.PhaseChanged change) {
      LOG.atInfo()
          .addKeyValue("room", id())
          .addKeyValue("from", change.from())
          .addKeyValue("to", change.to())
          .log("{}", change.why());
      if (leaving && !takeRuns()) {
        goSoon(REVIEW_MILLIS);
      }
    } else if (effect instanceof Effect.Ended end) {
      LOG.atInfo().addKeyValue("room", id()).log("over: {}", end.why());
      waking.cancel();
      ended.accept(this);
    }
  }

  private void send(Effect.Send send) {
    byte[] frame = Connection.encode(send.message());
    boolean droppable = send.message() instanceof TakeNews.Heard;
    boolean mayWait = send.message() instanceof TakeNews.Stored && parts.timers() == null;
    for (long number : send.connections()) {
      Connection connection = connections.get(number);
      if (connection == null) {
        continue;
      }
      if (!connection.write(frame, droppable)) {
        if (droppable) {
          parts.meters().heardDropped();
        }
      } else {
        if (mayWait) {
          flushes.late(connection);
        } else {
          flushes.soon(connection);
        }
      }
    }
  }

  private void close(Effect.Close close) {
    Connection connection = connections.remove(close.connection());
    if (connection != null) {
      Long retry = close.code() == CloseCode.GOING ? (Long) 1_000L : null;
      connection.close(close.code(), close.says(), retry);
    }
  }

  private void wakeLater() {
    long next = room.wakeMicros();
    if (next >= wakingMicros) {
      return; // waking too early does no harm
    }
    waking.cancel();
    wakingMicros = next;
    long atNanos = originNanos + next * 1_000;
    Timers timers = parts.timers();
    if (timers != null) {
      waking = timers.at(atNanos, () -> run(this::wake));
    } else {
      long delayNanos = Math.max(0, atNanos - parts.clock().nanos());
      ScheduledFuture<?> future = loop.schedule(this::wake, delayNanos, TimeUnit.NANOSECONDS);
      waking = () -> future.cancel(false);
    }
  }

  private void wake() {
    wakingMicros = Long.MAX_VALUE;
    handle(new RoomEvent.Woken());
  }
}
