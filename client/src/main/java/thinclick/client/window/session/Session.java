package thinclick.client.window.session;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
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
import thinclick.client.link.PlayedAttack;
import thinclick.client.link.RoomAddress;
import thinclick.client.link.RoomLink;
import thinclick.client.standin.Manner;
import thinclick.client.window.words.Refused;
import thinclick.protocol.invite.JoinLink;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.TakeNews;
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

  private final Path data;
  private final LinkLoop loop;
  private final LeftBehind left;
  private final Presence presence;
  private final FurtherSeats further;
  private final Lead lead = new Lead(this);
  private final OwnHost host;
  private final WayIn way;
  private final Bench bench;
  private @Nullable Practice practice;
  private long practices;

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
    this.data = data;
    this.loop = loop;
    bench = new Bench(loop);
    presence = new Presence(windowThread, clock, this::changed);
    further = new FurtherSeats(windowThread, clock);
    host = new OwnHost(data, language);
    way = new WayIn(windowThread, clock, loop, data, presence, host);
    left =
        new LeftBehind(
            windowThread,
            (journal, to) -> RoomLink.resume(way.options(), journal, to),
            refused -> presence.change(room -> room.problem(refused)));
  }

  /** Brings what an earlier run could not send any more, and looks which rooms it was in. */
  public void bringWhatIsLeft() {
    left.bring(data, Instant.now());
  }

  /** The rooms that an earlier run was in when it ended without leaving, the last one first. */
  public List<LeftRoom> leftRooms() {
    return left.rooms();
  }

  /**
   * Goes back into such a room as the same player, and as its leader where that run led; a host
   * that ran in this window's program is started again first.
   */
  public void comeBack(LeftRoom room) {
    leave();
    left.letGo(room);
    way.comeBack(room);
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
  public void onHeard(Consumer<TakeNews.Heard> listener) {
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
    leave();
    way.openHere(name, forOthers, here -> {});
  }

  /** Opens a room for this player alone, with stand-ins, and deals in it. */
  public void practise(String name, Company company) {
    leave();
    way.openHere(
        name,
        false,
        here ->
            practice =
                new Practice(loop, here, name, company, ++practices, wanted -> ask(wanted::by)));
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

  /** Opens a room at a host elsewhere and leads it. */
  public void openAt(RoomAddress address, String name) {
    leave();
    way.openAt(address, name);
  }

  /** Comes into a room as a player. */
  public void join(RoomAddress address, String word, String name) {
    leave();
    way.join(address, word, name);
  }

  /**
   * What brings others into this room, null outside one: the link of the host in this window, else
   * of the address this window came in by.
   */
  public @Nullable JoinLink invitation() {
    return way.invitation();
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
    way.bringAlong(further, name, says);
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
    way.left();
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
    lead.follow(before, now);
    if (practice != null) {
      practice.follow(now);
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
    RoomAddress address = way.at();
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
