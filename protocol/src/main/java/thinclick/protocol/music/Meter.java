package thinclick.protocol.music;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import thinclick.protocol.json.BadInput;

/**
 * A meter as written, from 2/4 to 7/4 and 6/8, 9/8, 12/8.
 *
 * <p>The beat of the meters in 8 is the dotted quarter, so 6/8 has two beats.
 *
 * @param count the upper number
 * @param unit the lower number, 4 or 8
 */
public record Meter(int count, int unit) {
  private static final Pattern WRITTEN = Pattern.compile("(\\d{1,2})/(\\d{1,2})");
  private static final String KNOWN = "2/4, 3/4, 4/4, 5/4, 6/4, 7/4, 6/8, 9/8 or 12/8";

  /** Common time. */
  public static final Meter FOUR_FOUR = new Meter(4, 4);

  public Meter {
    boolean simple = unit == 4 && count >= 2 && count <= 7;
    boolean compound = unit == 8 && (count == 6 || count == 9 || count == 12);
    if (!simple && !compound) {
      throw new BadInput("meter", "expected " + KNOWN + ", found " + count + "/" + unit);
    }
  }

  /** Reads {@code "4/4"}. */
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  static Meter fromJson(Object value) {
    if (value instanceof String written) {
      return parse(written);
    }
    throw new BadInput("meter", "expected " + KNOWN + ", found " + value);
  }

  /** Reads {@code "4/4"}. */
  public static Meter parse(String written) {
    Matcher matcher = WRITTEN.matcher(written);
    if (!matcher.matches()) {
      throw new BadInput("meter", "expected " + KNOWN + ", found \"" + written + "\"");
    }
    return new Meter(Integer.parseInt(matcher.group(1)), Integer.parseInt(matcher.group(2)));
  }

  /** True where the beat is a dotted quarter. */
  public boolean compound() {
    return unit == 8;
  }

  /** Beats a bar as they are counted: 2 in 6/8. */
  public int beatsPerBar() {
    return compound() ? count / 3 : count;
  }

  /** Steps a bar on a grid of {@code stepsPerBeat}. */
  public int stepsPerBar(int stepsPerBeat) {
    return beatsPerBar() * stepsPerBeat;
  }

  /** Refuses a division of the beat that this meter does not have. */
  public void checkStepsPerBeat(int stepsPerBeat) {
    boolean known = stepsPerBeat == 3 || stepsPerBeat == 6;
    if (!compound()) {
      known |= stepsPerBeat == 2 || stepsPerBeat == 4;
    }
    if (!known) {
      String expected = compound() ? "3 or 6 in " + this : "2, 3, 4 or 6";
      throw new BadInput("stepsPerBeat", "expected " + expected + ", found " + stepsPerBeat);
    }
  }

  /** {@code "4/4"}. */
  @JsonValue
  @Override
  public String toString() {
    return count + "/" + unit;
  }
}
