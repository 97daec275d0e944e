package thinclick.server.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.DealtFigure;
import thinclick.server.dealing.Ability;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.words.Outcome;

/**
 * The level that somebody stands at, and what says so: the newest take with a verdict and up to two
 * before it with the same figure at the same level.
 *
 * @param level 1 to 10
 * @param played the level of the parts it rests on
 * @param holdPercent placed of written in those takes, percent
 * @param takes how many they are, 1 to 3
 */
public record Standing(int level, int played, double holdPercent, int takes) {
  /** Under this there is no verdict. */
  private static final int FEWEST_ATTACKS = Outcome.FEWEST_ATTACKS;

  private static final int MOST_TAKES = 3;

  private record Heard(int level, @Nullable DealtFigure figure, int written, int placed) {}

  /**
   * From somebody's takes.
   *
   * @param takes the oldest first
   */
  static Optional<Standing> of(List<ClassTake> takes, String key) {
    List<Heard> heard = new ArrayList<>();
    for (int i = takes.size() - 1; i >= 0 && heard.size() < MOST_TAKES; i--) {
      ClassTake.Seat seat = takes.get(i).seat(key).orElse(null);
      PlayerReview review = takes.get(i).review(key);
      Integer level = seat == null ? null : seat.level();
      if (seat == null
          || level == null
          || review == null
          || !review.hold().known()
          || review.written() < FEWEST_ATTACKS) {
        continue;
      }
      if (!heard.isEmpty()
          && (heard.get(0).level() != level || heard.get(0).figure() != seat.figure())) {
        break;
      }
      heard.add(new Heard(level, seat.figure(), review.written(), review.placed()));
    }
    if (heard.isEmpty()) {
      return Optional.empty();
    }
    int written = heard.stream().mapToInt(Heard::written).sum();
    int placed = heard.stream().mapToInt(Heard::placed).sum();
    double hold = 100.0 * placed / written;
    int played = heard.get(0).level();
    return Optional.of(new Standing(Ability.levelAfter(played, hold), played, hold, heard.size()));
  }
}
