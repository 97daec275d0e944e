package thinclick.server.room;

import java.util.Objects;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.ServerMessage;

/** Who leads, who sits where, who may come in. */
final class Leading {
  /** The lead can be claimed after this. */
  private static final long LEADER_GONE_MICROS = 30_000_000;

  private final Standing room;
  private final Telling telling;
  private final Entrance entrance;

  Leading(Standing room, Telling telling, Entrance entrance) {
    this.room = room;
    this.telling = telling;
    this.entrance = entrance;
  }

  /** A leader's command must come from the leader, who has seen what was decided last. */
  void check(Member member, LeaderCommand command) {
    if (!room.leads(member)) {
      throw new Refusal(ErrorCode.NOT_ALLOWED, null, "only the leader may do this");
    }
    if (command.revision() < room.decided || command.revision() > room.revision) {
      throw new Refusal(
          ErrorCode.STALE_REVISION,
          "revision",
          "expected " + room.decided + " to " + room.revision + ", found " + command.revision());
    }
  }

  void claim(Member sender) {
    Member leader = room.members.get(room.leaderId);
    long goneMicros = entrance.leaderGoneForMicros();
    if (sender.role != Role.PLAYER || sender.standIn) {
      throw new Refusal(ErrorCode.NOT_ALLOWED, null, "only a player may claim the lead");
    }
    if (leader != null && (leader.here() || goneMicros < LEADER_GONE_MICROS)) {
      throw new Refusal(
          ErrorCode.NOT_ALLOWED,
          null,
          "expected a leader who has been gone for "
              + LEADER_GONE_MICROS / 1_000_000
              + " s, found one "
              + (leader.here() ? "who is here" : "gone for " + goneMicros / 1_000_000 + " s"));
    }
    lead(sender);
  }

  void pass(LeaderCommand.PassLead message) {
    Member next = room.somebody(message.playerId());
    if (!next.here() || next.standIn) {
      throw new Refusal(ErrorCode.NOT_ALLOWED, "playerId", "expected somebody who is here");
    }
    lead(next);
  }

  private void lead(Member member) {
    room.leaderId = member.id;
    room.decide();
    telling.wholeRoom();
  }

  void seat(LeaderCommand.Seat message) {
    room.members.seat(room.somebody(message.playerId()), message.chair());
    room.decide();
  }

  void standIn(LeaderCommand.StandIn message) {
    Member absent = room.somebody(message.playerId());
    Integer chair = room.chairOf(absent);
    if (absent.here() || chair == null) {
      throw new Refusal(
          ErrorCode.NOT_ALLOWED, "playerId", "expected somebody absent who has a chair");
    }
    Member standIn =
        room.members
            .idleStandIn()
            .orElseThrow(
                () ->
                    new Refusal(
                        ErrorCode.NOT_ALLOWED, null, "expected a free stand-in in the room"));
    absent.chair = null;
    room.members.seat(standIn, chair);
    room.decide();
  }

  void remove(Member sender, LeaderCommand.Remove message) {
    Member removed = room.somebody(message.playerId());
    if (removed == sender || removed.id.equals(room.ownerId)) {
      throw new Refusal(
          ErrorCode.NOT_ALLOWED, "playerId", "expected somebody else than who opened the room");
    }
    entrance.leave(removed, CloseCode.REMOVED);
    room.decide();
  }

  void lock(LeaderCommand.Lock message) {
    room.locked = message.value();
    room.decide();
    telling.wholeRoom();
  }

  void share(LeaderCommand.Share message) {
    room.share = message.value();
    room.decide();
  }

  void note(LeaderCommand.Note message) {
    String written = message.value().isEmpty() ? null : message.value();
    if (message.playerId() == null) {
      room.note = written;
      room.members.all().forEach(member -> member.note = null);
      room.decide();
      telling.wholeRoom();
    } else {
      Member one = room.somebody(message.playerId());
      one.note = written;
      if (one.here()) {
        telling.roomTo(one);
      }
    }
  }

  void wantWord(Member sender, LeaderCommand.NewWord message) {
    room.out.wantWord(Objects.requireNonNull(sender.connection), message.requestId());
  }

  void wordGiven(RoomEvent.WordGiven given) {
    room.word = given.word();
    room.decide();
    telling.wholeRoom();
    room.out.send(given.connection(), new ServerMessage.Done(given.requestId(), room.revision));
  }
}
