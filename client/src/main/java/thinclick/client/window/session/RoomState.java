package thinclick.client.window.session;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.client.clock.ClockView;
import thinclick.client.link.LinkState;
import thinclick.client.window.words.Refused;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.PreparingMessage.SoundCheck;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.message.TakeNews.Replanned;
import thinclick.protocol.message.TakeNews.ReviewReady;
import thinclick.protocol.message.TakeNews.StopReason;
import thinclick.protocol.message.TakeNews.Stopped;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.StepGrid;

/**
 * All that this window knows of its room at one moment. Each message makes the next state; the
 * views show states and keep nothing of their own.
 *
 * @param address where the room is, as it is said to others; empty where there is none
 * @param link where the connection stands; null where none was asked for
 * @param linkSays what the connection last said of itself
 * @param lostNanos when the link was lost, monotonic clock; 0 while it stands
 * @param word the room word; empty until it is known
 * @param myId this player's id; empty until it is known
 * @param leader true where this window runs the rehearsal
 * @param people who is in the room
 * @param phase where the room stands
 * @param title the chosen drill's title, or null
 * @param dealt what is dealt, or null
 * @param announced the running or last take, or null
 * @param stopped how that take ended, or null while it runs
 * @param review the last review, or null
 * @param waiting own attacks that the server has not stored yet
 * @param clock what is believed of room time
 * @param chairMillis how far this player's chair may be off, as the host has noted it
 * @param locked true where nobody new is let in
 * @param note what the leader wrote to all or to this player; empty for nothing
 * @param shelf what there is to rehearse
 * @param problem the last thing that could not be done, or nothing where all went well
 */
public record RoomState(
    String address,
    @Nullable LinkState link,
    String linkSays,
    long lostNanos,
    String word,
    String myId,
    boolean leader,
    List<Person> people,
    Phase phase,
    @Nullable String title,
    @Nullable Dealt dealt,
    @Nullable Announced announced,
    @Nullable Stopped stopped,
    @Nullable ReviewReady review,
    int waiting,
    ClockView clock,
    double chairMillis,
    boolean locked,
    String note,
    Shelf shelf,
    Refused problem) {

  /** What a part may say at the most. */
  private static final double MOST_UNCERTAIN_MILLIS = 10_000;

  /** Not in a room. */
  public static final RoomState OUTSIDE =
      new RoomState(
          "",
          null,
          "",
          0,
          "",
          "",
          false,
          List.of(),
          Phase.GATHERING,
          null,
          null,
          null,
          null,
          null,
          0,
          ClockView.unknown(0),
          SoundCheck.UNMEASURED_MILLIS,
          false,
          "",
          Shelf.STOCK,
          Refused.NOTHING);

  public RoomState {
    people = List.copyOf(people);
  }

  /** True once the room has let this player in and until the link is over for good. */
  public boolean inside() {
    return !word.isEmpty() && link != null && link != LinkState.CLOSED;
  }

  /** True from the announcement to the end of a take. */
  public boolean takeRuns() {
    return inside() && announced != null && stopped == null;
  }

  /** True where the material may be chosen and dealt. */
  public boolean betweenTakes() {
    return inside() && !takeRuns();
  }

  /**
   * True where the leader stopped the last take before its half. It is kept like any other, as
   * stopped early, and counts neither for a lesson nor for the next rung.
   */
  public boolean abandoned() {
    StepGrid grid = grid();
    ClickPlan plan = plan();
    return stopped != null
        && stopped.reason() == StopReason.LEADER
        && grid != null
        && plan != null
        && stopped.atMicros() < grid.instantOf((long) plan.bars() * grid.stepsPerBar() / 2);
  }

  /** This player's own part, or null where none is dealt. */
  public @Nullable Part ownPart() {
    Dealt now = dealt;
    if (now == null || now.own() == null) {
      return null;
    }
    return now.parts().stream()
        .filter(part -> part.player().equals(now.own()))
        .findFirst()
        .orElse(null);
  }

  /** How far this player's stamps may be off, of clock and chair together, milliseconds. */
  public double uncertaintyMillis() {
    return Math.min(
        MOST_UNCERTAIN_MILLIS, Math.hypot(clock.uncertaintyMicros() / 1e3, chairMillis));
  }

  /** The written grid of the announced take; null where nothing is announced or dealt. */
  public @Nullable StepGrid grid() {
    if (dealt == null || announced == null || !announced.dealId().equals(dealt.dealId())) {
      return null;
    }
    return dealt.gridFrom(announced.startMicros());
  }

  /** The announced take as it is written, before its first attack; null where none is. */
  public @Nullable Take take() {
    Dealt now = dealt;
    StepGrid grid = grid();
    return now == null || grid == null ? null : now.takeFrom(grid.startMicros());
  }

  /** The player of this id as the parts name them; empty where nobody has it. */
  public String nameOf(String playerId) {
    return people.stream()
        .filter(person -> person.playerId().equals(playerId))
        .map(Person::name)
        .findFirst()
        .orElse("");
  }

  /** The click plan of what is dealt; null where nothing is. */
  public @Nullable ClickPlan plan() {
    return dealt == null ? null : new ClickPlan(dealt.stages());
  }

  // ---------------------------------------------------------------- what happens

  /** The host has noted what the chair is late by, or that it is not known. */
  RoomState chairNoted(AnswerMessage.SoundCheckNoted noted) {
    double millis = noted.accepted() ? noted.uncertaintyMillis() : SoundCheck.UNMEASURED_MILLIS;
    return new RoomEdit(this).chairMillis(millis).make();
  }

  RoomState calling(String where) {
    return OUTSIDE.with(where, LinkState.CONNECTING);
  }

  private RoomState with(String where, LinkState state) {
    return new RoomEdit(this).address(where).link(state).make();
  }

  RoomState linkChanged(LinkState next, String says, long nanos) {
    boolean lost = next == LinkState.AWAY;
    long since = lost ? (lostNanos == 0 ? nanos : lostNanos) : 0;
    return new RoomEdit(this).link(next).linkSays(says).lostNanos(since).make();
  }

  RoomState clockChanged(ClockView now) {
    return new RoomEdit(this).clock(now).make();
  }

  RoomState waitingChanged(int now) {
    return new RoomEdit(this).waiting(now).make();
  }

  /** Who comes back to a lead that was taken over leads on, unless the roster says otherwise. */
  RoomState welcome(ServerMessage.Welcome welcome) {
    return new RoomEdit(this)
        .word(welcome.room())
        .myId(welcome.playerId())
        .leader(welcome.leaderToken() != null || (leader && welcome.playerId().equals(myId)))
        .phase(welcome.phase())
        .problem(Refused.NOTHING)
        .make();
  }

  RoomState room(ServerMessage.Room room) {
    return new RoomEdit(this)
        .word(room.word())
        .phase(room.phase())
        .title(room.title())
        .dealt(planned(room.dealt(), room.replanned()))
        .announced(room.announced())
        .stopped(room.stopped())
        .locked(room.locked())
        .note(room.note() == null ? "" : room.note())
        .make();
  }

  RoomState roster(ServerMessage.Roster roster) {
    boolean leads =
        roster.players().stream()
            .filter(person -> person.playerId().equals(myId))
            .findFirst()
            .map(person -> person.role() == Role.LEADER)
            .orElse(leader);
    return new RoomEdit(this).people(roster.players()).leader(leads).make();
  }

  RoomState dealt(Dealt now) {
    return new RoomEdit(this)
        .phase(Phase.DEALT)
        .title(now.title())
        .dealt(now)
        .review(null)
        .problem(Refused.NOTHING)
        .make();
  }

  RoomState announced(Announced now) {
    return new RoomEdit(this)
        .phase(Phase.COUNT_IN)
        .announced(now)
        .stopped(null)
        .review(null)
        .problem(Refused.NOTHING)
        .make();
  }

  RoomState replanned(Replanned now) {
    return new RoomEdit(this).dealt(planned(dealt, now)).make();
  }

  /** What is dealt, with the click plan as it now stands. */
  private static @Nullable Dealt planned(@Nullable Dealt dealt, @Nullable Replanned now) {
    if (dealt == null || now == null) {
      return dealt;
    }
    return dealt.withStages(now.stages());
  }

  RoomState stopped(Stopped now) {
    return new RoomEdit(this).phase(Phase.REVIEW).stopped(now).make();
  }

  RoomState reviewed(ReviewReady now) {
    return new RoomEdit(this).review(now).make();
  }

  RoomState listed(AnswerMessage.LibraryList list) {
    return new RoomEdit(this).shelf(Shelf.of(list)).make();
  }

  RoomState ownDrill(Drill drill) {
    return new RoomEdit(this).shelf(shelf.with(drill)).make();
  }

  RoomState problem(Refused refused) {
    return new RoomEdit(this).problem(refused).make();
  }
}
