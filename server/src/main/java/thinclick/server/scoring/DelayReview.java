package thinclick.server.scoring;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * What hearing each other late cost and what the players did, over the longest stretch without a
 * click; ms a beat, positive slowing.
 *
 * @param fromStep the first step of the stretch
 * @param toStep the step after its last
 * @param measuredMillis how the tempo moved
 * @param networkMillis what the delays make of the way these players follow each other
 * @param playersMillis the remainder, the players' own part
 * @param toldApart false where the two cannot be separated: then nobody is charged
 */
public record DelayReview(
    int fromStep,
    int toStep,
    double measuredMillis,
    Figure networkMillis,
    Figure playersMillis,
    boolean toldApart) {
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  static DelayReview fromJson(JsonNode node) {
    return Flat.read(DelayReview.class, node);
  }

  @JsonValue
  Map<String, @Nullable Object> toJson() {
    return Flat.write(this);
  }
}
