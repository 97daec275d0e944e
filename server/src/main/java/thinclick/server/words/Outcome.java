package thinclick.server.words;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.Displacement;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Reason;
import thinclick.server.scoring.Return;
import thinclick.server.scoring.Review;

/**
 * What of one take the next rung hangs on. Whoever was not heard is not in it: that tells of the
 * sound or the keys, and nothing of the figure.
 *
 * @param written written attacks that count, all players who were heard
 * @param holdPercent placed of written; null where it was not judged
 * @param upbeatPercent the same off the beats; null where nothing is written there
 * @param clickCameBack true where a click came back after silence and could be judged
 * @param returnOfBeat the largest error at a return, as a share of a beat; null where no click came
 *     back, or where no error is known
 * @param displacedShare the share of players who were off by whole steps for more than four bars
 * @param lostShare the share of players who were off for more than four bars or held under half
 */
public record Outcome(
    int written,
    @Nullable Double holdPercent,
    @Nullable Double upbeatPercent,
    boolean clickCameBack,
    @Nullable Double returnOfBeat,
    double displacedShare,
    double lostShare) {
  /** More bars than these off by whole steps, and a player was lost. */
  static final int LOST_BARS = 4;

  /** Under this hold a player was lost, percent. */
  private static final double LOST_HOLD = 50;

  /** Under so many written attacks there is no verdict, whoever asks for one. */
  public static final int FEWEST_ATTACKS = 12;

  /**
   * The outcome of a review; stand-ins hold nobody back and carry nobody up, unless nobody else
   * played.
   */
  public static Outcome of(Review review) {
    List<PlayerReview> people = heard(review);
    int written = people.stream().mapToInt(PlayerReview::written).sum();
    int upbeats = people.stream().mapToInt(player -> player.offbeat().written()).sum();
    int upbeatsPlaced = people.stream().mapToInt(player -> player.offbeat().placed()).sum();
    int placed = people.stream().mapToInt(PlayerReview::placed).sum();
    boolean judged = review.ensemble().hold().known() && written > 0;
    long lost = people.stream().filter(Outcome::lost).count();
    return new Outcome(
        written,
        judged ? (Double) (100.0 * placed / written) : null,
        judged && upbeats > 0 ? (Double) (100.0 * upbeatsPlaced / upbeats) : null,
        clickCameBack(review),
        largestReturn(review),
        people.isEmpty() ? 0 : (double) out(review).size() / people.size(),
        people.isEmpty() ? 0 : (double) lost / people.size());
  }

  private static List<PlayerReview> heard(Review review) {
    return judged(review).stream().filter(player -> !notHeard(player)).toList();
  }

  /** True where attacks are written for a player and nothing at all was played. */
  static boolean notHeard(PlayerReview player) {
    return player.written() > 0 && player.dropped() == player.written() && player.added() == 0;
  }

  /** Who was not heard; a stand-in says nothing of anybody's keys. */
  public static List<String> notHeard(Review review) {
    return review.players().stream()
        .filter(player -> !player.standIn() && notHeard(player))
        .map(PlayerReview::player)
        .toList();
  }

  /** True where there was something to play and nothing was heard from anybody judged. */
  public static boolean nobodyHeard(Review review) {
    List<PlayerReview> asked =
        judged(review).stream().filter(player -> player.written() > 0).toList();
    return !asked.isEmpty() && asked.stream().allMatch(Outcome::notHeard);
  }

  /** Whose attacks a verdict hangs on: people's; stand-ins' where they played by themselves. */
  private static List<PlayerReview> judged(Review review) {
    List<PlayerReview> people =
        review.players().stream().filter(player -> !player.standIn()).toList();
    return people.isEmpty() ? review.players() : people;
  }

  /** True where too little is written for a verdict. */
  public boolean tooFew() {
    return written < FEWEST_ATTACKS;
  }

  /** Who was off by whole steps for more than four bars; a stand-in's slips are made on purpose. */
  public static List<String> out(Review review) {
    return review.players().stream()
        .filter(player -> !player.standIn() && displacedBars(player) > LOST_BARS)
        .map(PlayerReview::player)
        .toList();
  }

  private static boolean lost(PlayerReview player) {
    return displacedBars(player) > LOST_BARS
        || (player.written() > 0 && 100.0 * player.placed() / player.written() < LOST_HOLD);
  }

  private static int displacedBars(PlayerReview player) {
    return player.displacements().stream()
        .mapToInt((Displacement one) -> one.toBar() - one.fromBar())
        .sum();
  }

  /**
   * One player alone in silence has no pulse that could come back late: there is nothing to ask.
   */
  private static boolean clickCameBack(Review review) {
    List<Return> returns = review.ensemble().returns();
    if (returns == null) {
      Reason reason = review.ensemble().returnsReason();
      return reason == null || reason.code() != Reason.Code.NO_PULSE;
    }
    return !returns.isEmpty();
  }

  private static @Nullable Double largestReturn(Review review) {
    List<Return> returns = review.ensemble().returns();
    if (returns == null || returns.stream().noneMatch(back -> back.errorMillis().known())) {
      return null;
    }
    double beatMillis = 60_000 / review.tempo();
    return returns.stream()
        .filter(back -> back.errorMillis().known())
        .mapToDouble(back -> Math.abs(back.errorMillis().get()) / beatMillis)
        .max()
        .orElse(0);
  }
}
