package thinclick.server.scoring;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/**
 * Why a figure cannot be known; written {@code "code: sentence"}.
 *
 * @param code the kind of reason, for programs
 * @param says one sentence for people, with its numbers
 */
public record Reason(Code code, String says) {
  /** The kinds of reason. */
  public enum Code {
    /** Nothing is written there. */
    NOTHING_WRITTEN("nothingWritten"),
    /** Fewer attacks than the figure needs. */
    TOO_FEW("tooFew"),
    /** Fewer beats than the figure needs. */
    TOO_SHORT("tooShort"),
    /** The tolerance is so wide against the written gaps that luck alone would place attacks. */
    CHANCE_WOULD_PLACE("chanceWouldPlace"),
    /** One player in silence has nobody to be together with. */
    NO_PULSE("noPulse"),
    /** A beat of three steps has no pairs to swing. */
    NO_PAIRS("noPairs"),
    /** The input carries no such measurement. */
    NOT_RECORDED("notRecorded"),
    /** All values are the same, as pads without dynamics send them. */
    CONSTANT("constant"),
    /** The estimate is less certain than the figure may be. */
    TOO_UNSURE("tooUnsure"),
    /** Somebody's attacks are missing from the take. */
    PLAYER_MISSING("playerMissing"),
    /** The click did not sound as planned. */
    CLICK_INTERRUPTED("clickInterrupted"),
    /** The fit did not settle. */
    UNSTABLE("unstable");

    private final String written;

    Code(String written) {
      this.written = written;
    }

    @Override
    public String toString() {
      return written;
    }
  }

  @JsonCreator
  static Reason fromJson(String written) {
    int colon = written.indexOf(": ");
    String code = colon < 0 ? written : written.substring(0, colon);
    for (Code known : Code.values()) {
      if (known.written.equals(code)) {
        return new Reason(known, colon < 0 ? "" : written.substring(colon + 2));
      }
    }
    return new Reason(Code.UNSTABLE, written);
  }

  @JsonValue
  @Override
  public String toString() {
    return code + ": " + says;
  }

  static Reason tooFew(String what, int needed, int found) {
    return new Reason(Code.TOO_FEW, what + " needs " + needed + ", here " + isOrAre(found));
  }

  private static String isOrAre(int found) {
    return found == 0 ? "are none" : found == 1 ? "is 1" : "are " + found;
  }
}
