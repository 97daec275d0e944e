package thinclick.server.room;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Span;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.ServerMessage;

/** Coming in, coming back, dropping out and leaving for good. */
final class Entrance {
  private final Standing room;
  private final Telling telling;
  private long emptyDueMicros = Room.EMPTY_MICROS;
  private long leaderGoneMicros;

  Entrance(Standing room, Telling telling) {
    this.room = room;
    this.telling = telling;
  }

  void came(RoomEvent.Came came) {
    try {
      if (came.message() instanceof ClientMessage.OpenRoom open) {
        opened(came, open);
      } else if (came.message() instanceof ClientMessage.Join join) {
        joined(came, join);
      } else {
        room.out.close(came.connection(), CloseCode.MALFORMED, "expected join or openRoom first");
      }
    } catch (Refusal refused) {
      room.out.refuse(came.connection(), refused, null);
    } catch (BadInput bad) {
      room.out.refuse(came.connection(), Refusal.of(bad), null);
    }
  }

  private void opened(RoomEvent.Came came, ClientMessage.OpenRoom open) {
    Member owner = newMember(Nickname.of(open.name()), came.freshToken(), Role.LEADER, false);
    room.ownerId = owner.id;
    room.leaderId = owner.id;
    room.ownerTokenHash = TokenHash.of(came.freshLeaderToken());
    room.decide();
    welcome(owner, came.connection(), came.freshToken(), came.freshLeaderToken());
  }

  private void joined(RoomEvent.Came came, ClientMessage.Join join) {
    String token = join.token();
    if (token != null) {
      returned(came, join, token);
      return;
    }
    if (join.role() == Role.LEADER) {
      room.out.close(came.connection(), CloseCode.TOKEN, "expected the leader token, found none");
      return;
    }
    if (room.locked) {
      throw new Refusal(ErrorCode.NOT_ALLOWED, "room", "the leader lets nobody new in now");
    }
    Nickname name = Nickname.of(join.name());
    if (room.members.named(name) != null) {
      throw new Refusal(ErrorCode.NAME_TAKEN, "name", "\"" + name.shown() + "\" is taken");
    }
    if (room.members.size() >= Room.MAX_MEMBERS && !forgetSomebody()) {
      throw new Refusal(ErrorCode.ROOM_FULL, null, "the room has " + Room.MAX_MEMBERS + " members");
    }
    Member member = newMember(name, came.freshToken(), join.role(), join.standIn());
    room.change();
    welcome(member, came.connection(), came.freshToken(), null);
  }

  private void returned(RoomEvent.Came came, ClientMessage.Join join, String token) {
    boolean owner = TokenHash.matches(room.ownerTokenHash, token);
    Member member = owner ? room.members.get(room.ownerId) : room.members.withToken(token);
    if (member == null) {
      room.out.close(came.connection(), CloseCode.TOKEN, CloseCode.TOKEN.says());
      return;
    }
    if (owner && !room.leads(member)) {
      room.leaderId = member.id;
      room.decide();
    }
    if (!owner && join.role() != Role.LEADER && join.role() != member.role) {
      member.role = join.role();
      room.change();
    }
    Long older = member.connection;
    if (older != null) {
      room.members.disconnect(member);
      room.out.close(older, CloseCode.REPLACED, CloseCode.REPLACED.says());
    }
    welcome(member, came.connection(), token, owner ? token : null);
    cameBack(member);
  }

  private Member newMember(Nickname name, String token, Role role, boolean standIn) {
    room.memberCount++;
    Member member =
        new Member(room.id + "-p" + room.memberCount, name, TokenHash.of(token), role, standIn);
    room.members.add(member);
    return member;
  }

  /** Makes a place by forgetting the first who is away and neither leads nor plays. */
  private boolean forgetSomebody() {
    Optional<Member> first =
        room.members.all().stream()
            .filter(m -> !m.here() && !room.leads(m) && !m.id.equals(room.ownerId))
            .filter(m -> room.takes.stream().noneMatch(take -> take.seats.containsKey(m.id)))
            .findFirst();
    first.ifPresent(room.members::remove);
    return first.isPresent();
  }

  private void welcome(Member member, long connection, String token, @Nullable String leaderToken) {
    room.members.connect(member, connection);
    room.out.send(
        member,
        new ServerMessage.Welcome(
            MessageCodec.VERSION,
            member.id,
            token,
            leaderToken,
            room.word,
            room.epoch,
            room.revision,
            room.phase,
            room.now,
            Room.LIMITS));
    telling.roomTo(member);
    telling.lastReviewTo(member);
    room.rosterChanged = true;
  }

  private void cameBack(Member member) {
    room.runningTake()
        .ifPresent(
            take -> {
              Long since = take.back(member.id);
              if (since != null && room.now > since) {
                room.out.append(
                    new JournalEntry.Away(take.id(), member.id, new Span(since, room.now)));
              }
            });
  }

  /**
   * A line is gone.
   *
   * @param silentMicros nothing had come from it for so long: its player has been away since then
   */
  void gone(long connection, long silentMicros) {
    Member member = room.members.on(connection);
    if (member == null) {
      return;
    }
    room.members.disconnect(member);
    member.clock = null;
    room.rosterChanged = true;
    if (room.leads(member)) {
      leaderGoneMicros = room.now;
    }
    room.runningTake()
        .ifPresent(take -> take.gone(member.id, Math.max(0, room.now - silentMicros)));
    if (room.members.nobodyHere()) {
      emptyDueMicros = room.now + Room.EMPTY_MICROS;
    }
  }

  /** Closes the connection and forgets the member; who opened the room is kept. */
  void leave(Member member, CloseCode code) {
    Long connection = member.connection;
    if (connection != null) {
      gone(connection, 0);
    }
    for (TakeRun take : room.takes) {
      if (take.seats.containsKey(member.id)) {
        take.excuse(member.id, room.now);
      }
    }
    if (!member.id.equals(room.ownerId)) {
      room.members.remove(member);
    }
    room.change();
    if (connection != null) {
      room.out.close(connection, code, code.says());
    }
  }

  /** How long the leader has been gone; meaningful only while the leader is not here. */
  long leaderGoneForMicros() {
    return room.now - leaderGoneMicros;
  }

  /** When the room closes because nobody is in it. */
  long emptyDueMicros() {
    return room.members.nobodyHere() ? emptyDueMicros : TakeRun.NEVER;
  }

  void due() {
    if (room.now >= emptyDueMicros()) {
      room.out.append(new JournalEntry.Closed());
      room.changed = false;
      room.over = true;
      room.out.ended("empty for " + Room.EMPTY_MICROS / 60_000_000 + " minutes");
    }
  }

  /** Everybody is told why and closed. */
  void end(String why, @Nullable Long retryAfterMillis, CloseCode code, String says) {
    for (long connection : room.members.connections()) {
      room.out.send(connection, new ServerMessage.Goodbye(why, retryAfterMillis, null));
      room.out.close(connection, code, says);
    }
    room.over = true;
    room.out.ended(why);
  }
}
