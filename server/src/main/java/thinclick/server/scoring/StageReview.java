package thinclick.server.scoring;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.Meter;
import tools.jackson.databind.JsonNode;

/**
 * The ensemble in one stage of the click plan.
 *
 * @param fromBar its first bar, from 0
 * @param toBar the bar after its last
 * @param clicksPerBar clicks a bar on the average
 * @param hold placed of written over all players, percent
 * @param spreadMillis standard deviation about each player's own mean, pooled
 * @param driftPercent slope of the ensemble pulse against the written grid, percent; positive drags
 * @param written written attacks that count, all players
 * @param placed those that were placed
 */
public record StageReview(
    int fromBar,
    int toBar,
    double clicksPerBar,
    Figure hold,
    Figure spreadMillis,
    Figure driftPercent,
    int written,
    int placed) {
  /** The hold, in percent, at which a stage counts as held. */
  public static final double HELD_PERCENT = 80;

  /** True where the stage was held. */
  public boolean held() {
    return hold.known() && hold.get() >= HELD_PERCENT;
  }

  /** True where the click sounds so often that a band cannot drift from it. */
  public boolean heldByTheClick(Meter meter) {
    return clicksPerBar >= meter.beatsPerBar();
  }

  /** True where the interval of the hold leaves open whether the stage was held. */
  public boolean borderline() {
    return hold.interval() != null && hold.interval().contains(HELD_PERCENT);
  }

  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  static StageReview fromJson(JsonNode node) {
    return Flat.read(StageReview.class, node);
  }

  @JsonValue
  Map<String, @Nullable Object> toJson() {
    Map<String, @Nullable Object> written = Flat.write(this);
    written.put("borderline", borderline());
    return written;
  }
}
