package thinclick.server.scoring;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Take;

/**
 * Judges attacks as they come, from what came before alone, and takes a judgement back where later
 * attacks prove it wrong. The cost of an attack does not depend on how many came before it. The
 * review after the take does not come from here: it sees everything and never depends on the order
 * of arrival.
 *
 * <p>Not safe for use by several threads at once: a room is owned by one.
 */
public final class LiveScorer {
  /** What an attack was, so far as can be told. */
  public enum Kind {
    /** Within tolerance of the ensemble pulse. */
    TOGETHER,
    /** Before it. */
    EARLY,
    /** After it. */
    LATE,
    /** Answers a written attack by a player who sits off the part by whole steps. */
    DISPLACED,
    /** Answers nothing that is written. */
    ADDED,
    /** Belongs to the attack before it: a chord's later note, a double trigger. */
    SET_ASIDE,
    /** Played where the part leaves the player free. */
    FREE
  }

  /**
   * One judgement.
   *
   * @param player whose attack
   * @param micros its room time
   * @param kind what it was
   * @param writtenStep the step it answers; null where it answers none
   * @param displacement the player's displacement in steps, positive late
   * @param asynchronyMillis its distance from the ensemble pulse, positive late; null where it
   *     answers nothing
   */
  public record Judgement(
      String player,
      long micros,
      Kind kind,
      @Nullable Integer writtenStep,
      int displacement,
      @Nullable Double asynchronyMillis) {}

  private final Sheet sheet;
  private final LiveCourse course;
  private final Map<String, LiveFollower> followers = new LinkedHashMap<>();

  /** A take before its first attack: its parts and its plan. */
  public LiveScorer(Take dealt) {
    sheet = new Sheet(dealt.withAttacks(List.of()));
    Places places = Places.nominal(sheet, dealt.swing().ratio(), 8 * sheet.stepsPerBar);
    double tolerance = Tolerance.of(sheet, dealt.swing().ratio()).millis();
    course = new LiveCourse(sheet);
    for (Chair chair : sheet.chairs) {
      followers.put(chair.part.player(), new LiveFollower(sheet, places, chair, tolerance));
    }
  }

  /** Judges an attack without a pitch. */
  public List<Judgement> judge(String player, long micros) {
    return judge(player, micros, null);
  }

  /**
   * Judges one attack. Attacks of one player come in the order of time; one that comes late is
   * judged by what is known by then.
   *
   * @param player who played it; a name without a part is refused
   * @param micros its room time
   * @param pitch which note it was; null for a tap, or where it is not known
   * @return its judgement first, then those of the player's earlier attacks, the last eight at
   *     most, that are now judged otherwise
   */
  public List<Judgement> judge(String player, long micros, @Nullable Integer pitch) {
    LiveFollower follower = followers.get(player);
    if (follower == null) {
      throw new IllegalArgumentException("expected a player with a part, found " + player);
    }
    double at = sheet.millis(micros);
    if (follower.aside(at, pitch)) {
      return List.of(new Judgement(player, micros, Kind.SET_ASIDE, null, 0, null));
    }
    double step = course.stepAt(at - follower.lean());
    if (follower.free(step)) {
      return List.of(new Judgement(player, micros, Kind.FREE, null, 0, null));
    }
    List<Judgement> told = follower.hear(micros, at, course, pulse(follower, step));
    settleTogether(step);
    return List.copyOf(told);
  }

  /** The course and the mean lean of those who have played; a single player's is the click. */
  private double pulse(LiveFollower asked, double step) {
    double sum = 0;
    double weights = 0;
    int heard = 0;
    for (LiveFollower one : followers.values()) {
      if (one.heard > 0) {
        sum += one.chair.part.pulseWeight() * one.lean();
        weights += one.chair.part.pulseWeight();
        heard++;
      }
    }
    if (heard < 2) {
      double own = course.at(step) + asked.lean();
      return followers.size() > 1
          ? own
          : Math.max(-Judged.SOLO_LEAN, Math.min(Judged.SOLO_LEAN, own));
    }
    return course.at(step) + (weights > 0 ? sum / weights : 0);
  }

  /** Where all who play sit off by the same shift in silence, the band has moved, nobody is off. */
  private void settleTogether(double step) {
    int shared = 0;
    int players = 0;
    for (LiveFollower one : followers.values()) {
      if (one.heard > 0) {
        if (one.shift() == 0 || (shared != 0 && one.shift() != shared)) {
          return;
        }
        shared = one.shift();
        players++;
      }
    }
    int at = (int) Math.max(0, Math.min(sheet.steps - 1, step));
    if (players < 2 || sheet.stageClicks[sheet.stageOf(at)]) {
      return;
    }
    course.move(shared * sheet.stepMillis);
    followers.values().forEach(LiveFollower::settleAtHome);
  }
}
