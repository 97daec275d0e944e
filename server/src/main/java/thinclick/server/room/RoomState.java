package thinclick.server.room;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.message.TakeNews.Replanned;
import thinclick.protocol.message.TakeNews.Stopped;
import thinclick.protocol.music.Stage;

/**
 * A room written down, so that a restarted host can go on with it. What belongs to a connection
 * (clock reports, who is here) is not in it.
 *
 * @param revision counts every change
 * @param decided the revision of the last change that a leader's command must have seen
 * @param ownerId the player who opened the room
 * @param ownerTokenHash proves the lead
 * @param leaderId who leads now
 * @param counted how many players, deals and takes there have been
 * @param drill the material, or null before it is chosen
 * @param stages the click plan in force, or null for the drill's own
 * @param tempo beats a minute, or null for the drill's own
 * @param dealt what is dealt, without a receiver, or null
 * @param seats the name in the dealt parts by playerId
 * @param takes the last few, the newest last
 * @param locked true where nobody new is let in
 * @param share whether players hear each other's judgements, or null until the leader says
 * @param note the leader's, or null
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record RoomState(
    String roomId,
    String word,
    long revision,
    long decided,
    Phase phase,
    String ownerId,
    String ownerTokenHash,
    String leaderId,
    Counted counted,
    List<MemberState> members,
    @Nullable Drill drill,
    @Nullable List<Stage> stages,
    @Nullable Double tempo,
    @Nullable Dealt dealt,
    Map<String, String> seats,
    List<TakeState> takes,
    boolean locked,
    @Nullable Boolean share,
    @Nullable String note) {

  /** Numbers given out so far. */
  public record Counted(long members, long deals, long takes) {}

  /** A player, leader or listener; {@code chair} from 1 where the leader has given one. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record MemberState(
      String playerId,
      String name,
      String tokenHash,
      Role role,
      boolean standIn,
      @Nullable Integer chair,
      @Nullable Double latencyMillis,
      @Nullable Double soundUncertaintyMillis,
      @Nullable Hearing hearing) {}

  /**
   * A take that was announced.
   *
   * @param written the take without attacks
   * @param seats the name in the take by playerId
   * @param replanned how its click was changed last, or null
   * @param stopped how it ended, or null while it runs
   * @param playedThrough the last number by playerId, of those who have said it
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record TakeState(
      Announced announced,
      Take written,
      Map<String, String> seats,
      @Nullable Replanned replanned,
      @Nullable Stopped stopped,
      Map<String, Long> playedThrough) {}
}
