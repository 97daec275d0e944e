package thinclick.server.room;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.music.Stage;
import tools.jackson.databind.JsonNode;

/**
 * How a room stands: what its parts share, and what is written down of it. Only the room's one
 * writer touches it, one event after the other.
 */
final class Standing {
  final String id;
  final long epoch;
  final Members members = new Members();
  final History history = new History();
  final List<TakeRun> takes = new ArrayList<>();

  /** What the event in hand wants done. */
  final Outbox out = new Outbox();

  /** The reading of the room's clock that came with the event in hand. */
  long now;

  String word;
  String ownerId = "";
  String ownerTokenHash = "";
  String leaderId = "";
  long revision;

  /** The revision of the last change that a leader's command must have seen. */
  long decided;

  long memberCount;
  long dealCount;
  long takeCount;
  Phase phase = Phase.GATHERING;
  @Nullable Drill drill;
  @Nullable List<Stage> stages;
  @Nullable Double tempo;
  @Nullable Dealt dealt;

  /** The name in the dealt parts by playerId. */
  Map<String, String> seats = new LinkedHashMap<>();

  boolean locked;

  /** Whether players hear each other's judgements; null until the leader says. */
  @Nullable Boolean share;

  @Nullable String note;

  /** Of the last take; not written down here, the journal has it. */
  @Nullable JsonNode lastReview;

  boolean lastReviewProvisional;

  /** True where the state is to be written down once the event is dealt with. */
  boolean changed;

  boolean rosterChanged;

  /** True once the room can be forgotten. */
  boolean over;

  Standing(String id, String word, long epoch) {
    this.id = id;
    this.word = word;
    this.epoch = epoch;
  }

  /** As it was written down, in a new epoch. */
  static Standing of(RoomJournal.Opened opened, RoomState state) {
    Standing room = new Standing(state.roomId(), state.word(), opened.epoch());
    room.ownerId = state.ownerId();
    room.ownerTokenHash = state.ownerTokenHash();
    room.leaderId = state.leaderId();
    room.revision = state.revision();
    room.decided = state.decided();
    room.phase = state.phase();
    room.memberCount = state.counted().members();
    room.dealCount = state.counted().deals();
    room.takeCount = state.counted().takes();
    room.drill = state.drill();
    room.stages = state.stages();
    room.tempo = state.tempo();
    room.dealt = state.dealt();
    room.seats = new LinkedHashMap<>(state.seats());
    room.locked = state.locked();
    room.share = state.share();
    room.note = state.note();
    room.history.startAt(room.revision + 1); // what was said before is not known any more
    state.members().forEach(member -> room.members.add(Member.of(member)));
    for (RoomState.TakeState take : state.takes()) {
      room.takes.add(TakeRun.of(take, opened.takes().get(take.announced().takeId())));
    }
    return room;
  }

  /** The room as it would be written down now. */
  RoomState state() {
    return new RoomState(
        id,
        word,
        revision,
        decided,
        phase,
        ownerId,
        ownerTokenHash,
        leaderId,
        new RoomState.Counted(memberCount, dealCount, takeCount),
        members.all().stream().map(Member::state).toList(),
        drill,
        stages,
        tempo,
        dealt,
        new LinkedHashMap<>(seats),
        takes.stream().map(TakeRun::state).toList(),
        locked,
        share,
        note);
  }

  void enter(Phase next, String why) {
    if (phase != next) {
      out.phaseChanged(phase, next, why);
      phase = next;
    }
  }

  void change() {
    revision++;
    changed = true;
    rosterChanged = true;
  }

  /** A change that a leader's command must have seen. */
  void decide() {
    change();
    decided = revision;
  }

  /** True where players may know of each other's attacks: a duo by itself, else as is said. */
  boolean shares(TakeRun take) {
    Boolean said = share;
    return said == null ? take.seats.size() == 2 : said;
  }

  boolean leads(Member member) {
    return member.id.equals(leaderId);
  }

  @Nullable Integer chairOf(Member member) {
    int dealtChair = List.copyOf(seats.keySet()).indexOf(member.id);
    return member.chair != null ? member.chair : dealtChair < 0 ? null : (Integer) (dealtChair + 1);
  }

  /** The playerId that sits at a part; empty where nobody does. */
  String seatOf(String partName) {
    return seats.entrySet().stream()
        .filter(seat -> seat.getValue().equals(partName))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse("");
  }

  Member somebody(String playerId) {
    Member member = members.get(playerId);
    if (member == null) {
      throw new Refusal(
          ErrorCode.BAD_FIELD,
          "playerId",
          "expected the playerId of somebody in the room, found \"" + playerId + "\"");
    }
    return member;
  }

  @Nullable TakeRun lastTake() {
    return takes.isEmpty() ? null : takes.get(takes.size() - 1);
  }

  /** The last take where it still runs. */
  Optional<TakeRun> runningTake() {
    return Optional.ofNullable(lastTake()).filter(TakeRun::running);
  }

  Optional<TakeRun> take(String takeId) {
    for (TakeRun take : takes) { // for every attack: no stream here
      if (take.id().equals(takeId)) {
        return Optional.of(take);
      }
    }
    return Optional.empty();
  }

  /** The take that a message speaks of; refused where it is none of the last ones. */
  TakeRun remembered(String takeId) {
    return take(takeId)
        .orElseThrow(
            () ->
                new Refusal(
                    ErrorCode.NOT_ALLOWED,
                    "takeId",
                    "expected one of the last takes, found \"" + takeId + "\""));
  }

  void expect(Phase... allowed) {
    if (!List.of(allowed).contains(phase)) {
      throw new Refusal(
          ErrorCode.WRONG_PHASE,
          null,
          "expected "
              + String.join(" or ", List.of(allowed).stream().map(Standing::named).toList())
              + ", the room is in "
              + named(phase));
    }
  }

  private static String named(Phase phase) {
    return switch (phase) {
      case GATHERING -> "gathering";
      case DEALT -> "dealt";
      case COUNT_IN -> "countIn";
      case TAKE -> "take";
      case REVIEW -> "review";
    };
  }
}
