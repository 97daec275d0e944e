package thinclick.server.room;

import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.PreparingMessage.ClockReport;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.message.PreparingMessage.SoundCheck;

/** Somebody in a room, here or away. */
final class Member {
  /** What a chair is known to where nobody has measured it: no lean is charged up to this. */
  private static final double UNMEASURED_MILLIS = SoundCheck.UNMEASURED_MILLIS;

  final String id;
  final String tokenHash;
  final boolean standIn;
  Nickname name;
  Role role;

  /** From 1, where the leader has given one. */
  @Nullable Integer chair;

  @Nullable Long connection;
  @Nullable ClockReport clock;
  @Nullable Double latencyMillis;
  @Nullable Double soundUncertaintyMillis;
  @Nullable Hearing hearing;
  @Nullable String readyFor;
  @Nullable String warnedOfClockIn;

  /** When it last asked for a take, room time. */
  long takeAskedMicros = Long.MIN_VALUE / 2;

  /** The line on which a piece of a take waits to be read; null for none. */
  @Nullable Long pieceAskedOn;

  /** The line on which a question about takes before waits for its answer; null for none. */
  @Nullable Long courseAskedOn;

  @Nullable Long fewestAskedOn;

  /** The leader's to this one alone; said while the room lives, never written down. */
  @Nullable String note;

  Member(String id, Nickname name, String tokenHash, Role role, boolean standIn) {
    this.id = id;
    this.name = name;
    this.tokenHash = tokenHash;
    this.role = role;
    this.standIn = standIn;
  }

  boolean here() {
    return connection != null;
  }

  boolean clockSteady(long epoch) {
    ClockReport report = clock;
    return report != null && report.epoch() == epoch && report.state() == ClockState.STEADY;
  }

  /** Of clock and chair together; a stand-in's chair is exact by making. */
  double uncertaintyMillis() {
    ClockReport report = clock;
    double clockMillis = report == null ? 0 : report.uncertaintyMicros() / 1e3;
    Double chair = soundUncertaintyMillis;
    double chairMillis = chair != null ? chair : standIn ? 0 : UNMEASURED_MILLIS;
    return Math.min(10_000, Math.hypot(clockMillis, chairMillis));
  }

  RoomState.MemberState state() {
    return new RoomState.MemberState(
        id,
        name.shown(),
        tokenHash,
        role,
        standIn,
        chair,
        latencyMillis,
        soundUncertaintyMillis,
        hearing);
  }

  static Member of(RoomState.MemberState state) {
    Member member =
        new Member(
            state.playerId(),
            Nickname.of(state.name()),
            state.tokenHash(),
            state.role(),
            state.standIn());
    member.chair = state.chair();
    member.latencyMillis = state.latencyMillis();
    member.soundUncertaintyMillis = state.soundUncertaintyMillis();
    member.hearing = state.hearing();
    return member;
  }
}
