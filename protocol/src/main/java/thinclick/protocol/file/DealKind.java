package thinclick.protocol.file;

import com.fasterxml.jackson.annotation.JsonProperty;

/** How a drill's material is shared out among the chairs. */
public enum DealKind {
  /** Each chair plays what is written for it. */
  @JsonProperty("asWritten")
  AS_WRITTEN,
  /** All play the first chair's cell from the same entry. */
  @JsonProperty("unison")
  UNISON,
  /** All play the first chair's cell, each entering later. */
  @JsonProperty("canon")
  CANON,
  /** The grid is shared out so that two attacks seldom coincide. */
  @JsonProperty("hocket")
  HOCKET,
  /** Each chair repeats a grouping of its own. */
  @JsonProperty("layers")
  LAYERS,
  /** One half calls, the other answers. */
  @JsonProperty("callAndAnswer")
  CALL_AND_ANSWER,
  /** The chairs take turns by period. */
  @JsonProperty("trading")
  TRADING,
  /** Chairs are filled by what their roles ask for. */
  @JsonProperty("roles")
  ROLES
}
