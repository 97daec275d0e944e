package thinclick.server.room;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Span;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ClientMessage.WireAttack;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.ErrorCode;
import thinclick.protocol.message.ServerMessage.HeardAttack;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.ServerMessage.StopReason;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import tools.jackson.databind.JsonNode;

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

  private static final int SMALL_ROOM = 8;
  private static final long HEARD_BATCH_MICROS = 50_000;
  private static final long STORED_MICROS = 20_000;
  private static final long ROSTER_MICROS = 500_000;
  private static final int TAKES_REMEMBERED = 4;

  /** The lead can be claimed after this. */
  private static final long LEADER_GONE_MICROS = 30_000_000;

  private static final int REPLAN_BARS_AHEAD = 2;
  private static final long NEVER = TakeRun.NEVER;

  private final String id;
  private final long epoch;
  private final Drills drills;
  private final DealMaker dealer;

  private final Members members = new Members();
  private final List<TakeRun> takes = new ArrayList<>();
  private final List<WaitingAttack> heardWaiting = new ArrayList<>();

  private String word;
  private String ownerId = "";
  private String ownerTokenHash = "";
  private String leaderId = "";
  private long revision;
  private long decided;
  private long memberCount;
  private long dealCount;
  private long takeCount;
  private Phase phase = Phase.GATHERING;
  private @Nullable Drill drill;
  private @Nullable List<Stage> stages;
  private @Nullable Double tempo;
  private ServerMessage.@Nullable Dealt dealt;
  private Map<String, String> seats = new LinkedHashMap<>();
  private @Nullable JsonNode lastReview;
  private boolean lastReviewProvisional;

  private boolean locked;
  private @Nullable String note;
  private final History history = new History();
  private long leaderGoneMicros;
  private boolean storeAvailable = true;
  private boolean changed;
  private boolean rosterChanged;
  private long rosterSentMicros = -ROSTER_MICROS;
  private long heardDueMicros = NEVER;
  private long emptyDueMicros;
  private boolean over;

  // Of the event in hand.
  private long now;
  private List<Effect> effects = new ArrayList<>();

  private record WaitingAttack(Member player, HeardAttack attack) {}

  private Room(String id, String word, long epoch, Drills drills, DealMaker dealer) {
    this.id = id;
    this.word = word;
    this.epoch = epoch;
    this.drills = drills;
    this.dealer = dealer;
    this.emptyDueMicros = EMPTY_MICROS;
  }

  /** A new, empty room; the first to come opens it. */
  public static Room fresh(String id, String word, long epoch, Drills drills, DealMaker dealer) {
    return new Room(id, word, epoch, drills, dealer);
  }

  /**
   * A room as it was written down, in its new epoch. A take that was running has been interrupted
   * by then; what is to be done about it comes with the first event.
   */
  public static Room restored(RoomJournal.Opened opened, Drills drills, DealMaker dealer) {
    RoomState state = Objects.requireNonNull(opened.state(), "a restored room has a state");
    Room room = new Room(state.roomId(), state.word(), opened.epoch(), drills, dealer);
    room.restore(state, opened.takes());
    return room;
  }

  private void restore(RoomState state, Map<String, RoomJournal.StoredTake> stored) {
    ownerId = state.ownerId();
    ownerTokenHash = state.ownerTokenHash();
    leaderId = state.leaderId();
    revision = state.revision();
    decided = state.decided();
    phase = state.phase();
    memberCount = state.counted().members();
    dealCount = state.counted().deals();
    takeCount = state.counted().takes();
    drill = state.drill();
    stages = state.stages();
    tempo = state.tempo();
    dealt = state.dealt();
    seats = new LinkedHashMap<>(state.seats());
    locked = state.locked();
    note = state.note();
    history.startAt(revision + 1); // what was said before is not known any more
    state.members().forEach(member -> members.add(Member.of(member)));
    state
        .takes()
        .forEach(take -> takes.add(TakeRun.of(take, stored.get(take.announced().takeId()))));
    begin();
    TakeRun last = lastTake();
    if (last != null && (phase == Phase.COUNT_IN || phase == Phase.TAKE)) {
      RoomJournal.StoredTake found = stored.get(last.id());
      Long lastMicros = found == null ? null : found.lastMicros();
      long start = last.announced.startMicros();
      stop(last, lastMicros == null ? start : Math.max(start, lastMicros), StopReason.INTERRUPTED);
    } else if (last != null && phase == Phase.REVIEW && last.stopped != null) {
      last.stop(last.stopped, now); // its review may have died with the host
    }
  }

  private void begin() {
    now = 0;
    effects = new ArrayList<>();
  }

  /**
   * Takes one event.
   *
   * @param nowMicros the room's clock; never less than before
   * @return what is to be done, in order
   */
  public List<Effect> handle(RoomEvent event, long nowMicros) {
    now = Math.max(now, nowMicros);
    if (over) {
      return List.of();
    }
    if (event instanceof RoomEvent.Came came) {
      came(came);
    } else if (event instanceof RoomEvent.Said said) {
      said(said);
    } else if (event instanceof RoomEvent.Gone gone) {
      gone(gone.connection());
    } else if (event instanceof RoomEvent.Journaled journaled) {
      journaled(journaled.entry(), journaled.outcome());
    } else if (event instanceof RoomEvent.StoreChanged store) {
      storeChanged(store.available());
    } else if (event instanceof RoomEvent.Reviewed reviewed) {
      reviewed(reviewed);
    } else if (event instanceof RoomEvent.ReviewFailed failed) {
      take(failed.takeId()).ifPresent(take -> take.reviewMade(now));
    } else if (event instanceof RoomEvent.WordGiven given) {
      wordGiven(given);
    } else if (event instanceof RoomEvent.HostGoing) {
      hostGoing();
    }
    due();
    if (changed && !over) {
      changed = false;
      effects.add(new Effect.Append(new JournalEntry.State(state())));
    }
    List<Effect> done = effects;
    effects = new ArrayList<>();
    return done;
  }

  /** When {@link RoomEvent.Woken} is wanted next; {@code Long.MAX_VALUE} for not at all. */
  public long wakeMicros() {
    if (over) {
      return NEVER;
    }
    long wake = Math.min(heardDueMicros, members.nobodyHere() ? emptyDueMicros : NEVER);
    if (rosterChanged) {
      wake = Math.min(wake, rosterSentMicros + ROSTER_MICROS);
    }
    for (TakeRun take : takes) {
      wake = Math.min(wake, take.reviewDueMicros());
      for (TakeRun.Reach reach : take.reaches().values()) {
        if (reach.toTell) {
          wake = Math.min(wake, reach.toldMicros + STORED_MICROS);
        }
      }
    }
    TakeRun take = lastTake();
    if (take != null && take.running()) {
      if (take.nextStage < take.written.stages().size()) {
        wake = Math.min(wake, take.stageSaidMicros(take.nextStage));
      }
      wake =
          Math.min(wake, phase == Phase.COUNT_IN ? take.announced.startMicros() : take.endMicros());
    }
    return wake;
  }

  /** The id, unique over all hosts. */
  public String id() {
    return id;
  }

  /** The word it is called by. */
  public String word() {
    return word;
  }

  /** The epoch that its times belong to. */
  public long epoch() {
    return epoch;
  }

  /** Where it stands. */
  public Phase phase() {
    return phase;
  }

  /** True where that connection has been let in. */
  public boolean knows(long connection) {
    return members.on(connection) != null;
  }

  /** How many connections are in it. */
  public int connections() {
    return members.here();
  }

  // ------------------------------------------------------------------ coming and going

  private void came(RoomEvent.Came came) {
    try {
      if (came.message() instanceof ClientMessage.OpenRoom open) {
        opened(came, open);
      } else if (came.message() instanceof ClientMessage.Join join) {
        joined(came, join);
      } else {
        close(came.connection(), CloseCode.MALFORMED, "expected join or openRoom first");
      }
    } catch (Refusal refused) {
      refuse(came.connection(), refused, null);
    } catch (BadInput bad) {
      refuse(came.connection(), new Refusal(ErrorCode.BAD_FIELD, bad.where(), bad.says()), null);
    }
  }

  private void opened(RoomEvent.Came came, ClientMessage.OpenRoom open) {
    Member owner = newMember(Nickname.of(open.name()), came.freshToken(), Role.LEADER, false);
    ownerId = owner.id;
    leaderId = owner.id;
    ownerTokenHash = TokenHash.of(came.freshLeaderToken());
    decide();
    welcome(owner, came.connection(), came.freshToken(), came.freshLeaderToken());
  }

  private void joined(RoomEvent.Came came, ClientMessage.Join join) {
    String token = join.token();
    if (token != null) {
      returned(came, join, token);
      return;
    }
    if (join.role() == Role.LEADER) {
      close(came.connection(), CloseCode.TOKEN, "expected the leader token, found none");
      return;
    }
    if (locked) {
      throw new Refusal(ErrorCode.NOT_ALLOWED, "room", "the leader lets nobody new in now");
    }
    Nickname name = Nickname.of(join.name());
    if (members.named(name) != null) {
      throw new Refusal(ErrorCode.NAME_TAKEN, "name", "\"" + name.shown() + "\" is taken");
    }
    if (members.size() >= MAX_MEMBERS && !forgetSomebody()) {
      throw new Refusal(ErrorCode.ROOM_FULL, null, "the room has " + MAX_MEMBERS + " members");
    }
    Member member = newMember(name, came.freshToken(), join.role(), join.standIn());
    change();
    welcome(member, came.connection(), came.freshToken(), null);
  }

  private void returned(RoomEvent.Came came, ClientMessage.Join join, String token) {
    boolean owner = TokenHash.matches(ownerTokenHash, token);
    Member member = owner ? members.get(ownerId) : members.withToken(token);
    if (member == null) {
      close(came.connection(), CloseCode.TOKEN, CloseCode.TOKEN.says());
      return;
    }
    if (owner && !leaderId.equals(member.id)) {
      leaderId = member.id;
      decide();
    }
    if (!owner && join.role() != Role.LEADER && join.role() != member.role) {
      member.role = join.role();
      change();
    }
    Long older = member.connection;
    if (older != null) {
      members.disconnect(member);
      close(older, CloseCode.REPLACED, CloseCode.REPLACED.says());
    }
    welcome(member, came.connection(), token, owner ? token : null);
    cameBack(member);
  }

  private Member newMember(Nickname name, String token, Role role, boolean standIn) {
    memberCount++;
    Member member = new Member(id + "-p" + memberCount, name, TokenHash.of(token), role, standIn);
    members.add(member);
    return member;
  }

  /** Makes a place by forgetting the first who is away and neither leads nor plays. */
  private boolean forgetSomebody() {
    Optional<Member> first =
        members.all().stream()
            .filter(m -> !m.here() && !leads(m) && !m.id.equals(ownerId))
            .filter(m -> takes.stream().noneMatch(take -> take.seats.containsKey(m.id)))
            .findFirst();
    first.ifPresent(members::remove);
    return first.isPresent();
  }

  private void welcome(Member member, long connection, String token, @Nullable String leaderToken) {
    members.connect(member, connection);
    send(
        member,
        new ServerMessage.Welcome(
            MessageCodec.VERSION,
            member.id,
            token,
            leaderToken,
            word,
            epoch,
            revision,
            phase,
            now,
            LIMITS));
    send(member, roomFor(member));
    TakeRun take = lastTake();
    JsonNode review = lastReview;
    if (phase == Phase.REVIEW && take != null && review != null) {
      send(member, reviewFor(member, take, review, lastReviewProvisional));
    }
    rosterChanged = true;
  }

  private void cameBack(Member member) {
    TakeRun take = lastTake();
    if (take == null || !take.running()) {
      return;
    }
    Long since = take.back(member.id);
    if (since != null && now > since) {
      append(new JournalEntry.Away(take.id(), member.id, new Span(since, now)));
    }
  }

  private void gone(long connection) {
    Member member = members.on(connection);
    if (member == null) {
      return;
    }
    members.disconnect(member);
    member.clock = null;
    rosterChanged = true;
    if (leads(member)) {
      leaderGoneMicros = now;
    }
    TakeRun take = lastTake();
    if (take != null && take.running()) {
      take.gone(member.id, now);
    }
    if (members.nobodyHere()) {
      emptyDueMicros = now + EMPTY_MICROS;
    }
  }

  private boolean leads(Member member) {
    return member.id.equals(leaderId);
  }

  // ------------------------------------------------------------------ what members say

  private void said(RoomEvent.Said said) {
    Member member = members.on(said.connection());
    if (member == null) {
      return; // its goodbye is on the way
    }
    ClientMessage message = said.message();
    Long requestId = message instanceof ClientMessage.Command command ? command.requestId() : null;
    try {
      if (message instanceof ClientMessage.LeaderCommand command) {
        checkLead(member, command);
      }
      Turn turn = new Turn(member);
      message.to(turn);
      if (requestId != null && !turn.answered) {
        send(member, new ServerMessage.Done(requestId, revision));
      }
    } catch (Refusal refused) {
      refuse(said.connection(), refused, requestId);
    } catch (BadInput bad) {
      refuse(
          said.connection(), new Refusal(ErrorCode.BAD_FIELD, bad.where(), bad.says()), requestId);
    }
  }

  private void checkLead(Member member, ClientMessage.LeaderCommand command) {
    if (!leads(member)) {
      throw new Refusal(ErrorCode.NOT_ALLOWED, null, "only the leader may do this");
    }
    if (command.revision() < decided || command.revision() > revision) {
      throw new Refusal(
          ErrorCode.STALE_REVISION,
          "revision",
          "expected " + decided + " to " + revision + ", found " + command.revision());
    }
  }

  private void expect(Phase... allowed) {
    if (!List.of(allowed).contains(phase)) {
      throw new Refusal(
          ErrorCode.WRONG_PHASE,
          null,
          "expected "
              + String.join(" or ", List.of(allowed).stream().map(Room::named).toList())
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

  /** One message of one member. */
  private final class Turn implements ClientMessage.Handler {
    private final Member sender;

    /** True where {@code done} has been sent, or will be sent later. */
    private boolean answered;

    Turn(Member sender) {
      this.sender = sender;
    }

    @Override
    public void onOpenRoom(ClientMessage.OpenRoom message) {
      throw new Refusal(ErrorCode.WRONG_PHASE, null, "expected once, as the first message");
    }

    @Override
    public void onJoin(ClientMessage.Join message) {
      throw new Refusal(ErrorCode.WRONG_PHASE, null, "expected once, as the first message");
    }

    @Override
    public void onClock(ClientMessage.Clock message) {
      // Answered at the edge, where the instants are; here only when somebody drives a room alone.
      send(
          sender, new ServerMessage.ClockAnswer(message.id(), message.t1Micros(), now, now, epoch));
    }

    @Override
    public void onClockReport(ClientMessage.ClockReport message) {
      if (message.epoch() != epoch) {
        throw new Refusal(
            ErrorCode.WRONG_EPOCH, "epoch", "expected " + epoch + ", found " + message.epoch());
      }
      sender.clock = message;
      rosterChanged = true;
    }

    @Override
    public void onSoundCheck(ClientMessage.SoundCheck message) {
      expect(Phase.GATHERING, Phase.DEALT, Phase.REVIEW);
      if (sender.role == Role.LISTENER) {
        throw new Refusal(ErrorCode.NOT_ALLOWED, null, "a listener has no chair to measure");
      }
      sender.latencyMillis = message.latencyMillis();
      sender.soundUncertaintyMillis = message.uncertaintyMillis();
      rosterChanged = true;
      changed = true;
      send(
          sender,
          new ServerMessage.SoundCheckNoted(
              message.latencyMillis(), message.uncertaintyMillis(), true));
    }

    @Override
    public void onReady(ClientMessage.Ready message) {
      expect(Phase.DEALT);
      if (!seats.containsKey(sender.id)) {
        throw new Refusal(ErrorCode.NOT_ALLOWED, null, "expected a player with a part");
      }
      checkDeal(message.dealId());
      sender.readyFor = message.ready() ? message.dealId() : null;
      rosterChanged = true;
    }

    @Override
    public void onAttacks(ClientMessage.Attacks message) {
      attacks(sender, message);
    }

    @Override
    public void onPlayedThrough(ClientMessage.PlayedThrough message) {
      TakeRun take = seatedTake(sender, message.takeId());
      if (take.running()) {
        throw new Refusal(ErrorCode.WRONG_PHASE, null, "the take is still running");
      }
      append(new JournalEntry.PlayedThrough(take.id(), sender.id, message.lastSeq()));
      take.playedThrough(sender.id, message.lastSeq(), now);
      changed = true;
    }

    @Override
    public void onLeave(ClientMessage.Leave message) {
      Long connection = sender.connection;
      answered = true;
      send(sender, new ServerMessage.Done(message.requestId(), revision));
      gone(Objects.requireNonNull(connection));
      leftForGood(sender);
      close(connection, CloseCode.LEFT, CloseCode.LEFT.says());
    }

    @Override
    public void onMaterial(ClientMessage.Material message) {
      expect(Phase.GATHERING, Phase.DEALT, Phase.REVIEW);
      Drill given = message.drill();
      drill = given != null ? given : drillTitled(Objects.requireNonNull(message.title()));
      stages = null;
      tempo = null;
      undeal("new material");
    }

    @Override
    public void onPlan(ClientMessage.Plan message) {
      expect(Phase.GATHERING, Phase.DEALT, Phase.REVIEW);
      Drill chosen = chosenDrill();
      new ClickPlan(message.stages()).checkMeter(chosen.meter(), chosen.stepsPerBeat());
      stages = message.stages();
      tempo = message.tempo() == null ? tempo : message.tempo();
      undeal("a new click plan");
    }

    @Override
    public void onDeal(ClientMessage.Deal message) {
      expect(Phase.GATHERING, Phase.DEALT, Phase.REVIEW);
      deal(message);
    }

    @Override
    public void onStart(ClientMessage.Start message) {
      expect(Phase.DEALT);
      checkDeal(message.dealId());
      start(message);
    }

    @Override
    public void onStop(ClientMessage.Stop message) {
      expect(Phase.COUNT_IN, Phase.TAKE);
      stop(runningTake(message.takeId()), now, StopReason.LEADER);
    }

    @Override
    public void onResync(ClientMessage.Resync message) {
      Optional<List<ServerMessage>> missed =
          message.revision() > revision ? Optional.empty() : history.after(message.revision());
      if (missed.isEmpty()) {
        send(sender, roomFor(sender));
      } else {
        List<ServerMessage> own = new ArrayList<>();
        for (ServerMessage each : missed.get()) {
          own.add(each instanceof ServerMessage.Dealt made ? dealtFor(sender, made) : each);
        }
        send(sender, new ServerMessage.Changes(message.revision(), own));
      }
      rosterChanged = true;
    }

    @Override
    public void onClaimLead(ClientMessage.ClaimLead message) {
      Member leader = members.get(leaderId);
      long goneMicros = now - leaderGoneMicros;
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

    @Override
    public void onReplan(ClientMessage.Replan message) {
      expect(Phase.COUNT_IN, Phase.TAKE);
      replan(runningTake(message.takeId()), message);
    }

    @Override
    public void onSeat(ClientMessage.Seat message) {
      expect(Phase.GATHERING, Phase.DEALT, Phase.REVIEW);
      members.seat(somebody(message.playerId()), message.chair());
      decide();
    }

    @Override
    public void onStandIn(ClientMessage.StandIn message) {
      expect(Phase.GATHERING, Phase.DEALT, Phase.REVIEW);
      Member absent = somebody(message.playerId());
      Integer chair = chairOf(absent);
      if (absent.here() || chair == null) {
        throw new Refusal(
            ErrorCode.NOT_ALLOWED, "playerId", "expected somebody absent who has a chair");
      }
      Member standIn =
          members
              .idleStandIn()
              .orElseThrow(
                  () ->
                      new Refusal(
                          ErrorCode.NOT_ALLOWED, null, "expected a free stand-in in the room"));
      absent.chair = null;
      members.seat(standIn, chair);
      decide();
    }

    @Override
    public void onPassLead(ClientMessage.PassLead message) {
      expect(Phase.GATHERING, Phase.DEALT, Phase.REVIEW);
      Member next = somebody(message.playerId());
      if (!next.here() || next.standIn) {
        throw new Refusal(ErrorCode.NOT_ALLOWED, "playerId", "expected somebody who is here");
      }
      lead(next);
    }

    @Override
    public void onRemove(ClientMessage.Remove message) {
      Member removed = somebody(message.playerId());
      if (removed == sender || removed.id.equals(ownerId)) {
        throw new Refusal(
            ErrorCode.NOT_ALLOWED, "playerId", "expected somebody else than who opened the room");
      }
      Long connection = removed.connection;
      if (connection != null) {
        gone(connection);
        close(connection, CloseCode.REMOVED, CloseCode.REMOVED.says());
      }
      leftForGood(removed);
      decide();
    }

    @Override
    public void onLock(ClientMessage.Lock message) {
      locked = message.value();
      decide();
      tellRoom();
    }

    @Override
    public void onNewWord(ClientMessage.NewWord message) {
      answered = true;
      effects.add(
          new Effect.WantWord(Objects.requireNonNull(sender.connection), message.requestId()));
    }

    @Override
    public void onNote(ClientMessage.Note message) {
      note = message.value().isEmpty() ? null : message.value();
      decide();
      tellRoom();
    }

    @Override
    public void onCloseRoom(ClientMessage.CloseRoom message) {
      answered = true;
      send(sender, new ServerMessage.Done(message.requestId(), revision));
      TakeRun take = lastTake();
      if (take != null && take.running()) {
        stop(take, now, StopReason.LEADER);
      }
      append(new JournalEntry.Closed());
      end("the leader has closed the room", CloseCode.CLOSED);
    }
  }

  private Member somebody(String playerId) {
    Member member = members.get(playerId);
    if (member == null) {
      throw new Refusal(
          ErrorCode.BAD_FIELD,
          "playerId",
          "expected the playerId of somebody in the room, found \"" + playerId + "\"");
    }
    return member;
  }

  private @Nullable Integer chairOf(Member member) {
    int dealtChair = List.copyOf(seats.keySet()).indexOf(member.id);
    return member.chair != null ? member.chair : dealtChair < 0 ? null : (Integer) (dealtChair + 1);
  }

  private void lead(Member member) {
    leaderId = member.id;
    decide();
    tellRoom();
  }

  private void wordGiven(RoomEvent.WordGiven given) {
    word = given.word();
    decide();
    tellRoom();
    send(given.connection(), new ServerMessage.Done(given.requestId(), revision));
  }

  // ------------------------------------------------------------------ material and dealing

  private Drill drillTitled(String title) {
    try {
      return drills.find(title);
    } catch (BadInput unknown) {
      throw new BadInput("title", unknown.says());
    }
  }

  private Drill chosenDrill() {
    Drill chosen = drill;
    if (chosen == null) {
      throw new Refusal(ErrorCode.WRONG_PHASE, null, "expected material to be chosen first");
    }
    return chosen;
  }

  private void undeal(String why) {
    dealt = null;
    seats = new LinkedHashMap<>();
    decide();
    enter(Phase.GATHERING, why);
    tellRoom();
  }

  private void deal(ClientMessage.Deal command) {
    Drill chosen = chosenDrill();
    List<Member> players =
        command.chairs().isEmpty() ? members.playersHere() : chairs(command.chairs());
    if (players.isEmpty()) {
      throw new Refusal(ErrorCode.WRONG_PHASE, null, "expected a player in the room, found none");
    }
    List<Stage> plan = stages == null ? chosen.stages() : stages;
    double beats = tempo == null ? chosen.tempo().start() : tempo;
    List<String> names = players.stream().map(player -> player.name.shown()).toList();
    DealMaker.Hand hand = dealer.deal(chosen, names, command.seed(), beats, plan);
    Map<String, String> seated = new LinkedHashMap<>();
    for (Member player : players) {
      seated.put(player.id, player.name.shown());
    }
    String dealId = id + "-d" + (dealCount + 1);
    ServerMessage.Dealt made =
        new ServerMessage.Dealt(
            revision + 1,
            dealId,
            chosen.title(),
            marked(hand.parts(), players),
            null,
            chosen.meter(),
            chosen.stepsPerBeat(),
            beats,
            chosen.swing(),
            hand.toleranceMillis(),
            plan,
            hand.says());
    checkSize(made);
    dealCount++;
    dealt = made;
    seats = seated;
    decide();
    enter(Phase.DEALT, "dealt by the leader");
    history.add(revision, made);
    for (Member member : members.all()) {
      send(member, dealtFor(member, made));
    }
    rosterChanged = true;
  }

  private List<Member> chairs(List<String> playerIds) {
    List<Member> players = new ArrayList<>();
    for (int i = 0; i < playerIds.size(); i++) {
      Member player = members.get(playerIds.get(i));
      if (player == null || players.contains(player)) {
        throw new BadInput(
            "chairs[" + i + "]",
            "expected the playerId of somebody here, each once, found \""
                + playerIds.get(i)
                + "\"");
      }
      players.add(player);
    }
    return players;
  }

  /** Stand-ins are marked in their parts, whoever dealt. */
  private static List<Part> marked(List<Part> parts, List<Member> players) {
    List<Part> marked = new ArrayList<>();
    for (Part part : parts) {
      boolean standIn =
          players.stream()
              .anyMatch(player -> player.standIn && player.name.shown().equals(part.player()));
      marked.add(Parts.with(part, part.uncertaintyMillis(), part.standIn() || standIn));
    }
    return marked;
  }

  private static void checkSize(ServerMessage.Dealt made) {
    int bytes = MessageCodec.write(made).length();
    int most = MessageCodec.MAX_SERVER_FRAME - 8_192; // the room's own words around it
    if (bytes > most) {
      throw new Refusal(
          ErrorCode.BAD_FIELD,
          "stages",
          "expected parts of at most " + most + " bytes in all, found " + bytes);
    }
  }

  private void checkDeal(String dealId) {
    ServerMessage.Dealt made = dealt;
    if (made == null || !made.dealId().equals(dealId)) {
      throw new Refusal(
          ErrorCode.NOT_ALLOWED, "dealId", "expected the last deal's, found \"" + dealId + "\"");
    }
  }

  // ------------------------------------------------------------------ the take

  private void start(ClientMessage.Start command) {
    ServerMessage.Dealt made = Objects.requireNonNull(dealt);
    long countIn = now + command.leadMillis() * 1_000L;
    StepGrid before =
        new StepGrid(made.meter(), made.stepsPerBeat(), made.tempo(), made.swing(), countIn);
    long start = before.instantOf((long) command.countInBars() * before.stepsPerBar());
    List<Part> parts = new ArrayList<>();
    for (Part part : made.parts()) {
      Member player = members.get(seatOf(part.player()));
      double uncertainty = player == null ? 0 : player.uncertaintyMillis();
      parts.add(Parts.with(part, uncertainty, part.standIn()));
    }
    Take written =
        new Take(
            Take.FORMAT,
            Take.VERSION,
            made.title(),
            made.meter(),
            made.tempo(),
            made.stepsPerBeat(),
            made.swing(),
            start,
            made.toleranceMillis(),
            made.stages(),
            parts,
            List.<Attack>of(),
            null,
            List.of());
    takeCount++;
    ServerMessage.Announced announced =
        new ServerMessage.Announced(
            id + "-t" + takeCount, made.dealId(), epoch, countIn, start, command.countInBars());
    TakeRun take = new TakeRun(announced, written, seats);
    takes.add(take);
    while (takes.size() > TAKES_REMEMBERED) {
      takes.remove(0);
    }
    lastReview = null;
    decide();
    append(new JournalEntry.TakeBegun(take.id(), written, take.seats));
    enter(Phase.COUNT_IN, "started by the leader");
    tellAllAndKeep(announced);
    for (String playerId : seats.keySet()) {
      Member player = members.get(playerId);
      if (player == null || !player.here()) {
        take.gone(playerId, countIn);
      }
    }
  }

  private TakeRun runningTake(String takeId) {
    TakeRun take = lastTake();
    if (take == null || !take.id().equals(takeId)) {
      throw new Refusal(
          ErrorCode.NOT_ALLOWED, "takeId", "expected the running take, found \"" + takeId + "\"");
    }
    return take;
  }

  private void replan(TakeRun take, ClientMessage.Replan command) {
    StepGrid grid = take.written.grid();
    double bars = (now - grid.startMicros()) / (grid.stepMicros() * grid.stepsPerBar());
    long earliest = (long) Math.floor(bars) + REPLAN_BARS_AHEAD;
    int most = take.written.plan().bars() - 1;
    if (command.fromBar() < earliest || command.fromBar() > most) {
      throw new BadInput(
          "fromBar",
          "expected "
              + Math.max(0, earliest)
              + " to "
              + most
              + ", two bars ahead at least, found "
              + command.fromBar());
    }
    List<Stage> whole = Replanning.stages(take.written, command.fromBar(), command.stages());
    ServerMessage.Replanned replanned =
        new ServerMessage.Replanned(take.id(), command.fromBar(), whole);
    take.replan(Replanning.with(take.written, whole), replanned);
    append(new JournalEntry.Replanned(take.id(), take.written));
    decide();
    tellAllAndKeep(replanned);
  }

  private String seatOf(String partName) {
    return seats.entrySet().stream()
        .filter(seat -> seat.getValue().equals(partName))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse("");
  }

  private TakeRun seatedTake(Member player, String takeId) {
    TakeRun take =
        take(takeId)
            .orElseThrow(
                () ->
                    new Refusal(
                        ErrorCode.NOT_ALLOWED,
                        "takeId",
                        "expected one of the last takes, found \"" + takeId + "\""));
    if (!take.seats.containsKey(player.id)) {
      throw new Refusal(ErrorCode.NOT_ALLOWED, null, "expected a player with a part in the take");
    }
    return take;
  }

  private void attacks(Member player, ClientMessage.Attacks message) {
    TakeRun take = seatedTake(player, message.takeId());
    if (message.epoch() != take.announced.epoch()) {
      throw new Refusal(
          ErrorCode.WRONG_EPOCH,
          "epoch",
          "expected the take's, " + take.announced.epoch() + ", found " + message.epoch());
    }
    SeqLedger ledger = take.reach(player.id).ledger;
    long last = message.firstSeq() + message.attacks().size() - 1;
    if (last > ledger.through() + TakeRun.FURTHEST_AHEAD) {
      throw new Refusal(
          ErrorCode.BAD_FIELD,
          "firstSeq",
          "expected at most "
              + (ledger.through() + TakeRun.FURTHEST_AHEAD)
              + ", "
              + TakeRun.FURTHEST_AHEAD
              + " beyond what is stored, found "
              + last);
    }
    append(new JournalEntry.Played(take.id(), player.id, message.firstSeq(), message.attacks()));
    if (take.running()) {
      relay(take, player, message, ledger);
      if (!player.clockSteady(epoch) && !take.id().equals(player.warnedOfClockIn)) {
        player.warnedOfClockIn = take.id();
        throw new Refusal(
            ErrorCode.UNCERTAIN_CLOCK,
            null,
            "attacks are kept, but no steady clock was reported for them");
      }
    }
  }

  /** Tells the others at once in a small room, in batches in a larger one; never scored from. */
  private void relay(TakeRun take, Member player, ClientMessage.Attacks message, SeqLedger ledger) {
    List<HeardAttack> fresh = new ArrayList<>();
    for (int i = 0; i < message.attacks().size(); i++) {
      long seq = message.firstSeq() + i;
      WireAttack attack = message.attacks().get(i);
      if (ledger.arrived(seq)) {
        fresh.add(new HeardAttack(player.id, seq, attack.micros(), null, null));
      }
    }
    if (fresh.isEmpty()) {
      return;
    }
    if (members.here() <= SMALL_ROOM) {
      List<Long> others = members.connectionsBut(player);
      if (!others.isEmpty()) {
        effects.add(new Effect.Send(others, new ServerMessage.Heard(take.id(), fresh)));
      }
      return;
    }
    fresh.forEach(attack -> heardWaiting.add(new WaitingAttack(player, attack)));
    heardDueMicros = Math.min(heardDueMicros, now + HEARD_BATCH_MICROS);
  }

  private void sendHeard() {
    heardDueMicros = NEVER;
    TakeRun take = lastTake();
    if (take != null) {
      for (Member member : members.all()) {
        List<HeardAttack> items =
            heardWaiting.stream()
                .filter(waiting -> waiting.player() != member)
                .map(WaitingAttack::attack)
                .limit(256)
                .toList();
        if (member.here() && !items.isEmpty()) {
          send(member, new ServerMessage.Heard(take.id(), items));
        }
      }
    }
    heardWaiting.clear();
  }

  private void stop(TakeRun take, long atMicros, StopReason reason) {
    ServerMessage.Stopped stopped = new ServerMessage.Stopped(take.id(), atMicros, reason);
    take.goneSince()
        .forEach(
            (playerId, since) -> {
              if (atMicros > since) {
                append(new JournalEntry.Away(take.id(), playerId, new Span(since, atMicros)));
              }
            });
    take.goneSince().clear();
    take.stop(stopped, now);
    append(new JournalEntry.TakeEnded(take.id(), atMicros, reason));
    decide();
    enter(Phase.REVIEW, "the take ended: " + reason.name().toLowerCase(java.util.Locale.ROOT));
    tellAllAndKeep(stopped);
  }

  // ------------------------------------------------------------------ answers from outside

  private void journaled(JournalEntry entry, RoomJournal.Outcome outcome) {
    if (outcome instanceof RoomJournal.Outcome.Fenced) {
      end("another host has opened this room", CloseCode.GOING);
      return;
    }
    if (!(entry instanceof JournalEntry.Played played)) {
      return;
    }
    Member player = members.get(played.playerId());
    if (outcome instanceof RoomJournal.Outcome.Refused refused) {
      if (player != null) {
        send(player, problem(ErrorCode.STORE_UNAVAILABLE, refused.why()));
      }
      return;
    }
    Optional<TakeRun> found = take(played.takeId());
    if (found.isEmpty()) {
      return;
    }
    TakeRun take = found.get();
    TakeRun.Reach reach = take.reach(played.playerId());
    long before = reach.ledger.through();
    reach.ledger.stored(played.firstSeq(), played.lastSeq());
    reach.toTell = true;
    if (reach.ledger.through() != before) {
      take.grown(now);
    }
    if (outcome instanceof RoomJournal.Outcome.Conflict conflict && player != null) {
      send(
          player,
          new ServerMessage.Problem(
              ErrorCode.SEQ_CONFLICT,
              "stored before with other content, which stays: " + conflict.seqs(),
              "firstSeq",
              null,
              false));
    }
  }

  private void storeChanged(boolean available) {
    if (storeAvailable && !available) {
      tellAll(
          problem(
              ErrorCode.STORE_UNAVAILABLE,
              "the host cannot write to its disk; keep what is not acknowledged"));
    }
    storeAvailable = available;
  }

  private void reviewed(RoomEvent.Reviewed reviewed) {
    Optional<TakeRun> found = take(reviewed.takeId());
    if (found.isEmpty()) {
      return;
    }
    TakeRun take = found.get();
    boolean provisional = take.reviewMade(now);
    append(new JournalEntry.Reviewed(take.id(), provisional, reviewed.review()));
    if (take == lastTake()) {
      lastReview = reviewed.review();
      lastReviewProvisional = provisional;
    }
    for (Member member : members.all()) {
      send(member, reviewFor(member, take, reviewed.review(), provisional));
    }
  }

  private void hostGoing() {
    TakeRun take = lastTake();
    if (take != null && take.running()) {
      stop(take, now, StopReason.HOST);
    }
    effects.add(new Effect.Append(new JournalEntry.State(state())));
    for (long connection : members.connections()) {
      send(connection, new ServerMessage.Goodbye("the host is going", 1_000L, null));
      close(connection, CloseCode.GOING, CloseCode.GOING.says());
    }
    over = true;
    effects.add(new Effect.Ended("the host is going"));
  }

  private void end(String why, CloseCode code) {
    for (long connection : members.connections()) {
      send(connection, new ServerMessage.Goodbye(why, null, null));
      close(connection, code, why);
    }
    over = true;
    effects.add(new Effect.Ended(why));
  }

  private void leftForGood(Member member) {
    for (TakeRun take : takes) {
      if (take.seats.containsKey(member.id)) {
        take.excuse(member.id, now);
      }
    }
    if (!member.id.equals(ownerId)) {
      members.remove(member);
    }
    change();
    rosterChanged = true;
  }

  // ------------------------------------------------------------------ what falls due

  private void due() {
    TakeRun take = lastTake();
    if (take != null && take.running()) {
      while (take.nextStage < take.written.stages().size()
          && now >= take.stageSaidMicros(take.nextStage)) {
        int stage = take.nextStage++;
        tellAll(
            new ServerMessage.StageNear(
                take.id(), stage, take.written.plan().fromBar(stage), take.stageMicros(stage)));
      }
      if (phase == Phase.COUNT_IN && now >= take.announced.startMicros()) {
        enter(Phase.TAKE, "the count-in is over");
      }
      if (now >= take.endMicros()) {
        stop(take, take.nominalEndMicros(), StopReason.FINISHED);
      }
    }
    if (now >= heardDueMicros) {
      sendHeard();
    }
    for (TakeRun each : takes) {
      tellStored(each);
      if (now >= each.reviewDueMicros()) {
        each.reviewAsked(now);
        effects.add(new Effect.MakeReview(each.id()));
      }
    }
    if (rosterChanged && now >= rosterSentMicros + ROSTER_MICROS) {
      rosterChanged = false;
      rosterSentMicros = now;
      tellAll(roster());
    }
    if (members.nobodyHere() && now >= emptyDueMicros && !over) {
      append(new JournalEntry.Closed());
      changed = false;
      over = true;
      effects.add(new Effect.Ended("empty for " + EMPTY_MICROS / 60_000_000 + " minutes"));
    }
  }

  private void tellStored(TakeRun take) {
    take.reaches()
        .forEach(
            (playerId, reach) -> {
              if (reach.toTell && now >= reach.toldMicros + STORED_MICROS) {
                reach.toTell = false;
                reach.toldMicros = now;
                Member player = members.get(playerId);
                if (player != null) {
                  send(player, new ServerMessage.Stored(take.id(), reach.ledger.through()));
                }
              }
            });
  }

  // ------------------------------------------------------------------ what is told

  private ServerMessage.Room roomFor(Member member) {
    TakeRun take = lastTake();
    ServerMessage.Dealt made = dealt;
    Drill chosen = drill;
    return new ServerMessage.Room(
        revision,
        phase,
        word,
        chosen == null ? null : chosen.title(),
        made == null ? null : dealtFor(member, made),
        take == null ? null : take.announced,
        take == null ? null : take.replanned,
        take == null ? null : take.stopped,
        take == null ? 0 : take.reach(member.id).ledger.through(),
        locked,
        note);
  }

  private ServerMessage.Dealt dealtFor(Member member, ServerMessage.Dealt made) {
    return new ServerMessage.Dealt(
        made.revision(),
        made.dealId(),
        made.title(),
        made.parts(),
        seats.get(member.id),
        made.meter(),
        made.stepsPerBeat(),
        made.tempo(),
        made.swing(),
        made.toleranceMillis(),
        made.stages(),
        made.says());
  }

  private ServerMessage.ReviewReady reviewFor(
      Member member, TakeRun take, JsonNode review, boolean provisional) {
    JsonNode view =
        leads(member)
            ? review
            : ReviewView.of(review, Objects.requireNonNullElse(take.seats.get(member.id), ""));
    return new ServerMessage.ReviewReady(take.id(), provisional, view);
  }

  private ServerMessage.Roster roster() {
    ServerMessage.Dealt made = dealt;
    List<ServerMessage.Person> people = new ArrayList<>();
    for (Member member : members.all()) {
      Integer chair = chairOf(member);
      people.add(
          new ServerMessage.Person(
              member.id,
              member.name.shown(),
              leads(member) ? Role.LEADER : member.role == Role.LEADER ? Role.PLAYER : member.role,
              chair == null ? null : chair.toString(),
              member.here(),
              member.clock == null ? null : member.clock.uncertaintyMicros(),
              member.soundUncertaintyMillis != null,
              made != null && made.dealId().equals(member.readyFor),
              member.standIn));
    }
    return new ServerMessage.Roster(revision, people);
  }

  /** Says the whole room to all; what was said before is not told again one by one. */
  private void tellRoom() {
    history.startAt(revision);
    for (Member member : members.all()) {
      if (member.here()) {
        send(member, roomFor(member));
      }
    }
    rosterChanged = true;
  }

  private void tellAllAndKeep(ServerMessage message) {
    history.add(revision, message);
    tellAll(message);
  }

  private void tellAll(ServerMessage message) {
    List<Long> all = members.connections();
    if (!all.isEmpty()) {
      effects.add(new Effect.Send(all, message));
    }
  }

  private void send(Member member, ServerMessage message) {
    if (member.connection != null) {
      send(member.connection.longValue(), message);
    }
  }

  private void send(long connection, ServerMessage message) {
    effects.add(new Effect.Send(List.of(connection), message));
  }

  private void refuse(long connection, Refusal refused, @Nullable Long requestId) {
    send(
        connection,
        new ServerMessage.Problem(
            refused.code(), refused.says(), refused.field(), requestId, false));
  }

  private static ServerMessage.Problem problem(ErrorCode code, String says) {
    return new ServerMessage.Problem(code, says, null, null, false);
  }

  private void close(long connection, CloseCode code, String says) {
    effects.add(new Effect.Close(connection, code, says));
  }

  private void append(JournalEntry entry) {
    effects.add(new Effect.Append(entry));
  }

  // ------------------------------------------------------------------ state

  private void enter(Phase next, String why) {
    if (phase != next) {
      effects.add(new Effect.PhaseChanged(phase, next, why));
      phase = next;
    }
  }

  private void change() {
    revision++;
    changed = true;
    rosterChanged = true;
  }

  /** A change that a leader's command must have seen. */
  private void decide() {
    change();
    decided = revision;
  }

  private @Nullable TakeRun lastTake() {
    return takes.isEmpty() ? null : takes.get(takes.size() - 1);
  }

  private Optional<TakeRun> take(String takeId) {
    return takes.stream().filter(take -> take.id().equals(takeId)).findFirst();
  }

  /** The room as it would be written down now. */
  public RoomState state() {
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
        note);
  }
}
