package thinclick.server.scoring;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * One free span. What was played in it is counted and not judged; what is judged is how the player
 * came back after it, and whether the others' pulse held meanwhile.
 *
 * @param player who played freely
 * @param fromBar the span's first bar, from 0
 * @param toBar the bar after its last
 * @param attacks how many attacks were played in it
 * @param returnBar the bar of the first written attack after it, from 0; null where none follows or
 *     none counts
 * @param returnSteps by how many steps the player was off there, positive late, 0 at home; null
 *     where nothing of the first bar that is written was played
 * @param returnMillis mean asynchrony of what was played of that bar, after feel and after the
 *     steady lean that the chair's uncertainty allows, positive late
 * @param onPulse true where that lies within tolerance of the ensemble pulse; null where it is not
 *     known
 * @param driftPercent slope of the ensemble pulse against the written grid through the span, by
 *     those who played what is written; positive drags
 */
public record FreeReview(
    String player,
    int fromBar,
    int toBar,
    int attacks,
    @Nullable Integer returnBar,
    @Nullable Integer returnSteps,
    Figure returnMillis,
    @Nullable Boolean onPulse,
    Figure driftPercent) {
  /** True where the player came back on the written place and on the pulse. */
  public boolean cameHome() {
    return returnSteps != null && returnSteps == 0 && Boolean.TRUE.equals(onPulse);
  }

  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  static FreeReview fromJson(JsonNode node) {
    return Flat.read(FreeReview.class, node);
  }

  @JsonValue
  Map<String, @Nullable Object> toJson() {
    return Flat.write(this);
  }
}
