package thinclick.server.room;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.TakeNews;
import thinclick.server.scoring.OwnReview;
import tools.jackson.databind.JsonNode;

/** What members are told of the room: the whole of it, what they missed, who is there. */
final class Telling {
  private static final long ROSTER_MICROS = 500_000;

  private final Standing room;
  private long rosterSentMicros = -ROSTER_MICROS;

  Telling(Standing room) {
    this.room = room;
  }

  // ------------------------------------------------------------------ to all

  void all(ServerMessage message) {
    room.out.send(room.members.connections(), message);
  }

  /** To all, and again to whoever missed it. */
  void allAndKeep(ServerMessage message) {
    room.history.add(room.revision, message);
    all(message);
  }

  /** Says the whole room to all; what was said before is not told again one by one. */
  void wholeRoom() {
    room.history.startAt(room.revision);
    for (Member member : room.members.all()) {
      if (member.here()) {
        room.out.send(member, roomFor(member));
      }
    }
    room.rosterChanged = true;
  }

  /** To each with the own part named, and again to whoever missed it. */
  void dealt(Dealt made) {
    room.history.add(room.revision, made);
    for (Member member : room.members.all()) {
      room.out.send(member, dealtFor(member, made));
    }
    room.rosterChanged = true;
  }

  void review(TakeRun take, JsonNode review, boolean provisional) {
    for (Member member : room.members.all()) {
      room.out.send(member, reviewFor(member, take, review, provisional));
    }
  }

  // ------------------------------------------------------------------ to one

  void roomTo(Member member) {
    room.out.send(member, roomFor(member));
  }

  /** To one who comes while a review is looked at. */
  void lastReviewTo(Member member) {
    TakeRun take = room.lastTake();
    JsonNode review = room.lastReview;
    if (room.phase == ServerMessage.Phase.REVIEW && take != null && review != null) {
      room.out.send(member, reviewFor(member, take, review, room.lastReviewProvisional));
    }
  }

  /** What was said since a revision; the whole room where that is not known any more. */
  void missedTo(Member member, long revision) {
    Optional<List<ServerMessage>> missed =
        revision > room.revision ? Optional.empty() : room.history.after(revision);
    if (missed.isEmpty()) {
      roomTo(member);
    } else {
      List<ServerMessage> own = new ArrayList<>();
      for (ServerMessage each : missed.get()) {
        own.add(each instanceof Dealt made ? dealtFor(member, made) : each);
      }
      room.out.send(member, new ServerMessage.Changes(revision, own));
    }
    room.rosterChanged = true;
  }

  private ServerMessage.Room roomFor(Member member) {
    TakeRun take = room.lastTake();
    Dealt made = room.dealt;
    Drill chosen = room.drill;
    return new ServerMessage.Room(
        room.revision,
        room.phase,
        room.word,
        chosen == null ? null : chosen.title(),
        made == null ? null : dealtFor(member, made),
        take == null || !take.told ? null : take.announced,
        take == null ? null : take.replanned,
        take == null ? null : take.stopped,
        take == null ? 0 : take.reach(member.id).ledger.through(),
        room.locked,
        member.note == null ? room.note : member.note);
  }

  private Dealt dealtFor(Member member, Dealt made) {
    return made.seenBy(room.seats.get(member.id));
  }

  private TakeNews.ReviewReady reviewFor(
      Member member, TakeRun take, JsonNode review, boolean provisional) {
    JsonNode view =
        room.leads(member)
            ? review
            : OwnReview.of(review, Objects.requireNonNullElse(take.seats.get(member.id), ""));
    return new TakeNews.ReviewReady(take.id(), provisional, view);
  }

  // ------------------------------------------------------------------ the roster

  /** When the roster is to be sent next; at most twice a second. */
  long rosterDueMicros() {
    return room.rosterChanged ? rosterSentMicros + ROSTER_MICROS : TakeRun.NEVER;
  }

  void due() {
    if (room.now >= rosterDueMicros()) {
      room.rosterChanged = false;
      rosterSentMicros = room.now;
      all(roster());
    }
  }

  private ServerMessage.Roster roster() {
    Dealt made = room.dealt;
    List<ServerMessage.Person> people = new ArrayList<>();
    for (Member member : room.members.all()) {
      Integer chair = room.chairOf(member);
      people.add(
          new ServerMessage.Person(
              member.id,
              member.name.shown(),
              room.leads(member)
                  ? Role.LEADER
                  : member.role == Role.LEADER ? Role.PLAYER : member.role,
              chair == null ? null : chair.toString(),
              member.here(),
              member.clock == null ? null : member.clock.uncertaintyMicros(),
              member.clock == null ? null : member.clock.roundTripMicros(),
              member.clock == null ? null : member.clock.roundTripSpreadMicros(),
              member.soundUncertaintyMillis != null,
              made != null && made.dealId().equals(member.readyFor),
              member.standIn));
    }
    return new ServerMessage.Roster(room.revision, people);
  }
}
