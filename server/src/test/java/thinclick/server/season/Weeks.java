package thinclick.server.season;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Random;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.server.dealing.Dealer;
import thinclick.server.dealing.Dealing;
import thinclick.server.history.Entry;
import thinclick.server.material.Stock;
import thinclick.server.scoring.Review;
import thinclick.server.scoring.Scorer;

/** Takes of an invented class, dealt from the stock and played with so much spread by each. */
public final class Weeks {
  public static final Instant FIRST = Instant.parse("2026-09-01T10:00:00Z");

  private static final List<Stage> PLAN =
      List.of(Stage.ofBeats(4, 1, 1, 2, 3, 4), Stage.ofBeats(4, 1, 1, 3), Stage.ofBeats(4, 1, 1));

  private Weeks() {}

  /** So many weeks after the first. */
  public static Instant week(int weeks) {
    return FIRST.plus(Duration.ofDays(7L * weeks));
  }

  /**
   * A take.
   *
   * @param spreads milliseconds by player, in the order of chairs
   * @param levels that the deal is fitted to, by player
   */
  public static Take take(
      String drillTitle, long seed, Map<String, Double> spreads, Map<String, Integer> levels) {
    Drill drill = Stock.find(drillTitle);
    List<String> players = List.copyOf(spreads.keySet());
    double tempo = drill.tempo().start();
    Dealing dealing = Dealer.dealFitted(drill, players, 7, tempo, PLAN, levels);
    long start = 3_000_000;
    StepGrid grid = new StepGrid(drill.meter(), drill.stepsPerBeat(), tempo, drill.swing(), start);
    Random random = new Random(seed);
    List<Attack> attacks = new ArrayList<>();
    for (Part part : dealing.parts()) {
      for (int step : part.attackSteps()) {
        double off = random.nextGaussian() * 1_000 * spreads.get(part.player());
        attacks.add(Attack.tap(part.player(), Math.round(grid.microsAt(step) + off)));
      }
    }
    attacks.sort(Comparator.comparingLong(Attack::micros));
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        drill.title(),
        drill.meter(),
        tempo,
        drill.stepsPerBeat(),
        drill.swing(),
        start,
        dealing.toleranceMillis(),
        PLAN,
        dealing.parts(),
        attacks,
        null,
        List.of());
  }

  static ClassTake played(String id, Instant when, Take take) {
    Review review = Scorer.review(take);
    return ClassTake.of(
        new Entry(id, when, Entry.Key.of(take), review), take, title -> OptionalInt.empty());
  }
}
