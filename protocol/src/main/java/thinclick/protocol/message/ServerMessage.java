package thinclick.protocol.message;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.Absent;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;
import tools.jackson.databind.annotation.JsonDeserialize;

/**
 * What a server may say; what it says of a take is in {@link TakeNews}, what one member asked for
 * in {@link AnswerMessage}. The wire name of each message is listed here and nowhere else. Fields
 * named {@code ...Micros} are room time, except {@code t1Micros}, which the client sent.
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "type")
@JsonSubTypes({
  @JsonSubTypes.Type(value = ServerMessage.Welcome.class, name = "welcome"),
  @JsonSubTypes.Type(value = ServerMessage.Room.class, name = "room"),
  @JsonSubTypes.Type(value = ServerMessage.Changes.class, name = "changes"),
  @JsonSubTypes.Type(value = ServerMessage.Roster.class, name = "roster"),
  @JsonSubTypes.Type(value = AnswerMessage.ClockAnswer.class, name = "clockAnswer"),
  @JsonSubTypes.Type(value = AnswerMessage.SoundCheckNoted.class, name = "soundCheckNoted"),
  @JsonSubTypes.Type(value = AnswerMessage.LibraryList.class, name = "library"),
  @JsonSubTypes.Type(value = AnswerMessage.WholeDrill.class, name = "drill"),
  @JsonSubTypes.Type(value = ServerMessage.Dealt.class, name = "dealt"),
  @JsonSubTypes.Type(value = TakeNews.Announced.class, name = "announced"),
  @JsonSubTypes.Type(value = TakeNews.StageNear.class, name = "stage"),
  @JsonSubTypes.Type(value = TakeNews.Replanned.class, name = "replanned"),
  @JsonSubTypes.Type(value = TakeNews.Heard.class, name = "heard"),
  @JsonSubTypes.Type(value = TakeNews.Stored.class, name = "stored"),
  @JsonSubTypes.Type(value = TakeNews.LengthsStored.class, name = "lengthsStored"),
  @JsonSubTypes.Type(value = TakeNews.Stopped.class, name = "stopped"),
  @JsonSubTypes.Type(value = TakeNews.ReviewReady.class, name = "review"),
  @JsonSubTypes.Type(value = AnswerMessage.KeptTake.class, name = "take"),
  @JsonSubTypes.Type(value = AnswerMessage.TakePiece.class, name = "takePiece"),
  @JsonSubTypes.Type(value = AnswerMessage.CourseSoFar.class, name = "course"),
  @JsonSubTypes.Type(value = AnswerMessage.Fewest.class, name = "fewestClicks"),
  @JsonSubTypes.Type(value = ServerMessage.Done.class, name = "done"),
  @JsonSubTypes.Type(value = ServerMessage.Problem.class, name = "error"),
  @JsonSubTypes.Type(value = ServerMessage.Goodbye.class, name = "goodbye"),
})
@JsonInclude(JsonInclude.Include.NON_NULL)
public sealed interface ServerMessage
    permits ServerMessage.Welcome,
        ServerMessage.Room,
        ServerMessage.Changes,
        ServerMessage.Roster,
        ServerMessage.Dealt,
        ServerMessage.Done,
        ServerMessage.Problem,
        ServerMessage.Goodbye,
        TakeNews,
        AnswerMessage {
  /** The answer to {@code join} and {@code openRoom}. */
  record Welcome(
      int version,
      String playerId,
      String token,
      @Nullable String leaderToken,
      String room,
      long epoch,
      long revision,
      Phase phase,
      long nowMicros,
      RoomLimits limits)
      implements ServerMessage {}

  /**
   * The whole state of the room as this client may see it.
   *
   * @param dealt what is dealt, or null
   * @param announced the running or last take, or null
   * @param replanned the take's click plan where it was changed, or null
   * @param stopped how that take ended, or null while it runs
   * @param throughSeq this player's stored attacks of that take, without a gap
   * @param locked true where nobody new is let in
   * @param note the leader's, or null
   */
  record Room(
      long revision,
      Phase phase,
      String word,
      @Nullable String title,
      @Nullable Dealt dealt,
      TakeNews.@Nullable Announced announced,
      TakeNews.@Nullable Replanned replanned,
      TakeNews.@Nullable Stopped stopped,
      long throughSeq,
      @JsonInclude(JsonInclude.Include.NON_DEFAULT)
          @JsonDeserialize(using = Absent.MeansFalse.class)
          boolean locked,
      @Nullable String note)
      implements ServerMessage {}

  /**
   * What has been said to all since a revision, each as its own message; a whole {@code room} is
   * sent instead where that is no longer known.
   */
  record Changes(long fromRevision, List<ServerMessage> events) implements ServerMessage {
    public Changes {
      events = Check.list("events", events);
      Check.size("events", events, 0, 256);
    }
  }

  /** Who is here. */
  record Roster(long revision, List<Person> players) implements ServerMessage {
    public Roster {
      players = Check.list("players", players);
    }
  }

  /**
   * One line of the roster; what the client reports is null until it has.
   *
   * @param roundTripMicros the median way from the client to the host and back
   * @param roundTripSpreadMicros how much that is above the shortest
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Person(
      String playerId,
      String name,
      ClientMessage.Role role,
      @Nullable String chair,
      boolean connected,
      @Nullable Long uncertaintyMicros,
      @Nullable Long roundTripMicros,
      @Nullable Long roundTripSpreadMicros,
      boolean soundCheck,
      boolean ready,
      @JsonInclude(JsonInclude.Include.NON_DEFAULT)
          @JsonDeserialize(using = Absent.MeansFalse.class)
          boolean standIn) {}

  /**
   * What everybody plays.
   *
   * @param parts all parts
   * @param own the receiver's own part's player name, or null for one without a part
   * @param says who comes in where, a sentence a part; the receiver's own is said to the receiver
   * @param drill the receiver's chair as it was dealt, in a drill of its own, from which the page
   *     is laid out; null for one without a part. A host keeps the whole drill here, a chair a part
   * @param saysToEach what a host keeps to say to each of the parts' players; nobody is sent it
   */
  record Dealt(
      long revision,
      String dealId,
      String title,
      List<Part> parts,
      @Nullable String own,
      Meter meter,
      int stepsPerBeat,
      double tempo,
      Swing swing,
      double toleranceMillis,
      List<Stage> stages,
      List<String> says,
      @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Drill drill,
      @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> saysToEach)
      implements ServerMessage {
    public Dealt {
      parts = Check.list("parts", parts);
      stages = Check.list("stages", stages);
      says = Check.listOrEmpty("says", says);
      saysToEach = Check.listOrEmpty("saysToEach", saysToEach);
    }

    /** A deal as it is sent. */
    public Dealt(
        long revision,
        String dealId,
        String title,
        List<Part> parts,
        @Nullable String own,
        Meter meter,
        int stepsPerBeat,
        double tempo,
        Swing swing,
        double toleranceMillis,
        List<Stage> stages,
        List<String> says,
        @Nullable Drill drill) {
      this(
          revision,
          dealId,
          title,
          parts,
          own,
          meter,
          stepsPerBeat,
          tempo,
          swing,
          toleranceMillis,
          stages,
          says,
          drill,
          List.of());
    }

    /**
     * As one receiver has it: the own part named and said to the receiver, of the whole drill the
     * own chair alone.
     */
    public Dealt seenBy(@Nullable String player) {
      Drill whole = drill;
      Drill chair = null;
      List<String> said = new ArrayList<>(says);
      for (int i = 0; i < parts.size(); i++) {
        boolean mine = parts.get(i).player().equals(player);
        if (mine && whole != null && i < whole.chairs().size()) {
          chair = whole.withChairs(List.of(whole.chairs().get(i)));
        }
        if (mine && i < said.size() && i < saysToEach.size()) {
          said.set(i, saysToEach.get(i));
        }
      }
      return but(parts, player, stages, said, chair, List.of());
    }

    /**
     * The same deal with other names.
     *
     * @param names of players, from the old ones
     * @param sentences what is said of them, from the old ones
     */
    public Dealt renamed(UnaryOperator<String> names, UnaryOperator<String> sentences) {
      String mine = own;
      return but(
          parts.stream().map(part -> part.renamed(names.apply(part.player()))).toList(),
          mine == null ? null : names.apply(mine),
          stages,
          says.stream().map(sentences).toList(),
          drill,
          saysToEach.stream().map(sentences).toList());
    }

    /** The same deal under another click plan. */
    public Dealt withStages(List<Stage> others) {
      return but(parts, own, others, says, drill, saysToEach);
    }

    private Dealt but(
        List<Part> parts,
        @Nullable String own,
        List<Stage> stages,
        List<String> says,
        @Nullable Drill drill,
        List<String> saysToEach) {
      return new Dealt(
          revision,
          dealId,
          title,
          parts,
          own,
          meter,
          stepsPerBeat,
          tempo,
          swing,
          toleranceMillis,
          stages,
          says,
          drill,
          saysToEach);
    }

    /** The written grid where bar 1 begins at that room time. */
    public StepGrid gridFrom(long startMicros) {
      return new StepGrid(meter, stepsPerBeat, tempo, swing, startMicros);
    }

    /** The take as it is written, before its first attack, where bar 1 begins at that room time. */
    public Take takeFrom(long startMicros) {
      return Take.written(title, gridFrom(startMicros), toleranceMillis, stages, parts);
    }
  }

  /** A command was carried out; the room's revision afterwards. */
  record Done(long requestId, long revision) implements ServerMessage {}

  /**
   * Something could not be done.
   *
   * @param takeId the take whose attacks, lengths or end were refused; null for anything else
   */
  record Problem(
      ErrorCode code,
      String says,
      @Nullable String field,
      @Nullable Long requestId,
      boolean closing,
      @Nullable String takeId)
      implements ServerMessage {
    /** What concerns no attack. */
    public Problem(
        ErrorCode code,
        String says,
        @Nullable String field,
        @Nullable Long requestId,
        boolean closing) {
      this(code, says, field, requestId, closing, null);
    }
  }

  /** The server closes the connection. */
  record Goodbye(String reason, @Nullable Long retryAfterMillis, @Nullable String node)
      implements ServerMessage {}

  /** What a client must keep to. */
  record RoomLimits(int maxPlayers, int maxFrameBytes, int attacksPerSecond, int inFlight) {}

  /** Where a room stands. */
  enum Phase {
    /** Players come in and material is chosen. */
    @JsonProperty("gathering")
    GATHERING,
    /** Parts are dealt and read. */
    @JsonProperty("dealt")
    DEALT,
    /** The count-in is announced or sounding. */
    @JsonProperty("countIn")
    COUNT_IN,
    /** The take runs. */
    @JsonProperty("take")
    TAKE,
    /** The take is over and its review is out or about to be. */
    @JsonProperty("review")
    REVIEW
  }
}
