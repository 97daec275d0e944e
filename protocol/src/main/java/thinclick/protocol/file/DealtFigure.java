package thinclick.protocol.file;

import com.fasterxml.jackson.annotation.JsonProperty;

/** What a deal made of the figure that the drill writes for a chair. */
public enum DealtFigure {
  /** Its heavier half. */
  @JsonProperty("easier")
  EASIER,
  /** With pickups. */
  @JsonProperty("harder")
  HARDER
}
