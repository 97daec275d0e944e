package thinclick.server.scoring;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Take;

/**
 * A take's review with what was decided about each attack: the material of pictures, tables and
 * models.
 *
 * @param take what was scored
 * @param review the figures
 * @param players one a part, in order
 * @param pulseMillis the ensemble pulse at each step of the take, ms from step 0; null where it is
 *     not known
 */
public record Analysis(
    Take take, Review review, List<PlayerAnalysis> players, List<@Nullable Double> pulseMillis) {

  /**
   * One player.
   *
   * @param written the fate of every written attack of the part, in order
   * @param played what became of every attack, in the order of time
   * @param notChargedMillis the steady lean that was taken off before judging, positive late: what
   *     is placed lies within the tolerance of this distance from the pulse, and early and late are
   *     told from here
   */
  public record PlayerAnalysis(
      String player, List<Written> written, List<Played> played, double notChargedMillis) {}

  /**
   * A written attack.
   *
   * @param step where it is written
   * @param fate what became of it
   * @param displacement by how many whole steps the player was off there, positive late
   * @param attack index in the take of the attack that answered it; null where none did
   */
  public record Written(int step, Fate fate, int displacement, @Nullable Integer attack) {}

  /** What became of a written attack. */
  public enum Fate {
    /** Matched at home, within tolerance of the ensemble pulse. */
    PLACED,
    /** Matched at home, before the tolerance begins. */
    EARLY,
    /** Matched at home, after the tolerance ends. */
    LATE,
    /** Matched at home where no pulse is known to judge it by. */
    MATCHED,
    /** Matched at a displaced place. */
    DISPLACED,
    /** Nobody played it. */
    DROPPED,
    /** The player was away. */
    AWAY,
    /** The take was stopped before it. */
    AFTER_THE_STOP
  }

  /**
   * A played attack.
   *
   * @param attack its index in the take
   * @param kind what became of it
   * @param writtenStep the step it answered; null where it answered none
   * @param displacement the player's displacement there, in whole steps, positive late
   * @param asynchronyMillis its distance from the ensemble pulse after feel, positive late; null
   *     where it answered nothing or no pulse is known
   * @param pulseMillis where the ensemble pulse put the step it answered, ms from step 0
   */
  public record Played(
      int attack,
      Kind kind,
      @Nullable Integer writtenStep,
      int displacement,
      @Nullable Double asynchronyMillis,
      @Nullable Double pulseMillis) {}

  /** What became of a played attack. */
  public enum Kind {
    /** It answered a written attack. */
    MATCHED,
    /** Nobody wrote it. */
    ADDED,
    /** It came before the take began and answers nothing: somebody taps along the count-in. */
    COUNT_IN,
    /** It belongs to another attack: a chord's later note, a double trigger. */
    SET_ASIDE,
    /** Played where the part leaves the player free: neither right nor wrong. */
    FREE,
    /** The player was away, or the take had been stopped. */
    AWAY
  }

  public Analysis {
    players = List.copyOf(players);
  }

  /** The bar, from 0, in which the take was stopped, or at whose end; null where it was not. */
  public @Nullable Integer stoppedInBar() {
    Long end = take.endMicros();
    if (end == null) {
      return null;
    }
    double step = (end - take.startMicros()) / take.grid().stepMicros() - Sheet.STOPPED_AT;
    return (int) Math.max(0, Math.floor(step / take.grid().stepsPerBar()));
  }
}
