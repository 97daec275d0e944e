package thinclick.server.room;

import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.TakeNews.StopReason;

/**
 * What the journal refuses for good: whoever it concerns is told, and a running take that needed it
 * is over, in this room alone.
 */
final class Unwritten {
  private final Standing room;
  private final Telling telling;
  private final TakeDesk desk;

  /** The leader is told once, until something of that kind has been written again. */
  private boolean leaderTold;

  Unwritten(Standing room, Telling telling, TakeDesk desk) {
    this.room = room;
    this.telling = telling;
    this.desk = desk;
  }

  /** The room itself is on the disk again. */
  void written() {
    leaderTold = false;
  }

  void refused(JournalEntry entry, String why) {
    String says =
        "the host's database refuses this for good (" + why + "); keep what is not acknowledged";
    TakeRun take = room.lastTake();
    if (take != null && take.running() && needs(take, entry)) {
      telling.all(Outbox.problem(ErrorCode.STORE_UNAVAILABLE, says));
      desk.stop(take, room.now, StopReason.INTERRUPTED);
      return;
    }
    if (entry instanceof JournalEntry.Played played) {
      tell(room.members.get(played.playerId()), says);
    } else if (entry instanceof JournalEntry.Lengths lengths) {
      tell(room.members.get(lengths.playerId()), says);
    } else if (!leaderTold) {
      leaderTold = true;
      tell(room.members.get(room.leaderId), says);
    }
  }

  private void tell(@Nullable Member member, String says) {
    if (member != null) {
      room.out.send(member, Outbox.problem(ErrorCode.STORE_UNAVAILABLE, says));
    }
  }

  /** Without a length, a take is still whole; without anything else of its own it is not. */
  private static boolean needs(TakeRun take, JournalEntry entry) {
    if (entry instanceof JournalEntry.Played played) {
      return played.takeId().equals(take.id());
    }
    if (entry instanceof JournalEntry.TakeBegun begun) {
      return begun.takeId().equals(take.id());
    }
    if (entry instanceof JournalEntry.Rewritten rewritten) {
      return rewritten.takeId().equals(take.id());
    }
    if (entry instanceof JournalEntry.Away away) {
      return away.takeId().equals(take.id());
    }
    return entry instanceof JournalEntry.State;
  }
}
