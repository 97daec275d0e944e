package thinclick.protocol.message;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.Stage;

/**
 * What the leader alone may say: material, the deal, the take and its click, who sits and stays. A
 * command is refused with {@code staleRevision} where the room has moved on since {@code revision}.
 */
public sealed interface LeaderCommand extends ClientMessage.Command {
  /** The room's revision that the leader saw. */
  long revision();

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
}
