package thinclick.client.sound;

import com.fasterxml.jackson.annotation.JsonProperty;

/** How a count-in sounds. */
public enum CountIn {
  /** Every beat is clicked. */
  @JsonProperty("clicked")
  CLICKED,
  /** Every beat is clicked and its number is spoken. */
  @JsonProperty("spoken")
  SPOKEN
}
