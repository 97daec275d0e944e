package thinclick.server.scoring;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.Stage;
import tools.jackson.databind.JsonNode;

/**
 * What a thinner click would do to one player.
 *
 * @param stage the stage that was not played: how many bars, and what would click in them
 * @param spreadMillis the spread to expect in a stage like the last, and where a single playing of
 *     it would fall; null for silence, which is foretold by its end
 * @param returnMillis how far off (root mean square) the player would be when the click returns;
 *     null for plans that go on clicking
 */
public record ForecastReview(Stage stage, Figure spreadMillis, Figure returnMillis) {
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  static ForecastReview fromJson(JsonNode node) {
    return Flat.read(ForecastReview.class, node);
  }

  @JsonValue
  Map<String, @Nullable Object> toJson() {
    return Flat.write(this);
  }
}
