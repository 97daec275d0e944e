package thinclick.server.scoring;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * Two players against each other.
 *
 * @param first one of them
 * @param second the other
 * @param difference how much more the first follows the second than the second the first
 * @param leader who leads; null for "cannot tell": named only where the interval leaves out 0 and
 *     the difference is at least a tenth
 */
public record PairReview(String first, String second, Figure difference, @Nullable String leader) {
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  static PairReview fromJson(JsonNode node) {
    return Flat.read(PairReview.class, node);
  }

  @JsonValue
  Map<String, @Nullable Object> toJson() {
    return Flat.write(this);
  }
}
