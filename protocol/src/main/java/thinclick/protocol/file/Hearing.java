package thinclick.protocol.file;

import com.fasterxml.jackson.annotation.JsonProperty;
import thinclick.protocol.json.Check;

/**
 * How a player heard the others during the take.
 *
 * @param mode which of the three ways
 * @param delayMillis from another's attack to this player's ear, one way, buffers included
 */
public record Hearing(Mode mode, double delayMillis) {
  /** The ways a far partner can be heard. */
  public enum Mode {
    /** Nothing of the others is heard. */
    @JsonProperty("notAtAll")
    NOT_AT_ALL,
    /** Each attack sounds when it arrives, late by the delay. */
    @JsonProperty("asItArrives")
    AS_IT_ARRIVES,
    /** The partner's written part sounds on the ensemble pulse. */
    @JsonProperty("inTime")
    IN_TIME
  }

  public Hearing {
    Check.present("mode", mode);
    Check.range("delayMillis", delayMillis, 0.0, 10_000.0);
  }
}
