package thinclick.server.scoring;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * A click that came back after at least two silent bars.
 *
 * @param bar the bar of the click, from 0
 * @param step the step of the click
 * @param silentBars how many whole bars had been silent
 * @param errorMillis where the ensemble pulse, foretold from before the click, stood against it;
 *     positive when the ensemble is late
 */
public record Return(int bar, int step, int silentBars, Figure errorMillis) {
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  static Return fromJson(JsonNode node) {
    return Flat.read(Return.class, node);
  }

  @JsonValue
  Map<String, @Nullable Object> toJson() {
    return Flat.write(this);
  }
}
