package thinclick.protocol.message;

import com.fasterxml.jackson.annotation.JsonProperty;

/** What can go wrong with one message while the connection stays. */
public enum ErrorCode {
  @JsonProperty("badField")
  BAD_FIELD,
  @JsonProperty("unknownType")
  UNKNOWN_TYPE,
  @JsonProperty("wrongPhase")
  WRONG_PHASE,
  @JsonProperty("notAllowed")
  NOT_ALLOWED,
  @JsonProperty("staleRevision")
  STALE_REVISION,
  @JsonProperty("nameTaken")
  NAME_TAKEN,
  @JsonProperty("roomFull")
  ROOM_FULL,
  @JsonProperty("wrongEpoch")
  WRONG_EPOCH,
  @JsonProperty("seqConflict")
  SEQ_CONFLICT,
  @JsonProperty("storeUnavailable")
  STORE_UNAVAILABLE,
  @JsonProperty("uncertainClock")
  UNCERTAIN_CLOCK
}
