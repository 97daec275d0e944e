package thinclick.client.window.session;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.LongConsumer;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.collections.ObservableList;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.link.LeftRoom;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.LinkOptions;
import thinclick.client.link.LinkState;
import thinclick.client.link.PlayedAttack;
import thinclick.client.link.RoomAddress;
import thinclick.client.link.RoomLink;
import thinclick.client.link.RoomListener;
import thinclick.client.standin.Manner;
import thinclick.client.window.words.Refused;
import thinclick.protocol.invite.JoinLink;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.host.ClassBook;
import thinclick.server.host.RehearsalHost;

/**
 * This window's way into rooms, one at a time: its own host where it has opened one, its link, the
 * room's state. All methods and all changes of properties on the window's thread.
 */
public final class Session implements Seat, AutoCloseable {
  /** More than four do not fit at one computer's keys. */
  public static final int MOST_FURTHER = 3;

  private static final Logger LOG = LoggerFactory.getLogger(Session.class);

  private final Executor windowThread;
  private final MonotonicClock clock;
  private final Path data;
  private final LinkLoop loop;
  private final LeftAttacks left;
  private final Presence presence;
  private final FurtherSeats further;
  private final Lead lead = new Lead(this);
  private final OwnHost host;
  private final Bench bench;
  private @Nullable Practice practice;
  private @Nullable RoomAddress at;
  private long practices;
  private List<LeftRoom> leftRooms = List.of();

  /**
   * @param windowThread runs a task on the window's thread
   * @param data the folder for the host's database and the attacks that are not stored yet
   */
  public Session(Executor windowThread, MonotonicClock clock, Path data) {
    this(windowThread, clock, data, Locale.ENGLISH);
  }

  /**
   * The same in another language.
   *
   * @param language in which a host in this window says reviews and deals
   */
  public Session(Executor windowThread, MonotonicClock clock, Path data, Locale language) {
    this(windowThread, clock, data, language, LinkLoop.start());
  }

  /**
   * The same on a loop of its own clock.
   *
   * @param loop closed with the session
   */
  public Session(
      Executor windowThread, MonotonicClock clock, Path data, Locale language, LinkLoop loop) {
    this.windowThread = windowThread;
    this.clock = clock;
    this.data = data;
    this.loop = loop;
    bench = new Bench(loop);
    presence = new Presence(windowThread, clock, this::changed);
    further = new FurtherSeats(windowThread, clock);
    host = new OwnHost(data, language);
    left =
        new LeftAttacks(
            windowThread,
            (journal, to) -> RoomLink.resume(options(), journal, to),
            refused -> presence.change(room -> room.problem(refused)));
  }

  /** Brings what an earlier run could not send any more, and looks which rooms it was in. */
  public void bringWhatIsLeft() {
    leftRooms = LeftRoom.in(data, Instant.now());
    left.bring(data);
  }

  /** The rooms that an earlier run was in when it ended without leaving, the last one first. */
  public List<LeftRoom> leftRooms() {
    return leftRooms;
  }

  /**
   * Goes back into such a room as the same player, and as its leader where that run led; a host
   * that ran in this window's program is started again first.
   */
  public void comeBack(LeftRoom room) {
    leave();
    left.letGo(room.journal());
    leftRooms = leftRooms.stream().filter(one -> one != room).toList();
    presence.change(now -> now.calling(room.address().said()));
    CompletableFuture<?> unused =
        CompletableFuture.supplyAsync(() -> Optional.ofNullable(host.startAgain(room.address())))
            .whenCompleteAsync(
                (started, failed) -> {
                  if (started == null) {
                    failed(failed);
                    return;
                  }
                  RoomAddress where =
                      started
                          .map(
                              own -> {
                                host.is(own);
                                return RoomAddress.local(own.port());
                              })
                          .orElse(room.address());
                  at = where;
                  enter(where.said(), to -> RoomLink.comeBack(options(), room, where, to));
                },
                windowThread);
  }

  /** How many earlier rooms are still waiting for attacks from here. */
  public ReadOnlyIntegerProperty leftProperty() {
    return left.journalsProperty();
  }

  /** The folder for what this program keeps. */
  public Path data() {
    return data;
  }

  /** The room as it stands. */
  @Override
  public ReadOnlyObjectProperty<RoomState> stateProperty() {
    return presence.stateProperty();
  }

  /** The room as it stands. */
  @Override
  public RoomState state() {
    return presence.state();
  }

  /** The attacks of the running or last take. */
  @Override
  public OwnTake take() {
    return presence.take();
  }

  /** Who is told of every attack of others, as it arrives; on the window's thread. */
  public void onHeard(Consumer<ServerMessage.Heard> listener) {
    presence.onHeard(listener);
  }

  /** Who is told of every own attack: its room time, in microseconds. */
  public void onPlayed(LongConsumer listener) {
    presence.onPlayed(listener);
  }

  /** The link, null outside a room; may be asked from any thread. */
  @Override
  public @Nullable RoomLink link() {
    return presence.link();
  }

  // ---------------------------------------------------------------- coming and going

  /**
   * Hosts a room in this window and leads it.
   *
   * @param forOthers true where other computers of the network may come in
   */
  public void openHere(String name, boolean forOthers) {
    open(name, forOthers, null);
  }

  /** Opens a room for this player alone, with stand-ins, and deals in it. */
  public void practise(String name, Company company) {
    open(name, false, company);
  }

  /** True in a room that was opened to practise alone. */
  public boolean practising() {
    return practice != null;
  }

  /** True there until the parts have been asked for. */
  public boolean standInsAreComing() {
    Practice now = practice;
    return now != null && now.gathering();
  }

  private void open(String name, boolean forOthers, @Nullable Company company) {
    leave();
    presence.change(now -> now.calling(forOthers ? LocalAddress.find() : "127.0.0.1"));
    CompletableFuture<?> unused =
        CompletableFuture.supplyAsync(() -> host.start(forOthers))
            .whenCompleteAsync(
                (started, failed) -> {
                  if (started == null) {
                    failed(failed);
                  } else {
                    host.is(started);
                    if (company != null) {
                      practice = practice(started, name, company);
                    }
                    String where = forOthers ? LocalAddress.find() : "127.0.0.1";
                    at = RoomAddress.local(started.port());
                    enter(
                        where + ":" + started.port(),
                        to ->
                            RoomLink.open(options(), RoomAddress.local(started.port()), name, to));
                  }
                },
                windowThread);
  }

  private Practice practice(RehearsalHost hosting, String name, Company company) {
    practices++;
    return new Practice(
        loop,
        RoomAddress.local(hosting.port()),
        name,
        company,
        practices,
        wanted -> ask(wanted::by));
  }

  /** Opens a room at a host elsewhere and leads it. */
  public void openAt(RoomAddress address, String name) {
    leave();
    at = address;
    enter(address.said(), to -> RoomLink.open(options(), address, name, to));
  }

  /** Comes into a room as a player. */
  public void join(RoomAddress address, String word, String name) {
    leave();
    at = address;
    enter(address.said(), to -> RoomLink.join(options(), address, word, name, Role.PLAYER, to));
  }

  private LinkOptions options() {
    return LinkOptions.on(loop).withJournal(data).rememberingHosts(data.resolve("known-hosts"));
  }

  private void enter(String address, Function<RoomListener, RoomLink> connect) {
    presence.change(now -> now.calling(address));
    presence.enter(connect);
  }

  private void failed(@Nullable Throwable why) {
    Throwable cause = why instanceof CompletionException ? why.getCause() : why;
    String says = cause == null || cause.getMessage() == null ? "no host" : cause.getMessage();
    LOG.info("no room could be opened here: {}", says);
    presence.change(room -> room.linkChanged(LinkState.CLOSED, says, clock.nanos()));
  }

  /**
   * What brings others into this room, null outside one: the link of the host in this window, else
   * of the address this window came in by.
   */
  public @Nullable JoinLink invitation() {
    RoomLink in = link();
    String word = in == null ? null : in.word();
    if (in == null || word == null) {
      return null;
    }
    RehearsalHost mine = host.running();
    return mine == null ? in.address().link(word) : mine.link(word);
  }

  /** The host in this window, null where the room is hosted elsewhere or there is none. */
  public @Nullable RehearsalHost hosting() {
    return host.running();
  }

  /** True where this computer has kept something of earlier rooms. */
  public boolean hasKept() {
    return host.hasKept();
  }

  /**
   * Works on the classes that are kept here; waits for the disk, so never on the window's thread.
   */
  public <T> T classes(Function<ClassBook, T> work) {
    return host.classes(work);
  }

  /** Who else plays at this computer, in the order in which they came. */
  public ObservableList<FurtherSeat> further() {
    return further.seen();
  }

  /**
   * Lets a further player at this computer into the room this window is in.
   *
   * @param says told why not, where they are not let in or not any more
   */
  public void addSeat(String name, Consumer<String> says) {
    RoomLink shared = link();
    RoomAddress where = at;
    String word = shared == null ? null : shared.word();
    if (shared != null && where != null && word != null) {
      further.add(
          name,
          to -> RoomLink.join(options().sharingClockOf(shared), where, word, name, Role.PLAYER, to),
          says);
    }
  }

  /** A further player at this computer goes. */
  public void removeSeat(FurtherSeat seat) {
    further.remove(seat);
  }

  /** Leaves the room; a room hosted here ends. */
  public void leave() {
    further.removeAll();
    bench.close();
    lead.forget();
    at = null;
    presence.leave();
    Practice over = practice;
    practice = null;
    if (over != null) {
      over.close();
    }
    host.end();
    presence.change(room -> RoomState.OUTSIDE);
  }

  private void changed(RoomState before, RoomState now) {
    askForMaterial(before, now);
    if (practice != null) {
      practice.follow(now);
    }
  }

  /** A leader chooses from what the host has; own drills are asked for one by one. */
  private void askForMaterial(RoomState before, RoomState now) {
    boolean leads = now.inside() && now.leader();
    if (leads && !(before.inside() && before.leader())) {
      ask(in -> in.browse(null));
    } else if (leads && !before.shelf().equals(now.shelf()) && before.shelf().missing().isEmpty()) {
      now.shelf().missing().forEach(title -> ask(in -> in.browse(title)));
    }
  }

  // ---------------------------------------------------------------- playing

  /** Sends an attack where a take runs; it is kept until it is stored. */
  @Override
  public void play(PlayedAttack attack) {
    presence.play(attack);
  }

  /** An attack that was played has been released, which gives it its length. */
  @Override
  public void released(PlayedAttack attack, long nanos) {
    presence.released(attack, nanos);
  }

  /** Waits until all that was played has been written down, or so long at most. */
  public void keepWhatWasPlayed(Duration most) {
    try {
      CompletableFuture.runAsync(() -> {}, loop::run).get(most.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    } catch (ExecutionException | TimeoutException | RejectedExecutionException late) {
      LOG.warn("whether all that was played is on disk is not known: {}", late.toString());
    }
  }

  // ---------------------------------------------------------------- leading

  /** What the leader of this room can do. */
  public Lead lead() {
    return lead;
  }

  @Override
  public PastTakes past() {
    return presence.past();
  }

  /** In a room to practise alone the playerIds in the order of chairs; null elsewhere. */
  public @Nullable List<String> practiceChairs() {
    return practice == null ? null : practice.chairs(state());
  }

  /** Brings a stand-in into the room, marked as one; it leaves with this window. */
  public void bring(String name, Manner manner) {
    RoomAddress address = at;
    if (address != null && state().inside()) {
      bench.bring(address, state().word(), name, manner);
    }
  }

  /** The attacks of the running or last take by the player's name, room time. */
  public Map<String, List<Long>> attacksByName() {
    return presence.attacksByName();
  }

  @Override
  public void keepTake(Consumer<AnswerMessage.KeptTake> then, Consumer<Refused> refused) {
    presence.keepTake(then, refused);
  }

  /** Asks the room for something once what was asked before has been answered. */
  void ask(Function<RoomLink, CompletableFuture<Long>> command) {
    presence.ask(command);
  }

  @Override
  public void close() {
    leave();
    left.close();
    loop.close();
  }
}
