package thinclick.server.scoring;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * One player in one stage.
 *
 * @param written written attacks that count
 * @param placed those within tolerance of the ensemble pulse, undisplaced
 * @param dropped those nobody played
 * @param added attacks played there that nobody wrote
 * @param hold placed of written, percent
 * @param leanMillis mean asynchrony after feel, negative early
 * @param spreadMillis standard deviation of asynchrony
 */
public record PlayerStage(
    int written,
    int placed,
    int dropped,
    int added,
    Figure hold,
    Figure leanMillis,
    Figure spreadMillis) {
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  static PlayerStage fromJson(JsonNode node) {
    return Flat.read(PlayerStage.class, node);
  }

  @JsonValue
  Map<String, @Nullable Object> toJson() {
    return Flat.write(this);
  }
}
