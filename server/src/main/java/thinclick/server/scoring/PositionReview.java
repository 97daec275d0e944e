package thinclick.server.scoring;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * A player's figures on the beats alone, or off them alone.
 *
 * @param written written attacks at such places
 * @param placed those of them that were placed
 * @param leanMillis mean asynchrony after feel, negative early
 * @param spreadMillis standard deviation of asynchrony
 */
public record PositionReview(int written, int placed, Figure leanMillis, Figure spreadMillis) {
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  static PositionReview fromJson(JsonNode node) {
    return Flat.read(PositionReview.class, node);
  }

  @JsonValue
  Map<String, @Nullable Object> toJson() {
    return Flat.write(this);
  }
}
