package thinclick.protocol.message;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.Absent;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.Stage;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.annotation.JsonDeserialize;

/** What is said of a take, from its announcement to its review. Times are room time. */
public sealed interface TakeNews extends ServerMessage {
  /** A take will start: the count-in and bar 1 as room times. */
  record Announced(
      String takeId,
      String dealId,
      long epoch,
      long countInMicros,
      long startMicros,
      int countInBars)
      implements TakeNews {}

  /** A stage is about to begin, said at least a bar ahead; informative. */
  record StageNear(String takeId, int stage, int bar, long atMicros) implements TakeNews {}

  /** The take's whole click plan as it now stands, changed from a bar on. */
  record Replanned(String takeId, int fromBar, List<Stage> stages) implements TakeNews {
    public Replanned {
      stages = Check.list("stages", stages);
    }
  }

  /** What others played; may be dropped under load, never scored from. */
  record Heard(String takeId, List<HeardAttack> items) implements TakeNews {
    public Heard {
      items = Check.list("items", items);
    }
  }

  /**
   * One attack of another's, with its judgement where the receiver may know it.
   *
   * @param asynchronyMillis its distance from the ensemble pulse, positive late; null where it
   *     answers nothing that is written, or is not shared
   * @param judgement {@code together}, {@code early}, {@code late}, {@code displaced}, {@code
   *     added}, {@code setAside} or {@code free}; null where it is not shared, save that {@code
   *     setAside} is told to everybody: it is the same attack as one before it
   * @param again true where the attack was heard before and is judged otherwise now
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record HeardAttack(
      String playerId,
      long seq,
      long micros,
      @Nullable Double asynchronyMillis,
      @Nullable String judgement,
      @JsonInclude(JsonInclude.Include.NON_DEFAULT)
          @JsonDeserialize(using = Absent.MeansFalse.class)
          boolean again) {
    /** What {@link #judgement} says of a chord's later note and of a double trigger. */
    public static final String SET_ASIDE = "setAside";

    /** The attack alone; that it is none of its own is no judgement and stays. */
    public HeardAttack withoutJudgement() {
      return new HeardAttack(
          playerId, seq, micros, null, partOfAnother() ? SET_ASIDE : null, again);
    }

    /** True where it is the same attack as one before it. */
    public boolean partOfAnother() {
      return SET_ASIDE.equals(judgement);
    }
  }

  /**
   * Everything up to {@code throughSeq} of the receiver's attacks is on the disk, without a gap.
   */
  record Stored(String takeId, long throughSeq) implements TakeNews {}

  /** The lengths of these attacks of the receiver's are on the disk. */
  record LengthsStored(String takeId, List<Long> seqs) implements TakeNews {
    public LengthsStored {
      seqs = Check.list("seqs", seqs);
      Check.size("seqs", seqs, 1, 64);
    }
  }

  /** The take is over. */
  record Stopped(String takeId, long atMicros, StopReason reason) implements TakeNews {}

  /**
   * The review, as design fixes its fields.
   *
   * @param provisional true while attacks may still come
   */
  record ReviewReady(String takeId, boolean provisional, JsonNode review) implements TakeNews {}

  /** Why a take ended. */
  enum StopReason {
    /** It ran to its end. */
    @JsonProperty("finished")
    FINISHED,
    /** The leader stopped it. */
    @JsonProperty("leader")
    LEADER,
    /** The host is going. */
    @JsonProperty("host")
    HOST,
    /** The host's clock jumped. */
    @JsonProperty("clock")
    CLOCK,
    /** The host died in the take and came back. */
    @JsonProperty("interrupted")
    INTERRUPTED
  }
}
