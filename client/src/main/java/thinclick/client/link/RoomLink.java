package thinclick.client.link;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.function.LongFunction;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.clock.ClockView;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Span;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ClientMessage.WireAttack;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.music.Stage;

/**
 * One player's way into a room, kept open: it joins, follows the room's clock, sends attacks until
 * the server has stored them, and comes back by itself after a cut.
 *
 * <p>Methods may be called from any thread; the listener is called from the link's own.
 */
public final class RoomLink implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(RoomLink.class);

  /** A key that is held longer is one that somebody has put a book on, milliseconds. */
  private static final double LONGEST_MILLIS = 3_600_000;

  private final LinkOptions options;
  private final RoomAddress address;
  private final String name;
  private final Role role;
  private final RoomListener listener;
  private final Requests requests = new Requests();
  private final ClockExchanges clock;
  private final Line line;
  private final Delivery delivery;

  private volatile LinkState state = LinkState.CONNECTING;
  private volatile ClockView view;
  private volatile @Nullable String word;
  private volatile @Nullable Span sleep;
  private volatile double chairLatencyMillis;

  // Below: the link's thread only.
  private @Nullable String token;
  private @Nullable String leaderToken;
  private boolean opens;
  private boolean welcomed;
  private boolean plays;
  private long revision;
  private ServerMessage.@Nullable Announced take;
  private long takeOverMicros;
  private final List<ClientMessage> unsaid = new ArrayList<>();

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
        new ClockExchanges(
            options.loop(),
            name.hashCode(),
            this::send,
            this::clockChanged,
            this::slept,
            options.clockOf() == null ? null : options.clockOf().shared());
    this.line = new Line(address, options, name.hashCode(), new Ear());
    this.delivery =
        new Delivery(
            options.loop(), () -> state == LinkState.ONLINE, this::send, listener::waitingChanged);
  }

  /** Opens a room and joins it as its leader; the word is known once {@code welcome} has come. */
  public static RoomLink open(
      LinkOptions options, RoomAddress address, String name, RoomListener listener) {
    RoomLink link = new RoomLink(options, address, null, name, Role.LEADER, listener);
    options.loop().run(link.line::connect);
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
    options.loop().run(link.line::connect);
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
    RoomLink link = of(bearer, options, RoomAddress.parse(bearer.server()), listener);
    options.loop().run(() -> link.goOn(bearer, journal));
    return link;
  }

  /**
   * Comes back into a room that an earlier run was in, as the same player, and as its leader where
   * that run led. Attacks that are still in its journal are brought along.
   *
   * @param at where the host is now
   */
  public static RoomLink comeBack(
      LinkOptions options, LeftRoom left, RoomAddress at, RoomListener listener) {
    RoomLink link = of(left.bearer(), options, at, listener);
    options.loop().run(() -> link.goOn(left.bearer(), reopened(left.journal())));
    return link;
  }

  private static @Nullable JournalFile reopened(Path journal) {
    try {
      return Files.exists(journal) ? JournalFile.resume(journal) : null;
    } catch (BadInput taken) {
      LOG.info("its attacks stay where they are: {}", taken.getMessage());
      return null;
    }
  }

  private static RoomLink of(
      JournalFile.Bearer bearer, LinkOptions options, RoomAddress at, RoomListener listener) {
    return new RoomLink(options, at, bearer.room(), bearer.name(), bearer.role(), listener);
  }

  private void goOn(JournalFile.Bearer bearer, @Nullable JournalFile journal) {
    if (journal != null) {
      delivery.restore(journal);
    }
    token = bearer.token();
    leaderToken = bearer.role() == Role.LEADER ? bearer.token() : null;
    welcomed = true;
    line.worthTrying();
    line.connect();
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
    options.loop().run(() -> delivery.add(wire, attack));
    return micros;
  }

  /**
   * An attack that was sent was released; its length is kept and sent again until it is stored.
   *
   * @param attack the very one that was sent
   * @param nanos when it was released, this computer's monotonic clock
   */
  public void released(PlayedAttack attack, long nanos) {
    double millis = Math.round(Math.max(0, nanos - attack.nanos()) / 1e5) / 10.0;
    if (millis <= LONGEST_MILLIS) {
      options.loop().run(() -> delivery.released(attack, millis));
    }
  }

  /** The player has stopped: nothing more will come for this take. Said by itself 1 s after it. */
  public void playedThrough(String takeId) {
    options.loop().run(() -> delivery.finish(takeId));
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

  /** Tells the room how the others are heard here. */
  public void hears(ClientMessage.HearsOthers how) {
    report(how);
  }

  /** Tells the room that the click broke off here; where the line is down, once it is back. */
  public void clickInterrupted(ServerMessage.Announced take, long fromMicros, long toMicros) {
    report(
        new ClientMessage.ClickInterrupted(
            take.takeId(), take.epoch(), Math.max(0, fromMicros), Math.max(0, toMicros)));
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

  /** The same, with each figure fitted to the level that is said of a playerId, 1 to 10. */
  public CompletableFuture<Long> deal(long seed, List<String> chairs, Map<String, Integer> levels) {
    return request(id -> new ClientMessage.Deal(id, revision, seed, chairs, levels));
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

  /**
   * Asks what there is to rehearse; with a title for one drill whole. The answer comes to the
   * listener.
   */
  public CompletableFuture<Long> browse(@Nullable String title) {
    return request(id -> new ClientMessage.Browse(id, title));
  }

  /** Asks for a take as a file; the answer comes to the listener. */
  public CompletableFuture<Long> keepTake(String takeId) {
    return request(id -> new ClientMessage.KeepTake(id, takeId));
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

  /** The server that it was asked to come to. */
  public RoomAddress address() {
    return address;
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

  /** What the line tells. */
  private final class Ear implements Line.Owner {
    @Override
    public void opened() {
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
    public void cut(String says) {
      offline();
      change(welcomed ? LinkState.AWAY : LinkState.CONNECTING, says);
    }

    @Override
    public void over(String says) {
      end(says);
    }
  }

  private void received(ServerMessage message, long arrivedNanos) {
    if (message instanceof ServerMessage.ClockAnswer answer) {
      clock.answered(answer, arrivedNanos);
      return;
    }
    if (message instanceof ServerMessage.Stored stored) {
      delivery.stored(stored);
    } else if (message instanceof ServerMessage.LengthsStored stored) {
      delivery.lengthsStored(stored);
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
      delivery.finishSoon(stopped.takeId());
      takeOverMicros = stopped.atMicros();
      clock.release();
    } else if (message instanceof ServerMessage.Done done) {
      revision = done.revision();
      requests.done(done);
    } else if (message instanceof ServerMessage.Problem problem) {
      problem(problem);
      if (problem.code() == ServerMessage.ErrorCode.UNKNOWN_TYPE) {
        return; // an older server: nothing that a player could do anything about
      }
    } else if (message instanceof ServerMessage.Goodbye goodbye) {
      line.askedToWait(goodbye.retryAfterMillis());
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
    line.welcomed();
    beginJournal(welcome);
    String trust = line.trustSays();
    change(
        LinkState.ONLINE, "in the room " + welcome.room() + (trust.isEmpty() ? "" : "; " + trust));
    clock.online(welcome.epoch());
    delivery.again();
    unsaid.forEach(this::send);
    unsaid.clear();
  }

  private void beginJournal(ServerMessage.Welcome welcome) {
    Path folder = options.journalFolder();
    if (folder != null) {
      String proof = leaderToken == null ? welcome.token() : leaderToken;
      JournalFile.Bearer bearer =
          new JournalFile.Bearer(
              JournalFile.Bearer.FORMAT,
              1,
              address.link(null).toString(),
              welcome.room(),
              name,
              role,
              proof);
      delivery.keepIn(folder, welcome.playerId(), bearer);
    }
  }

  private void begin(ServerMessage.Announced announced, long throughSeq) {
    if (plays) {
      delivery.begin(announced.takeId(), announced.epoch(), throughSeq);
      take = announced;
      takeOverMicros = Long.MAX_VALUE;
    }
  }

  private void takeKnown(
      ServerMessage.Announced announced, long throughSeq, ServerMessage.Phase phase) {
    begin(announced, throughSeq);
    if (phase == ServerMessage.Phase.REVIEW) {
      delivery.finishSoon(announced.takeId());
    } else {
      clock.hold(announced.countInMicros(), announced.startMicros());
    }
    delivery.pump();
  }

  private void problem(ServerMessage.Problem problem) {
    requests.refused(problem);
    if (!welcomed) {
      end(problem.says()); // not let in: another name may be, which is for the player to choose
      return;
    }
    switch (problem.code()) {
      case STORE_UNAVAILABLE -> delivery.storeUnavailable();
      case NOT_ALLOWED -> {
        if ("takeId".equals(problem.field())) {
          delivery.giveUpOld(); // a take that the server has forgotten
        }
      }
      case UNKNOWN_TYPE -> delivery.lengthsNotTaken();
      case BAD_FIELD -> {
        if ("items".equals(problem.field())) {
          delivery.lengthsNotTaken();
        }
      }
      default -> {}
    }
    LOG.debug("the server says {}: {}", problem.code(), problem.says());
  }

  private void offline() {
    delivery.pause();
    clock.offline();
    requests.cut("the line was cut before the answer came");
  }

  private void end(String says) {
    if (state == LinkState.CLOSED) {
      return;
    }
    change(LinkState.CLOSED, says);
    offline();
    delivery.close();
    line.end();
  }

  private void change(LinkState next, String says) {
    LOG.debug("{} {} -> {}: {}", name, state, next, says);
    state = next;
    listener.linkChanged(next, says);
  }

  /** This computer slept; where a take went on meanwhile, its player was away. */
  private void slept(Span span) {
    sleep = span;
    ServerMessage.Announced last = take;
    if (last != null && last.epoch() == view.epoch() && span.fromMicros() < takeOverMicros) {
      report(
          new ClientMessage.Asleep(
              last.takeId(), last.epoch(), span.fromMicros(), span.toMicros()));
    }
  }

  private ClockExchanges.Shared shared() {
    return new ClockExchanges.Shared() {
      @Override
      public ClockView view() {
        return view;
      }

      @Override
      public @Nullable Span sleep() {
        return sleep;
      }
    };
  }

  private void clockChanged(ClockView now) {
    view = now;
    listener.clockChanged(now);
  }

  private void post(ClientMessage message) {
    options.loop().run(() -> send(message));
  }

  /** Posts now, or as soon as the line is back. */
  private void report(ClientMessage message) {
    options
        .loop()
        .run(
            () -> {
              if (state == LinkState.ONLINE) {
                send(message);
              } else {
                unsaid.add(message);
              }
            });
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
    line.send(message);
  }
}
