package thinclick.protocol.message;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.Absent;
import thinclick.protocol.json.Check;
import tools.jackson.databind.annotation.JsonDeserialize;

/**
 * What a client may say: coming in and going here, the rest in {@link PreparingMessage}, {@link
 * TakeMessage}, {@link QuestionMessage} and {@link LeaderCommand}. The wire name of each message is
 * listed here and nowhere else.
 *
 * <p>Fields named {@code ...Micros} are room time, except {@code t1Micros}, which is the client's
 * own clock. {@code requestId} names a command so that its answer can be told apart.
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "type")
@JsonSubTypes({
  @JsonSubTypes.Type(value = ClientMessage.OpenRoom.class, name = "openRoom"),
  @JsonSubTypes.Type(value = ClientMessage.Join.class, name = "join"),
  @JsonSubTypes.Type(value = PreparingMessage.Clock.class, name = "clock"),
  @JsonSubTypes.Type(value = PreparingMessage.ClockReport.class, name = "clockReport"),
  @JsonSubTypes.Type(value = PreparingMessage.SoundCheck.class, name = "soundCheck"),
  @JsonSubTypes.Type(value = PreparingMessage.Ready.class, name = "ready"),
  @JsonSubTypes.Type(value = TakeMessage.Attacks.class, name = "attacks"),
  @JsonSubTypes.Type(value = TakeMessage.Lengths.class, name = "lengths"),
  @JsonSubTypes.Type(value = TakeMessage.PlayedThrough.class, name = "playedThrough"),
  @JsonSubTypes.Type(value = TakeMessage.HearsOthers.class, name = "hearing"),
  @JsonSubTypes.Type(value = TakeMessage.ClickInterrupted.class, name = "clickInterrupted"),
  @JsonSubTypes.Type(value = TakeMessage.Asleep.class, name = "asleep"),
  @JsonSubTypes.Type(value = ClientMessage.Leave.class, name = "leave"),
  @JsonSubTypes.Type(value = QuestionMessage.Browse.class, name = "browse"),
  @JsonSubTypes.Type(value = QuestionMessage.KeepTake.class, name = "keepTake"),
  @JsonSubTypes.Type(value = QuestionMessage.AskCourse.class, name = "askCourse"),
  @JsonSubTypes.Type(value = QuestionMessage.AskFewest.class, name = "askFewest"),
  @JsonSubTypes.Type(value = LeaderCommand.Material.class, name = "material"),
  @JsonSubTypes.Type(value = LeaderCommand.Plan.class, name = "plan"),
  @JsonSubTypes.Type(value = LeaderCommand.Deal.class, name = "deal"),
  @JsonSubTypes.Type(value = LeaderCommand.Start.class, name = "start"),
  @JsonSubTypes.Type(value = LeaderCommand.Stop.class, name = "stop"),
  @JsonSubTypes.Type(value = ClientMessage.Resync.class, name = "resync"),
  @JsonSubTypes.Type(value = ClientMessage.ClaimLead.class, name = "claimLead"),
  @JsonSubTypes.Type(value = LeaderCommand.Replan.class, name = "replan"),
  @JsonSubTypes.Type(value = LeaderCommand.Seat.class, name = "seat"),
  @JsonSubTypes.Type(value = LeaderCommand.StandIn.class, name = "standIn"),
  @JsonSubTypes.Type(value = LeaderCommand.PassLead.class, name = "passLead"),
  @JsonSubTypes.Type(value = LeaderCommand.Remove.class, name = "remove"),
  @JsonSubTypes.Type(value = LeaderCommand.Lock.class, name = "lock"),
  @JsonSubTypes.Type(value = LeaderCommand.Share.class, name = "share"),
  @JsonSubTypes.Type(value = LeaderCommand.NewWord.class, name = "newWord"),
  @JsonSubTypes.Type(value = LeaderCommand.Note.class, name = "note"),
  @JsonSubTypes.Type(value = LeaderCommand.CloseRoom.class, name = "closeRoom"),
})
@JsonInclude(JsonInclude.Include.NON_NULL)
public sealed interface ClientMessage
    permits ClientMessage.Command,
        ClientMessage.OpenRoom,
        ClientMessage.Join,
        ClientMessage.Resync,
        PreparingMessage,
        TakeMessage {
  /** Hands this message to the method of the handler that is made for it. */
  void to(Handler handler);

  /** One method a message, so that the compiler knows that none is forgotten. */
  interface Handler {
    void onOpenRoom(OpenRoom message);

    void onJoin(Join message);

    void onClock(PreparingMessage.Clock message);

    void onClockReport(PreparingMessage.ClockReport message);

    void onSoundCheck(PreparingMessage.SoundCheck message);

    void onReady(PreparingMessage.Ready message);

    void onAttacks(TakeMessage.Attacks message);

    void onLengths(TakeMessage.Lengths message);

    void onPlayedThrough(TakeMessage.PlayedThrough message);

    void onHearsOthers(TakeMessage.HearsOthers message);

    void onClickInterrupted(TakeMessage.ClickInterrupted message);

    void onAsleep(TakeMessage.Asleep message);

    void onLeave(Leave message);

    void onBrowse(QuestionMessage.Browse message);

    void onKeepTake(QuestionMessage.KeepTake message);

    void onAskCourse(QuestionMessage.AskCourse message);

    void onAskFewest(QuestionMessage.AskFewest message);

    void onMaterial(LeaderCommand.Material message);

    void onPlan(LeaderCommand.Plan message);

    void onDeal(LeaderCommand.Deal message);

    void onStart(LeaderCommand.Start message);

    void onStop(LeaderCommand.Stop message);

    void onResync(Resync message);

    void onClaimLead(ClaimLead message);

    void onReplan(LeaderCommand.Replan message);

    void onSeat(LeaderCommand.Seat message);

    void onStandIn(LeaderCommand.StandIn message);

    void onPassLead(LeaderCommand.PassLead message);

    void onRemove(LeaderCommand.Remove message);

    void onLock(LeaderCommand.Lock message);

    void onShare(LeaderCommand.Share message);

    void onNewWord(LeaderCommand.NewWord message);

    void onNote(LeaderCommand.Note message);

    void onCloseRoom(LeaderCommand.CloseRoom message);
  }

  /** A command, answered with {@code done} or with an error that carries the same requestId. */
  sealed interface Command extends ClientMessage
      permits LeaderCommand, QuestionMessage, Leave, ClaimLead {
    /** The sender's own number for this command. */
    long requestId();
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
}
