package thinclick.client.window.session;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.link.LeftRoom;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.LinkOptions;
import thinclick.client.link.LinkState;
import thinclick.client.link.RoomAddress;
import thinclick.client.link.RoomLink;
import thinclick.client.link.RoomListener;
import thinclick.protocol.invite.JoinLink;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.host.RehearsalHost;

/**
 * How this window comes into a room: it opens one here or at a host elsewhere, joins one by its
 * word, or goes back into one that an earlier run left. Knows where the room is until it is left.
 * On the window's thread.
 */
final class WayIn {
  private static final Logger LOG = LoggerFactory.getLogger(WayIn.class);
  static final String THIS_COMPUTER = "127.0.0.1";

  private final Executor windowThread;
  private final MonotonicClock clock;
  private final LinkLoop loop;
  private final Path data;
  private final Presence presence;
  private final OwnHost host;
  private @Nullable RoomAddress at;

  /** What is waited for beside the window's thread; null once the room has been left. */
  private @Nullable Object awaited;

  /** One host after the other: two of them would work on one database. */
  private CompletableFuture<?> started = CompletableFuture.completedFuture(null);

  /**
   * @param data the folder for the attacks that are not stored yet and the hosts that were met
   * @param presence enters by the link that is made here
   * @param host started where the room is to be in this window
   */
  WayIn(
      Executor windowThread,
      MonotonicClock clock,
      LinkLoop loop,
      Path data,
      Presence presence,
      OwnHost host) {
    this.windowThread = windowThread;
    this.clock = clock;
    this.loop = loop;
    this.data = data;
    this.presence = presence;
    this.host = host;
  }

  /**
   * Hosts a room in this window and leads it.
   *
   * @param forOthers true where other computers of the network may come in
   * @param opened told where the host is, before the room is entered
   */
  void openHere(String name, boolean forOthers, Consumer<RoomAddress> opened) {
    String said = forOthers ? LocalAddress.find() : THIS_COMPUTER;
    presence.change(now -> now.calling(said));
    once(
        () -> host.start(forOthers),
        own -> {
          host.is(own);
          RoomAddress here = RoomAddress.local(own.port());
          opened.accept(here);
          enter(here, said + ":" + own.port(), to -> RoomLink.open(options(), here, name, to));
        },
        host::close);
  }

  /** Opens a room at a host elsewhere and leads it. */
  void openAt(RoomAddress address, String name) {
    enter(address, address.said(), to -> RoomLink.open(options(), address, name, to));
  }

  /** Comes into a room as a player. */
  void join(RoomAddress address, String word, String name) {
    enter(
        address,
        address.said(),
        to -> RoomLink.join(options(), address, word, name, Role.PLAYER, to));
  }

  /**
   * Goes back into a room as the same player, and as its leader where the earlier run led; a host
   * that ran in this window's program is started again first.
   */
  void comeBack(LeftRoom room) {
    presence.change(now -> now.calling(room.address().said()));
    once(
        () -> Optional.ofNullable(host.startAgain(room.address())),
        again -> {
          again.ifPresent(host::is);
          RoomAddress where =
              again.map(own -> RoomAddress.local(own.port())).orElse(room.address());
          enter(where, where.said(), to -> RoomLink.comeBack(options(), room, where, to));
        },
        again -> again.ifPresent(host::close));
  }

  /**
   * Lets a further player at this computer into the room this window is in.
   *
   * @param says told why not, where they are not let in or not any more
   */
  void bringAlong(FurtherSeats further, String name, Consumer<String> says) {
    RoomLink shared = presence.link();
    RoomAddress where = at;
    String word = shared == null ? null : shared.word();
    if (shared != null && where != null && word != null) {
      further.add(
          name,
          to -> RoomLink.join(options().sharingClockOf(shared), where, word, name, Role.PLAYER, to),
          says);
    }
  }

  /** Where the room is that this window has come into; null outside one. */
  @Nullable RoomAddress at() {
    return at;
  }

  /**
   * What brings others into this room, null outside one: the link of the host in this window, else
   * of the address this window came in by.
   */
  @Nullable JoinLink invitation() {
    RoomLink in = presence.link();
    String word = in == null ? null : in.word();
    if (in == null || word == null) {
      return null;
    }
    RehearsalHost mine = host.running();
    return mine == null ? in.address().link(word) : mine.link(word);
  }

  /** The room has been left, or is not wanted any more before it was come into. */
  void left() {
    at = null;
    awaited = null;
  }

  /** How links of this window are made. */
  LinkOptions options() {
    return LinkOptions.on(loop).withJournal(data).rememberingHosts(data.resolve("known-hosts"));
  }

  /**
   * Does what takes a moment beside the window's thread, and goes on there once it is done, unless
   * the room has been left meanwhile.
   *
   * @param unwanted told instead where it has been left
   */
  private <T> void once(Supplier<T> slow, Consumer<T> then, Consumer<T> unwanted) {
    Object mine = new Object();
    awaited = mine;
    started =
        started
            .handleAsync((before, any) -> slow.get())
            .handleAsync(
                (done, failed) -> {
                  boolean wanted = awaited == mine;
                  if (done != null) {
                    (wanted ? then : unwanted).accept(done);
                  } else if (wanted) {
                    failed(failed);
                  }
                  return wanted; // and no host, which would be held until the next one starts
                },
                windowThread);
  }

  private void failed(@Nullable Throwable why) {
    Throwable cause = why instanceof CompletionException ? why.getCause() : why;
    String says = cause == null || cause.getMessage() == null ? "no host" : cause.getMessage();
    LOG.info("no room could be opened here: {}", says);
    presence.change(room -> room.linkChanged(LinkState.CLOSED, says, clock.nanos()));
  }

  private void enter(RoomAddress where, String said, Function<RoomListener, RoomLink> connect) {
    at = where;
    presence.change(now -> now.calling(said));
    presence.enter(connect);
  }
}
