package thinclick.server.room;

import java.util.List;
import java.util.Objects;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeNews.StopReason;

/**
 * One room: who is in it, what is dealt, the take that runs. An object with one writer: {@link
 * #handle} takes an event and one reading of the room's clock and answers what is to be done. The
 * same events at the same instants give the same room.
 *
 * <p>Times are room time in microseconds since the room's epoch began.
 */
public final class Room {
  /** The most members, present and absent. */
  public static final int MAX_MEMBERS = 64;

  /** What every client is told to keep to. */
  public static final ServerMessage.RoomLimits LIMITS =
      new ServerMessage.RoomLimits(MAX_MEMBERS, MessageCodec.MAX_CLIENT_FRAME, 50, 256);

  /** An empty room is closed after this. */
  public static final long EMPTY_MICROS = 600_000_000;

  private final Standing room;
  private final RoomParts parts;
  private final HeardRelay relay;
  private boolean storeAvailable = true;

  private Room(Standing room, Shelf shelf, DealMaker dealer) {
    this.room = room;
    this.relay = new HeardRelay(room);
    Telling telling = new Telling(room);
    Entrance entrance = new Entrance(room, telling);
    TakeDesk desk = new TakeDesk(room, telling);
    this.parts =
        new RoomParts(
            telling,
            entrance,
            new Leading(room, telling, entrance),
            new DealTable(room, telling, shelf, dealer),
            desk,
            new Playing(room, telling, relay),
            new Unwritten(room, telling, desk),
            new TakeSharing(room),
            new Recalling(room),
            new Renaming(room, telling));
  }

  /** A new, empty room; the first to come opens it. */
  public static Room fresh(String id, String word, long epoch, Shelf shelf, DealMaker dealer) {
    return new Room(new Standing(id, word, epoch), shelf, dealer);
  }

  /**
   * A room as it was written down, in its new epoch. A take that was running has been interrupted
   * by then; what is to be done about it comes with the first event.
   */
  public static Room restored(RoomJournal.Opened opened, Shelf shelf, DealMaker dealer) {
    RoomState state = Objects.requireNonNull(opened.state(), "a restored room has a state");
    Room room = new Room(Standing.of(opened, state), shelf, dealer);
    room.parts.desk().afterRestart(opened);
    return room;
  }

  /**
   * Takes one event.
   *
   * @param nowMicros the room's clock; never less than before
   * @return what is to be done, in order
   */
  public List<Effect> handle(RoomEvent event, long nowMicros) {
    room.now = Math.max(room.now, nowMicros);
    if (room.over) {
      return List.of();
    }
    follow(event);
    due();
    if (room.changed && !room.over) {
      room.changed = false;
      room.out.append(new JournalEntry.State(room.state()));
    }
    return room.out.taken();
  }

  private void follow(RoomEvent event) {
    if (event instanceof RoomEvent.Came came) {
      parts.entrance().came(came);
    } else if (event instanceof RoomEvent.Said said) {
      Member sender = room.members.on(said.connection());
      if (sender != null) { // else its goodbye is on the way
        Turn.take(room, parts, sender, said);
      }
    } else if (event instanceof RoomEvent.Gone gone) {
      parts.entrance().gone(gone.connection(), gone.silentMicros());
    } else if (event instanceof RoomEvent.Journaled journaled) {
      journaled(journaled.entry(), journaled.outcome());
    } else if (event instanceof RoomEvent.StoreChanged store) {
      storeChanged(store.available());
    } else if (event instanceof RoomEvent.Reviewed reviewed) {
      parts.playing().reviewed(reviewed);
    } else if (event instanceof RoomEvent.ReviewFailed failed) {
      parts.playing().reviewFailed(failed);
    } else if (event instanceof RoomEvent.TakeRead read) {
      parts.sharing().read(read);
    } else if (event instanceof RoomEvent.Recalled recalled) {
      parts.recalling().recalled(recalled);
    } else if (event instanceof RoomEvent.Renamed renamed) {
      parts.renaming().renamed(renamed);
    } else if (event instanceof RoomEvent.WordGiven given) {
      parts.leading().wordGiven(given);
    } else if (event instanceof RoomEvent.HostGoing) {
      hostGoing();
    }
  }

  private void journaled(JournalEntry entry, RoomJournal.Outcome outcome) {
    if (outcome instanceof RoomJournal.Outcome.Fenced) {
      String why = "another host has opened this room";
      parts.entrance().end(why, null, CloseCode.GOING, why);
    } else if (outcome instanceof RoomJournal.Outcome.Refused refused) {
      parts.unwritten().refused(entry, refused.why());
    } else if (entry instanceof JournalEntry.State written) {
      parts.unwritten().written();
      parts.desk().written(written.state());
    } else {
      parts.playing().journaled(entry, outcome);
    }
  }

  private void due() {
    parts.desk().due();
    parts.renaming().due();
    relay.due();
    parts.playing().due();
    parts.telling().due();
    if (!room.over) {
      parts.entrance().due();
    }
  }

  /** When {@link RoomEvent.Woken} is wanted next; {@code Long.MAX_VALUE} for not at all. */
  public long wakeMicros() {
    if (room.over) {
      return TakeRun.NEVER;
    }
    long wake = Math.min(relay.dueMicros(), parts.entrance().emptyDueMicros());
    wake = Math.min(wake, parts.telling().rosterDueMicros());
    wake = Math.min(wake, parts.playing().wakeMicros());
    return Math.min(wake, parts.desk().wakeMicros());
  }

  private void storeChanged(boolean available) {
    if (storeAvailable && !available) {
      parts
          .telling()
          .all(
              Outbox.problem(
                  ErrorCode.STORE_UNAVAILABLE,
                  "the host cannot write to its disk; keep what is not acknowledged"));
    }
    storeAvailable = available;
  }

  private void hostGoing() {
    room.runningTake().ifPresent(take -> parts.desk().stop(take, room.now, StopReason.HOST));
    room.out.append(new JournalEntry.State(room.state()));
    parts.entrance().end("the host is going", 1_000L, CloseCode.GOING, CloseCode.GOING.says());
  }

  /** The id, unique over all hosts. */
  public String id() {
    return room.id;
  }

  /** The word it is called by. */
  public String word() {
    return room.word;
  }

  /** The epoch that its times belong to. */
  public long epoch() {
    return room.epoch;
  }

  /** Where it stands. */
  public Phase phase() {
    return room.phase;
  }

  /** True where that connection has been let in. */
  public boolean knows(long connection) {
    return room.members.on(connection) != null;
  }

  /** How many connections are in it. */
  public int connections() {
    return room.members.here();
  }

  /** The room as it would be written down now. */
  public RoomState state() {
    return room.state();
  }
}
