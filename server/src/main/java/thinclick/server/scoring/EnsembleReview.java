package thinclick.server.scoring;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * All players together.
 *
 * @param hold placed of written over all players and stages, percent
 * @param heldThrough the stage with the fewest clicks a bar that was held, among equals the last;
 *     -1 for none
 * @param returns where the band stood when a click came back after silence; empty for none, null
 *     for unknown
 * @param returnsReason why returns are null
 * @param gains how much player i follows player j, 0-1, a row a player; null where unknown
 * @param gainsInterval the interval of each gain; null where unknown
 * @param gainsReason why gains are null
 * @param pairs who of each two players leads the other; empty where gains are null
 * @param offClickMillis mean of pulse minus click over the clicks, positive late
 * @param offClickSpreadMillis standard deviation of the same
 * @param spreadMillis standard deviation about each player's own mean, pooled over all stages
 * @param swingRatio long to short as the ensemble played it
 * @param delay what hearing each other late cost; null where nobody did, or where no stretch
 *     without a click is long enough to tell
 */
public record EnsembleReview(
    Figure hold,
    int heldThrough,
    @Nullable List<Return> returns,
    @Nullable Reason returnsReason,
    @Nullable List<List<@Nullable Double>> gains,
    @Nullable List<List<@Nullable Interval>> gainsInterval,
    @Nullable Reason gainsReason,
    List<PairReview> pairs,
    Figure offClickMillis,
    Figure offClickSpreadMillis,
    Figure spreadMillis,
    Figure swingRatio,
    @Nullable DelayReview delay) {
  public EnsembleReview {
    pairs = pairs == null ? List.of() : List.copyOf(pairs);
  }

  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  static EnsembleReview fromJson(JsonNode node) {
    return Flat.read(EnsembleReview.class, node);
  }

  @JsonValue
  Map<String, @Nullable Object> toJson() {
    return Flat.write(this);
  }
}
