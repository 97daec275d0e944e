package thinclick.protocol.music;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/**
 * How a pair of steps is shared: the long to short ratio, set or as the band plays it.
 *
 * @param ratio long over short, 1 straight, 2 triplet; 1 where the band decides
 * @param asTheBandPlays true where the ratio is estimated from the ensemble; clicks stay straight
 */
public record Swing(double ratio, boolean asTheBandPlays) {
  /** Even steps. */
  public static final Swing STRAIGHT = new Swing(1.0, false);

  /** Written {@code "band"}: estimated from the ensemble. */
  public static final Swing BAND = new Swing(1.0, true);

  public Swing {
    Check.range("swing", ratio, 1.0, 4.0);
    if (asTheBandPlays && ratio != 1.0) {
      throw new BadInput("swing", "expected a ratio or \"band\", found both");
    }
  }

  /** A set ratio, 1 to 4. */
  public static Swing of(double ratio) {
    return new Swing(ratio, false);
  }

  /** Reads a ratio or {@code "band"}. */
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  static Swing fromJson(Object value) {
    if (value instanceof Number number) {
      return of(number.doubleValue());
    }
    if ("band".equals(value)) {
      return BAND;
    }
    throw new BadInput(
        "swing", "expected a ratio from 1 to 4 or \"band\", found \"" + value + "\"");
  }

  @JsonValue
  Object toJson() {
    return asTheBandPlays ? "band" : (Object) ratio;
  }

  /** True where odd steps are written late or may be played late. */
  public boolean swings() {
    return asTheBandPlays || ratio != 1.0;
  }

  /** Refuses swing on grids without pairs of steps. */
  public void checkStepsPerBeat(int stepsPerBeat) {
    if (swings() && stepsPerBeat != 2 && stepsPerBeat != 4) {
      throw new BadInput(
          "swing", "expected 1 where a beat has " + stepsPerBeat + " steps, found " + this);
    }
  }

  @Override
  public String toString() {
    return asTheBandPlays ? "\"band\"" : Check.number(ratio);
  }
}
