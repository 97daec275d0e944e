package thinclick.client.link;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.LongFunction;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.clock.ClockView;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ClientMessage.WireAttack;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.music.Stage;
import thinclick.protocol.time.Timers;

/**
 * One player's way into a room, kept open: it joins, follows the room's clock, sends attacks until
 * the server has stored them, and comes back by itself after a cut.
 *
 * <p>Methods may be called from any thread; the listener is called from the link's own.
 */
public final class RoomLink implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(RoomLink.class);
  private static final long HALF_OPEN_NANOS = 15_000_000_000L;
  private static final long RESEND_NANOS = 5_000_000_000L;
  private static final long STORE_RETRY_NANOS = 1_000_000_000L;

  /** How long after the end of a take an attack may still be on its way from the player's hands. */
  private static final long LAST_ATTACKS_NANOS = 1_000_000_000L;

  private final LinkOptions options;
  private final RoomAddress address;
  private final String name;
  private final Role role;
  private final RoomListener listener;
  private final Requests requests = new Requests();
  private final Outboxes outboxes = new Outboxes();
  private final ClockExchanges clock;
  private final Retry retry;

  private volatile LinkState state = LinkState.CONNECTING;
  private volatile ClockView view;
  private volatile @Nullable String word;
  private volatile double chairLatencyMillis;

  // Below: the link's thread only.
  private @Nullable Socket socket;
  private @Nullable String token;
  private @Nullable String leaderToken;
  private boolean opens;
  private @Nullable JournalFile journal;
  private boolean welcomed;
  private boolean plays;
  private long revision;
  private long heardNanos;
  private Timers.Pending watching = () -> {};
  private Timers.Pending resending = () -> {};
  private int toldWaiting;

  private RoomLink(
      LinkOptions options,
      RoomAddress address,
      @Nullable String word,
      String name,
      Role role,
      RoomListener listener) {
    this.options = options;
    this.address = address;
    this.word = word;
    this.name = name;
    this.role = role;
    this.listener = listener;
    this.opens = word == null;
    this.view = ClockView.unknown(options.loop().nanos());
    this.clock =
        new ClockExchanges(options.loop(), name.hashCode(), this::send, this::clockChanged);
    this.retry = new Retry(name.hashCode());
  }

  /** Opens a room and joins it as its leader; the word is known once {@code welcome} has come. */
  public static RoomLink open(
      LinkOptions options, RoomAddress address, String name, RoomListener listener) {
    RoomLink link = new RoomLink(options, address, null, name, Role.LEADER, listener);
    options.loop().run(link::connect);
    return link;
  }

  /** Joins a room by its word. */
  public static RoomLink join(
      LinkOptions options,
      RoomAddress address,
      String word,
      String name,
      Role role,
      RoomListener listener) {
    RoomLink link = new RoomLink(options, address, word, name, role, listener);
    options.loop().run(link::connect);
    return link;
  }

  /**
   * Goes on where an earlier run of the program ended: brings the attacks that its journal still
   * holds, as the same player, and may play on. Tries until the server answers.
   *
   * @throws BadInput where the file is not a journal, or another program has it open
   */
  public static RoomLink resume(LinkOptions options, Path journalFile, RoomListener listener) {
    JournalFile journal = JournalFile.resume(journalFile);
    JournalFile.Bearer bearer = journal.bearer();
    RoomLink link =
        new RoomLink(
            options,
            RoomAddress.parse(bearer.server()),
            bearer.room(),
            bearer.name(),
            bearer.role(),
            listener);
    options
        .loop()
        .run(
            () -> {
              link.journal = journal;
              link.token = bearer.token();
              link.leaderToken = bearer.role() == Role.LEADER ? bearer.token() : null;
              link.outboxes.restore(journal.found());
              link.toldWaiting = link.outboxes.waiting();
              link.welcomed = true;
              link.connect();
            });
    return link;
  }

  /** The journals in a folder whose attacks nobody has brought to their server yet. */
  public static List<Path> unsent(Path journalFolder) throws IOException {
    return JournalFile.leftIn(journalFolder);
  }

  // ------------------------------------------------------------------ what a player does

  /**
   * Stamps an attack with room time and sends it; kept and sent again until it is stored.
   *
   * <p>The stamp is the mapping's at this moment less the chair's delay; it is marked unsure while
   * the clock is not steady.
   *
   * @return its room time in microseconds, also where no take runs and it goes nowhere
   */
  public long sendAttack(PlayedAttack attack) {
    ClockView now = view;
    double raw = now.mapping().roomAt(attack.nanos());
    double latencyMillis = chairLatencyMillis;
    long micros = Math.max(0, Math.round(raw - latencyMillis * 1e3));
    Long rawMicros = latencyMillis == 0 ? null : (Long) Math.max(0, Math.round(raw));
    boolean unsure = now.state() != ClientMessage.ClockState.STEADY;
    WireAttack wire =
        new WireAttack(
            micros,
            rawMicros,
            attack.velocity(),
            attack.pitch(),
            attack.lengthMillis(),
            attack.lateByMillis(),
            unsure);
    options
        .loop()
        .run(
            () -> {
              ClientMessage.Attacks kept = outboxes.add(wire);
              if (kept != null) {
                if (journal != null) {
                  journal.keep(kept);
                }
                pump();
              }
            });
    return micros;
  }

  /** The player has stopped: nothing more will come for this take. Said by itself 1 s after it. */
  public void playedThrough(String takeId) {
    options
        .loop()
        .run(
            () -> {
              outboxes.finish(takeId);
              pump();
            });
  }

  /** Tells that the dealt part has been read. */
  public void ready(String dealId, boolean ready) {
    post(new ClientMessage.Ready(dealId, ready));
  }

  /** From now on attacks are stamped earlier by the chair's delay. */
  public void chairDelay(double latencyMillis) {
    chairLatencyMillis = latencyMillis;
  }

  /** Tells the room how far the chair's delay is known; between takes only. */
  public void soundCheck(ClientMessage.SoundCheck measured) {
    post(measured);
  }

  /** Leaves the room for good and closes. */
  public CompletableFuture<Long> leave() {
    return request(ClientMessage.Leave::new);
  }

  // ------------------------------------------------------------------ what a leader does

  /** Chooses a drill of the host's by its title. */
  public CompletableFuture<Long> material(String title) {
    return request(id -> new ClientMessage.Material(id, revision, null, title));
  }

  /** Brings a drill along. */
  public CompletableFuture<Long> material(Drill drill) {
    return request(id -> new ClientMessage.Material(id, revision, drill, null));
  }

  /** Sets the click plan and, where not null, the tempo in beats a minute. */
  public CompletableFuture<Long> plan(List<Stage> stages, @Nullable Double tempo) {
    return request(id -> new ClientMessage.Plan(id, revision, stages, tempo));
  }

  /**
   * Deals parts; {@code chairs} are playerIds in the order of chairs, empty for that of joining.
   */
  public CompletableFuture<Long> deal(long seed, List<String> chairs) {
    return request(id -> new ClientMessage.Deal(id, revision, seed, chairs));
  }

  /** Starts a take after {@code leadMillis} and a count-in. */
  public CompletableFuture<Long> start(String dealId, int leadMillis, int countInBars) {
    return request(id -> new ClientMessage.Start(id, revision, dealId, leadMillis, countInBars));
  }

  /** Ends the take early. */
  public CompletableFuture<Long> stop(String takeId) {
    return request(id -> new ClientMessage.Stop(id, revision, takeId));
  }

  /** Makes a command of a leader's for the room as it was last seen. */
  @FunctionalInterface
  public interface LeaderAsks {
    /**
     * The command.
     *
     * @param requestId names it in its answer
     * @param revision the room's, as this link last heard of it
     */
    ClientMessage.LeaderCommand with(long requestId, long revision);
  }

  /** Sends any other command of a leader's: seats, notes, a changed plan and so on. */
  public CompletableFuture<Long> ask(LeaderAsks command) {
    return request(id -> command.with(id, revision));
  }

  /** Takes the lead where the leader has been gone for long. */
  public CompletableFuture<Long> claimLead() {
    return request(ClientMessage.ClaimLead::new);
  }

  // ------------------------------------------------------------------ what is known

  /** Where the link stands. */
  public LinkState state() {
    return state;
  }

  /** The room's word, null until a room that is being opened has one. */
  public @Nullable String word() {
    return word;
  }

  /** What is believed of room time now; take one and use it for a whole decision. */
  public ClockView clock() {
    return view;
  }

  /** Room time at an instant of this computer's monotonic clock. */
  public long roomMicros(long nanos) {
    return view.roomMicros(nanos);
  }

  /** The instant of this computer's monotonic clock at which the room's shows {@code micros}. */
  public long nanosOf(long micros) {
    return view.nanosOf(micros);
  }

  /** Closes the connection; attacks not yet stored stay in the journal file, if there is one. */
  @Override
  public void close() {
    options.loop().run(() -> end("left"));
  }

  // ------------------------------------------------------------------ the link's thread

  private void connect() {
    if (state == LinkState.CLOSED) {
      return;
    }
    socket = Socket.connect(address, options, new Ear());
  }

  /** The socket's three calls; one an attempt, so that a late word of an old one is not heard. */
  private final class Ear implements Socket.Owner {
    private boolean over;

    @Override
    public void opened() {
      heardNanos = options.loop().nanos();
      watch();
      int version = MessageCodec.VERSION;
      String known = word;
      if (opens || known == null) {
        send(new ClientMessage.OpenRoom(version, version, options.hostKey(), name));
      } else {
        String proof = role == Role.LEADER ? leaderToken : token;
        Long seen = token == null ? null : (Long) revision;
        send(
            new ClientMessage.Join(
                version, version, known, name, role, proof, seen, options.standIn()));
      }
    }

    @Override
    public void received(String json, long arrivedNanos) {
      if (over || state == LinkState.CLOSED) {
        return;
      }
      heardNanos = arrivedNanos;
      ServerMessage message;
      try {
        message = MessageCodec.readServer(json);
      } catch (MessageCodec.UnknownType later) {
        LOG.debug("a message of a later version: {}", later.getMessage());
        return;
      } catch (BadInput bad) {
        LOG.warn("a message that cannot be read: {}", bad.getMessage());
        return;
      }
      RoomLink.this.received(message, arrivedNanos);
    }

    @Override
    public void closed(int code, String says) {
      if (!over) {
        over = true;
        lost(code, says);
      }
    }
  }

  private void received(ServerMessage message, long arrivedNanos) {
    if (message instanceof ServerMessage.ClockAnswer answer) {
      clock.answered(answer, arrivedNanos);
      return;
    }
    if (message instanceof ServerMessage.Stored stored) {
      outboxes.stored(stored.takeId(), stored.throughSeq());
      pump();
    } else if (message instanceof ServerMessage.Welcome welcome) {
      welcomed(welcome);
    } else if (message instanceof ServerMessage.Room room) {
      revision = room.revision();
      plays = room.dealt() != null && room.dealt().own() != null;
      if (room.announced() != null) {
        takeKnown(room.announced(), room.throughSeq(), room.phase());
      }
    } else if (message instanceof ServerMessage.Roster roster) {
      revision = roster.revision();
    } else if (message instanceof ServerMessage.Dealt dealt) {
      revision = dealt.revision();
      plays = dealt.own() != null;
    } else if (message instanceof ServerMessage.Announced announced) {
      begin(announced, 0);
      clock.hold(announced.countInMicros(), announced.startMicros());
    } else if (message instanceof ServerMessage.Stopped stopped) {
      finishSoon(stopped.takeId());
      clock.release();
    } else if (message instanceof ServerMessage.Done done) {
      revision = done.revision();
      requests.done(done);
    } else if (message instanceof ServerMessage.Problem problem) {
      problem(problem);
    } else if (message instanceof ServerMessage.Goodbye goodbye) {
      retry.asked(goodbye.retryAfterMillis());
    }
    Dispatch.to(listener, message);
  }

  private void welcomed(ServerMessage.Welcome welcome) {
    welcomed = true;
    opens = false;
    token = welcome.token();
    leaderToken = welcome.leaderToken() == null ? leaderToken : welcome.leaderToken();
    word = welcome.room();
    revision = welcome.revision();
    retry.succeeded();
    beginJournal(welcome);
    change(LinkState.ONLINE, "in the room " + welcome.room());
    clock.online();
    outboxes.rewind();
    pump();
  }

  private void beginJournal(ServerMessage.Welcome welcome) {
    if (journal == null && options.journalFolder() != null) {
      String proof = leaderToken == null ? welcome.token() : leaderToken;
      JournalFile.Bearer bearer =
          new JournalFile.Bearer(
              JournalFile.Bearer.FORMAT, 1, address.toString(), welcome.room(), name, role, proof);
      journal = JournalFile.begin(options.journalFolder(), welcome.playerId(), bearer);
    }
  }

  private void begin(ServerMessage.Announced announced, long throughSeq) {
    if (plays) {
      outboxes.begin(announced.takeId(), announced.epoch(), throughSeq);
    }
  }

  private void takeKnown(
      ServerMessage.Announced announced, long throughSeq, ServerMessage.Phase phase) {
    begin(announced, throughSeq);
    if (phase == ServerMessage.Phase.REVIEW) {
      finishSoon(announced.takeId());
    } else {
      clock.hold(announced.countInMicros(), announced.startMicros());
    }
    pump();
  }

  private void finishSoon(String takeId) {
    options
        .loop()
        .at(
            options.loop().nanos() + LAST_ATTACKS_NANOS,
            () -> {
              outboxes.finish(takeId);
              pump();
            });
  }

  private void problem(ServerMessage.Problem problem) {
    requests.refused(problem);
    if (!welcomed) {
      end(problem.says()); // not let in: another name may be, which is for the player to choose
      return;
    }
    switch (problem.code()) {
      case STORE_UNAVAILABLE -> resendAt(options.loop().nanos() + STORE_RETRY_NANOS);
      case NOT_ALLOWED -> {
        if ("takeId".equals(problem.field())) {
          outboxes.giveUpOld(); // a take that the server has forgotten
        }
      }
      default -> {}
    }
    LOG.debug("the server says {}: {}", problem.code(), problem.says());
  }

  private void pump() {
    if (state == LinkState.ONLINE) {
      outboxes.pump(this::send);
      if (outboxes.inFlight()) {
        resendAt(options.loop().nanos() + RESEND_NANOS);
      } else {
        resending.cancel();
      }
    }
    int waiting = outboxes.waiting();
    if (waiting == 0 && toldWaiting > 0 && journal != null) {
      journal.allStored();
    }
    if (waiting != toldWaiting) {
      toldWaiting = waiting;
      listener.waitingChanged(waiting);
    }
  }

  /** An acknowledgement that never comes must not hold an attack back for ever. */
  private void resendAt(long atNanos) {
    resending.cancel();
    resending =
        options
            .loop()
            .at(
                atNanos,
                () -> {
                  if (state == LinkState.ONLINE) {
                    outboxes.rewind();
                    pump();
                  }
                });
  }

  /** A line on which nothing has come for 15 s is dead, whatever TCP thinks. */
  private void watch() {
    watching.cancel();
    Socket watched = socket;
    watching =
        options
            .loop()
            .at(
                heardNanos + HALF_OPEN_NANOS,
                () -> {
                  if (watched != socket || watched == null) {
                    return;
                  }
                  if (options.loop().nanos() - heardNanos >= HALF_OPEN_NANOS) {
                    watched.cut();
                  } else {
                    watch();
                  }
                });
  }

  private void lost(int code, String says) {
    watching.cancel();
    resending.cancel();
    clock.offline();
    requests.cut("the line was cut before the answer came");
    if (state == LinkState.CLOSED) {
      return;
    }
    if (Retry.isFinal(code) || !welcomed) {
      end(says.isEmpty() ? "closed by the server (" + code + ")" : says);
      return;
    }
    long waitMillis = retry.nextMillis();
    change(LinkState.AWAY, says + "; trying again in " + waitMillis + " ms");
    options.loop().at(options.loop().nanos() + waitMillis * 1_000_000L, this::connect);
  }

  private void end(String says) {
    if (state == LinkState.CLOSED) {
      return;
    }
    Socket open = socket;
    change(LinkState.CLOSED, says);
    watching.cancel();
    resending.cancel();
    clock.offline();
    if (journal != null) {
      journal.close();
    }
    if (open != null) {
      open.close(1000, "");
    }
  }

  private void change(LinkState next, String says) {
    LOG.debug("{} {} -> {}: {}", name, state, next, says);
    state = next;
    listener.linkChanged(next, says);
  }

  private void clockChanged(ClockView now) {
    view = now;
    listener.clockChanged(now);
  }

  private void post(ClientMessage message) {
    options.loop().run(() -> send(message));
  }

  private CompletableFuture<Long> request(LongFunction<ClientMessage> message) {
    CompletableFuture<Long> answer = new CompletableFuture<>();
    options
        .loop()
        .run(
            () -> {
              long id = requests.begin(answer);
              try {
                send(message.apply(id));
              } catch (BadInput bad) {
                answer.completeExceptionally(bad);
              }
            });
    return answer;
  }

  private void send(ClientMessage message) {
    Socket open = socket;
    if (open != null) {
      open.send(message);
    }
  }
}
