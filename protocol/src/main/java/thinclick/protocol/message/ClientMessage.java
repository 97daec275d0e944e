package thinclick.protocol.message;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.json.Absent;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.Stage;
import tools.jackson.databind.annotation.JsonDeserialize;

/**
 * What a client may say. The wire name of each message is listed here and nowhere else.
 *
 * <p>Fields named {@code ...Micros} are room time, except {@code t1Micros}, which is the client's
 * own clock. {@code requestId} names a command so that its answer can be told apart.
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "type")
@JsonSubTypes({
  @JsonSubTypes.Type(value = ClientMessage.OpenRoom.class, name = "openRoom"),
  @JsonSubTypes.Type(value = ClientMessage.Join.class, name = "join"),
  @JsonSubTypes.Type(value = ClientMessage.Clock.class, name = "clock"),
  @JsonSubTypes.Type(value = ClientMessage.ClockReport.class, name = "clockReport"),
  @JsonSubTypes.Type(value = ClientMessage.SoundCheck.class, name = "soundCheck"),
  @JsonSubTypes.Type(value = ClientMessage.Ready.class, name = "ready"),
  @JsonSubTypes.Type(value = ClientMessage.Attacks.class, name = "attacks"),
  @JsonSubTypes.Type(value = ClientMessage.Lengths.class, name = "lengths"),
  @JsonSubTypes.Type(value = ClientMessage.PlayedThrough.class, name = "playedThrough"),
  @JsonSubTypes.Type(value = ClientMessage.HearsOthers.class, name = "hearing"),
  @JsonSubTypes.Type(value = ClientMessage.ClickInterrupted.class, name = "clickInterrupted"),
  @JsonSubTypes.Type(value = ClientMessage.Asleep.class, name = "asleep"),
  @JsonSubTypes.Type(value = ClientMessage.Leave.class, name = "leave"),
  @JsonSubTypes.Type(value = ClientMessage.Browse.class, name = "browse"),
  @JsonSubTypes.Type(value = ClientMessage.KeepTake.class, name = "keepTake"),
  @JsonSubTypes.Type(value = ClientMessage.AskCourse.class, name = "askCourse"),
  @JsonSubTypes.Type(value = ClientMessage.AskFewest.class, name = "askFewest"),
  @JsonSubTypes.Type(value = ClientMessage.Material.class, name = "material"),
  @JsonSubTypes.Type(value = ClientMessage.Plan.class, name = "plan"),
  @JsonSubTypes.Type(value = ClientMessage.Deal.class, name = "deal"),
  @JsonSubTypes.Type(value = ClientMessage.Start.class, name = "start"),
  @JsonSubTypes.Type(value = ClientMessage.Stop.class, name = "stop"),
  @JsonSubTypes.Type(value = ClientMessage.Resync.class, name = "resync"),
  @JsonSubTypes.Type(value = ClientMessage.ClaimLead.class, name = "claimLead"),
  @JsonSubTypes.Type(value = ClientMessage.Replan.class, name = "replan"),
  @JsonSubTypes.Type(value = ClientMessage.Seat.class, name = "seat"),
  @JsonSubTypes.Type(value = ClientMessage.StandIn.class, name = "standIn"),
  @JsonSubTypes.Type(value = ClientMessage.PassLead.class, name = "passLead"),
  @JsonSubTypes.Type(value = ClientMessage.Remove.class, name = "remove"),
  @JsonSubTypes.Type(value = ClientMessage.Lock.class, name = "lock"),
  @JsonSubTypes.Type(value = ClientMessage.Share.class, name = "share"),
  @JsonSubTypes.Type(value = ClientMessage.NewWord.class, name = "newWord"),
  @JsonSubTypes.Type(value = ClientMessage.Note.class, name = "note"),
  @JsonSubTypes.Type(value = ClientMessage.CloseRoom.class, name = "closeRoom"),
})
@JsonInclude(JsonInclude.Include.NON_NULL)
public sealed interface ClientMessage {

  /** Hands this message to the method of the handler that is made for it. */
  void to(Handler handler);

  /** One method a message, so that the compiler knows that none is forgotten. */
  interface Handler {
    void onOpenRoom(OpenRoom message);

    void onJoin(Join message);

    void onClock(Clock message);

    void onClockReport(ClockReport message);

    void onSoundCheck(SoundCheck message);

    void onReady(Ready message);

    void onAttacks(Attacks message);

    void onLengths(Lengths message);

    void onPlayedThrough(PlayedThrough message);

    void onHearsOthers(HearsOthers message);

    void onClickInterrupted(ClickInterrupted message);

    void onAsleep(Asleep message);

    void onLeave(Leave message);

    void onBrowse(Browse message);

    void onKeepTake(KeepTake message);

    void onAskCourse(AskCourse message);

    void onAskFewest(AskFewest message);

    void onMaterial(Material message);

    void onPlan(Plan message);

    void onDeal(Deal message);

    void onStart(Start message);

    void onStop(Stop message);

    void onResync(Resync message);

    void onClaimLead(ClaimLead message);

    void onReplan(Replan message);

    void onSeat(Seat message);

    void onStandIn(StandIn message);

    void onPassLead(PassLead message);

    void onRemove(Remove message);

    void onLock(Lock message);

    void onShare(Share message);

    void onNewWord(NewWord message);

    void onNote(Note message);

    void onCloseRoom(CloseRoom message);
  }

  /** A command, answered with {@code done} or with an error that carries the same requestId. */
  sealed interface Command extends ClientMessage {
    /** The sender's own number for this command. */
    long requestId();
  }

  /**
   * A command of the leader's, refused with {@code staleRevision} where the room has moved on since
   * {@code revision}.
   */
  sealed interface LeaderCommand extends Command {
    /** The room's revision that the leader saw. */
    long revision();
  }

  /** Opens a room and joins it as its leader; the first frame. */
  record OpenRoom(int versionMin, int versionMax, @Nullable String hostKey, String name)
      implements ClientMessage {
    public OpenRoom {
      Limits.versions(versionMin, versionMax);
      Limits.text("hostKey", hostKey, 128);
      Check.length("name", Check.present("name", name), 1, 128);
    }

    @Override
    public void to(Handler handler) {
      handler.onOpenRoom(this);
    }
  }

  /**
   * Joins a room by its word; the first frame, within 5 s.
   *
   * @param token proves a returning player; with the role leader it is the leader token
   * @param revision the last one seen, for a returning player
   * @param standIn true for a simulated player, who is always marked as one
   */
  record Join(
      int versionMin,
      int versionMax,
      String room,
      String name,
      Role role,
      @Nullable String token,
      @Nullable Long revision,
      @JsonInclude(JsonInclude.Include.NON_DEFAULT)
          @JsonDeserialize(using = Absent.MeansFalse.class)
          boolean standIn)
      implements ClientMessage {
    public Join {
      Limits.versions(versionMin, versionMax);
      Check.length("room", Check.present("room", room), 1, 32);
      Check.length("name", Check.present("name", name), 1, 128);
      Check.present("role", role);
      Limits.text("token", token, 64);
      if (revision != null) {
        Check.range("revision", revision.longValue(), 0L, Check.MAX_SAFE);
      }
    }

    @Override
    public void to(Handler handler) {
      handler.onJoin(this);
    }
  }

  /** One exchange of the clock: sent at {@code t1Micros} of the client's own clock. */
  record Clock(long id, long t1Micros) implements ClientMessage {
    public Clock {
      Check.range("id", id, 0L, Check.MAX_SAFE);
      Check.range("t1Micros", t1Micros, 0L, Check.MAX_SAFE);
    }

    @Override
    public void to(Handler handler) {
      handler.onClock(this);
    }
  }

  /**
   * How well the client knows room time.
   *
   * @param roundTripMicros the median way there and back over the exchanges kept; null where a
   *     client does not say
   * @param roundTripSpreadMicros how much that is above the shortest; null where a client does not
   *     say
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record ClockReport(
      long epoch,
      ClockState state,
      long uncertaintyMicros,
      long spreadMicros,
      double skewPpm,
      @Nullable Long roundTripMicros,
      @Nullable Long roundTripSpreadMicros)
      implements ClientMessage {
    public ClockReport {
      Check.range("epoch", epoch, 0L, Check.MAX_SAFE);
      Check.present("state", state);
      Check.range("uncertaintyMicros", uncertaintyMicros, 0L, Check.MAX_SAFE);
      Check.range("spreadMicros", spreadMicros, 0L, Check.MAX_SAFE);
      Check.range("skewPpm", skewPpm, -500.0, 500.0);
      if (roundTripMicros != null) {
        Check.range("roundTripMicros", roundTripMicros.longValue(), 0L, Check.MAX_SAFE);
      }
      if (roundTripSpreadMicros != null) {
        Check.range("roundTripSpreadMicros", roundTripSpreadMicros.longValue(), 0L, Check.MAX_SAFE);
      }
    }

    @Override
    public void to(Handler handler) {
      handler.onClockReport(this);
    }
  }

  /**
   * The chair's measured delay; the client corrects its stamps by it, the server never does.
   *
   * @param taps how many it rests on, 8 to 200; 0 where an earlier check is void
   */
  record SoundCheck(InputKind input, double latencyMillis, double uncertaintyMillis, int taps)
      implements ClientMessage {
    public SoundCheck {
      Check.present("input", input);
      Check.range("latencyMillis", latencyMillis, -350.0, 500.0);
      Check.range("uncertaintyMillis", uncertaintyMillis, 0.0, 250.0);
      Check.range("taps", taps, taps == 0 ? 0L : 8L, 200);
    }

    /** What holds where nothing was measured, or no longer holds. */
    public static SoundCheck unmeasured(InputKind input) {
      return new SoundCheck(input, 0, UNMEASURED_MILLIS, 0);
    }

    /** How far a chair's delay may be from nothing where it was not measured, milliseconds. */
    public static final double UNMEASURED_MILLIS = 60;

    @Override
    public void to(Handler handler) {
      handler.onSoundCheck(this);
    }
  }

  /** A player has read the dealt part and is ready, or is not. */
  record Ready(String dealId, boolean ready) implements ClientMessage {
    public Ready {
      Limits.id("dealId", dealId);
    }

    @Override
    public void to(Handler handler) {
      handler.onReady(this);
    }
  }

  /**
   * Attacks of one take; numbered from 1 for each player and take, across reconnects.
   *
   * @param firstSeq the number of the first one here; the others follow it
   */
  record Attacks(String takeId, long epoch, long firstSeq, List<WireAttack> attacks)
      implements ClientMessage {
    public Attacks {
      Limits.id("takeId", takeId);
      Check.range("epoch", epoch, 0L, Check.MAX_SAFE);
      Check.range("firstSeq", firstSeq, 1L, Check.MAX_SAFE);
      attacks = Check.list("attacks", attacks);
      Check.size("attacks", attacks, 1, 64);
    }

    @Override
    public void to(Handler handler) {
      handler.onAttacks(this);
    }
  }

  /**
   * How long attacks were held, which is known only once they are released; of attacks that the
   * server has said are stored. The first length of an attack stays.
   */
  record Lengths(String takeId, long epoch, List<AttackLength> items) implements ClientMessage {
    public Lengths {
      Limits.id("takeId", takeId);
      Check.range("epoch", epoch, 0L, Check.MAX_SAFE);
      items = Check.list("items", items);
      Check.size("items", items, 1, 64);
    }

    @Override
    public void to(Handler handler) {
      handler.onLengths(this);
    }
  }

  /** The player has sent everything that was played, up to {@code lastSeq} (0: nothing). */
  record PlayedThrough(String takeId, long lastSeq) implements ClientMessage {
    public PlayedThrough {
      Limits.id("takeId", takeId);
      Check.range("lastSeq", lastSeq, 0L, Check.MAX_SAFE);
    }

    @Override
    public void to(Handler handler) {
      handler.onPlayedThrough(this);
    }
  }

  /**
   * How this player hears the others, from the next take on; while a take runs, of that take too,
   * so that a delay measured in it is written into it.
   *
   * @param delayMillis from another's attack to this player's ear, one way, buffers included; 0
   *     where nothing was measured
   */
  record HearsOthers(Hearing.Mode mode, double delayMillis) implements ClientMessage {
    public HearsOthers {
      Check.present("mode", mode);
      Check.range("delayMillis", delayMillis, 0.0, 10_000.0);
    }

    @Override
    public void to(Handler handler) {
      handler.onHearsOthers(this);
    }
  }

  /** The click did not sound as planned at this player's computer between two room times. */
  record ClickInterrupted(String takeId, long epoch, long fromMicros, long toMicros)
      implements ClientMessage {
    public ClickInterrupted {
      Limits.id("takeId", takeId);
      Check.range("epoch", epoch, 0L, Check.MAX_SAFE);
      Check.range("fromMicros", fromMicros, 0L, Check.MAX_SAFE);
      Check.range("toMicros", toMicros, fromMicros, Check.MAX_SAFE);
    }

    @Override
    public void to(Handler handler) {
      handler.onClickInterrupted(this);
    }
  }

  /**
   * This player's computer slept in a take: what is written there was not left out.
   *
   * @param fromMicros when it last ran; room time of the take's epoch
   * @param toMicros when it ran again
   */
  record Asleep(String takeId, long epoch, long fromMicros, long toMicros)
      implements ClientMessage {
    public Asleep {
      Limits.id("takeId", takeId);
      Check.range("epoch", epoch, 0L, Check.MAX_SAFE);
      Check.range("fromMicros", fromMicros, 0L, Check.MAX_SAFE);
      Check.range("toMicros", toMicros, fromMicros, Check.MAX_SAFE);
    }

    @Override
    public void to(Handler handler) {
      handler.onAsleep(this);
    }
  }

  /** Leaves the room for good. */
  record Leave(long requestId) implements Command {
    public Leave {
      Limits.request(requestId);
    }

    @Override
    public void to(Handler handler) {
      handler.onLeave(this);
    }
  }

  /** Asks what there is to rehearse, or for one drill whole by its title. */
  record Browse(long requestId, @Nullable String title) implements Command {
    public Browse {
      Limits.request(requestId);
      Limits.text("title", title, 200);
    }

    @Override
    public void to(Handler handler) {
      handler.onBrowse(this);
    }
  }

  /** Asks for a take as a file: whole where the leader shares it, else the own part alone. */
  record KeepTake(long requestId, String takeId) implements Command {
    public KeepTake {
      Limits.request(requestId);
      Limits.id("takeId", takeId);
    }

    @Override
    public void to(Handler handler) {
      handler.onKeepTake(this);
    }
  }

  /**
   * Asks how it went up to a take, at its drill, tempo and click plan: the own course, and for the
   * leader the band's.
   */
  record AskCourse(long requestId, String takeId) implements Command {
    public AskCourse {
      Limits.request(requestId);
      Limits.id("takeId", takeId);
    }

    @Override
    public void to(Handler handler) {
      handler.onAskCourse(this);
    }
  }

  /** Asks for the fewest clicks that this band has held at a drill and tempo; the leader's. */
  record AskFewest(long requestId, String title, double tempo) implements Command {
    public AskFewest {
      Limits.request(requestId);
      Check.length("title", Check.present("title", title), 1, 200);
      Check.range("tempo", tempo, 30.0, 320.0);
    }

    @Override
    public void to(Handler handler) {
      handler.onAskFewest(this);
    }
  }

  /** Chooses a drill: whole, or by the title of one the host has. */
  record Material(long requestId, long revision, @Nullable Drill drill, @Nullable String title)
      implements LeaderCommand {
    public Material {
      Limits.request(requestId);
      Limits.revision(revision);
      Limits.text("title", title, 200);
      if ((drill == null) == (title == null)) {
        throw new BadInput(
            "", "expected either drill or title, found " + (drill == null ? "neither" : "both"));
      }
    }

    @Override
    public void to(Handler handler) {
      handler.onMaterial(this);
    }
  }

  /** Replaces the drill's click plan and, where given, its tempo. */
  record Plan(long requestId, long revision, List<Stage> stages, @Nullable Double tempo)
      implements LeaderCommand {
    public Plan {
      Limits.request(requestId);
      Limits.revision(revision);
      stages = Check.list("stages", stages);
      Check.size("stages", stages, 1, 32);
      Check.range("tempo", tempo, 30, 320);
    }

    @Override
    public void to(Handler handler) {
      handler.onPlan(this);
    }
  }

  /**
   * Deals the material to the players.
   *
   * @param seed makes the deal repeatable
   * @param chairs playerIds in the order of chairs; empty: in the order of joining
   * @param levels at which level somebody plays, 1 to 10, by playerId, so that the figure is fitted
   *     to it; who is not in it is dealt what is written
   */
  record Deal(
      long requestId,
      long revision,
      long seed,
      @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> chairs,
      @JsonInclude(JsonInclude.Include.NON_EMPTY) Map<String, Integer> levels)
      implements LeaderCommand {
    /** A deal of what is written. */
    public Deal(long requestId, long revision, long seed, List<String> chairs) {
      this(requestId, revision, seed, chairs, Map.of());
    }

    public Deal {
      Limits.request(requestId);
      Limits.revision(revision);
      Check.range("seed", seed, 0L, Check.MAX_SAFE);
      chairs = Check.listOrEmpty("chairs", chairs);
      Check.size("chairs", chairs, 0, 24);
      levels = levels == null ? Map.of() : levels;
      Check.size("levels", levels.keySet(), 0, 24);
      levels.forEach(
          (player, level) -> Check.range("levels." + player, Check.present(player, level), 1L, 10));
      levels = Map.copyOf(levels);
    }

    @Override
    public void to(Handler handler) {
      handler.onDeal(this);
    }
  }

  /** Announces a take of what was dealt. */
  record Start(long requestId, long revision, String dealId, int leadMillis, int countInBars)
      implements LeaderCommand {
    public Start {
      Limits.request(requestId);
      Limits.revision(revision);
      Limits.id("dealId", dealId);
      Check.range("leadMillis", leadMillis, 2_000L, 15_000);
      Check.range("countInBars", countInBars, 1L, 4);
    }

    @Override
    public void to(Handler handler) {
      handler.onStart(this);
    }
  }

  /** Ends the running take early. */
  record Stop(long requestId, long revision, String takeId) implements LeaderCommand {
    public Stop {
      Limits.request(requestId);
      Limits.revision(revision);
      Limits.id("takeId", takeId);
    }

    @Override
    public void to(Handler handler) {
      handler.onStop(this);
    }
  }

  /** Asks for what has changed since a revision, after something was missed. */
  record Resync(long revision) implements ClientMessage {
    public Resync {
      Limits.revision(revision);
    }

    @Override
    public void to(Handler handler) {
      handler.onResync(this);
    }
  }

  /** Takes the lead where the leader has been gone for 30 s. */
  record ClaimLead(long requestId) implements Command {
    public ClaimLead {
      Limits.request(requestId);
    }

    @Override
    public void to(Handler handler) {
      handler.onClaimLead(this);
    }
  }

  /**
   * Changes the click of the running take from a bar on: thinning by result, or rescue.
   *
   * @param fromBar counted from 0, at least two bars ahead
   * @param stages from that bar to the end of the take, as many bars as are left
   */
  record Replan(long requestId, long revision, String takeId, int fromBar, List<Stage> stages)
      implements LeaderCommand {
    public Replan {
      Limits.request(requestId);
      Limits.revision(revision);
      Limits.id("takeId", takeId);
      Check.range("fromBar", fromBar, 0L, 1_000_000);
      stages = Check.list("stages", stages);
      Check.size("stages", stages, 1, 32);
    }

    @Override
    public void to(Handler handler) {
      handler.onReplan(this);
    }
  }

  /** Gives a player a chair, from the next deal on; whoever had it is without one. */
  record Seat(long requestId, long revision, String playerId, int chair) implements LeaderCommand {
    public Seat {
      Limits.request(requestId);
      Limits.revision(revision);
      Limits.id("playerId", playerId);
      Check.range("chair", chair, 1L, 24);
    }

    @Override
    public void to(Handler handler) {
      handler.onSeat(this);
    }
  }

  /** Gives an absent player's chair to a stand-in that is in the room, from the next deal on. */
  record StandIn(long requestId, long revision, String playerId) implements LeaderCommand {
    public StandIn {
      Limits.request(requestId);
      Limits.revision(revision);
      Limits.id("playerId", playerId);
    }

    @Override
    public void to(Handler handler) {
      handler.onStandIn(this);
    }
  }

  /** Gives the lead to somebody who is here. */
  record PassLead(long requestId, long revision, String playerId) implements LeaderCommand {
    public PassLead {
      Limits.request(requestId);
      Limits.revision(revision);
      Limits.id("playerId", playerId);
    }

    @Override
    public void to(Handler handler) {
      handler.onPassLead(this);
    }
  }

  /** Sends somebody out of the room; the token is void. */
  record Remove(long requestId, long revision, String playerId) implements LeaderCommand {
    public Remove {
      Limits.request(requestId);
      Limits.revision(revision);
      Limits.id("playerId", playerId);
    }

    @Override
    public void to(Handler handler) {
      handler.onRemove(this);
    }
  }

  /** Lets nobody new in, or lets them in again; who has a token always may. */
  record Lock(long requestId, long revision, boolean value) implements LeaderCommand {
    public Lock {
      Limits.request(requestId);
      Limits.revision(revision);
    }

    @Override
    public void to(Handler handler) {
      handler.onLock(this);
    }
  }

  /**
   * Lets players hear each other's judgements during a take, or no longer; a take of two shares
   * them until it is said otherwise.
   */
  record Share(long requestId, long revision, boolean value) implements LeaderCommand {
    public Share {
      Limits.request(requestId);
      Limits.revision(revision);
    }

    @Override
    public void to(Handler handler) {
      handler.onShare(this);
    }
  }

  /** Gives the room another word; the old one leads nowhere from then on. */
  record NewWord(long requestId, long revision) implements LeaderCommand {
    public NewWord {
      Limits.request(requestId);
      Limits.revision(revision);
    }

    @Override
    public void to(Handler handler) {
      handler.onNewWord(this);
    }
  }

  /**
   * Writes a note, or wipes it out with an empty one. A note to everybody takes the place of what
   * was written to one.
   *
   * @param playerId to whom alone; null for everybody
   */
  record Note(long requestId, long revision, String value, @Nullable String playerId)
      implements LeaderCommand {
    public Note {
      Limits.request(requestId);
      Limits.revision(revision);
      Check.length("value", Check.present("value", value), 0, 500);
      if (playerId != null) {
        Limits.id("playerId", playerId);
      }
    }

    @Override
    public void to(Handler handler) {
      handler.onNote(this);
    }
  }

  /** Closes the room for everybody. */
  record CloseRoom(long requestId, long revision) implements LeaderCommand {
    public CloseRoom {
      Limits.request(requestId);
      Limits.revision(revision);
    }

    @Override
    public void to(Handler handler) {
      handler.onCloseRoom(this);
    }
  }

  /**
   * How long one attack was held.
   *
   * @param seq the attack's number
   */
  record AttackLength(long seq, double lengthMillis) {
    public AttackLength {
      Check.range("seq", seq, 1L, Check.MAX_SAFE);
      Check.range("lengthMillis", lengthMillis, 0.0, 3_600_000.0);
    }
  }

  /** One attack on its way; its player is the sender. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record WireAttack(
      long micros,
      @Nullable Long rawMicros,
      @Nullable Integer velocity,
      @Nullable Integer pitch,
      @Nullable Double lengthMillis,
      @Nullable Double lateByMillis,
      @JsonInclude(JsonInclude.Include.NON_DEFAULT)
          @JsonDeserialize(using = Absent.MeansFalse.class)
          boolean unsure) {
    public WireAttack {
      Check.range("micros", micros, 0L, Check.MAX_SAFE);
      if (rawMicros != null) {
        Check.range("rawMicros", rawMicros.longValue(), 0L, Check.MAX_SAFE);
      }
      Check.range("velocity", velocity, 1, 127);
      Check.range("pitch", pitch, 0, 127);
      Check.range("lengthMillis", lengthMillis, 0, 3_600_000);
      Check.range("lateByMillis", lateByMillis, 0, 60_000);
    }

    /** The same attack, held for so long; null where that is not known. */
    public WireAttack withLength(@Nullable Double heldMillis) {
      return new WireAttack(micros, rawMicros, velocity, pitch, heldMillis, lateByMillis, unsure);
    }

    /** A tap without pitch or length. */
    public static WireAttack tap(long micros) {
      return new WireAttack(micros, null, null, null, null, null, false);
    }
  }

  /** Who somebody is in a room. */
  enum Role {
    /** Runs the rehearsal; plays as well where dealt a part. */
    @JsonProperty("leader")
    LEADER,
    /** Plays a part. */
    @JsonProperty("player")
    PLAYER,
    /** Only watches. */
    @JsonProperty("listener")
    LISTENER
  }

  /** How far the client's estimate of room time has come. */
  enum ClockState {
    /** Too few exchanges yet. */
    @JsonProperty("finding")
    FINDING,
    /** Fit for playing. */
    @JsonProperty("steady")
    STEADY,
    /** The estimate no longer holds. */
    @JsonProperty("lost")
    LOST
  }

  /** What a player plays on. */
  enum InputKind {
    /** A computer's keys. */
    @JsonProperty("keys")
    KEYS,
    /** MIDI notes. */
    @JsonProperty("midi")
    MIDI,
    /** A touch screen or mouse. */
    @JsonProperty("touch")
    TOUCH
  }
}
