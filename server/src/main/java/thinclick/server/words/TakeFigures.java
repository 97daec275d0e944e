package thinclick.server.words;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Review;

/**
 * What of a take is set beside another like it.
 *
 * @param band of everybody together
 * @param stages in their order
 * @param players by name, in the order of their chairs
 */
public record TakeFigures(Pair band, List<Pair> stages, Map<String, Pair> players) {
  /**
   * Of one of them.
   *
   * @param hold percent of what is written that was placed
   * @param spread unevenness, ms
   */
  public record Pair(Figure hold, Figure spread) {}

  public TakeFigures {
    stages = List.copyOf(stages);
  }

  /** Those of a review. */
  public static TakeFigures of(Review review) {
    Map<String, Pair> players = new LinkedHashMap<>();
    for (PlayerReview one : review.players()) {
      players.put(one.player(), new Pair(one.hold(), one.spreadMillis()));
    }
    return new TakeFigures(
        new Pair(review.ensemble().hold(), review.ensemble().spreadMillis()),
        review.stages().stream().map(one -> new Pair(one.hold(), one.spreadMillis())).toList(),
        players);
  }

  /** The same with nobody in it but these. */
  public TakeFigures only(Set<String> names) {
    Predicate<Map.Entry<String, Pair>> wanted = one -> names.contains(one.getKey());
    Map<String, Pair> kept = new LinkedHashMap<>();
    players.entrySet().stream()
        .filter(wanted)
        .forEach(one -> kept.put(one.getKey(), one.getValue()));
    return new TakeFigures(band, stages, kept);
  }
}
