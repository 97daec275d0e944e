package thinclick.server.scoring;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.List;

/**
 * Where a figure lies with 95 % confidence, in the figure's own unit; written {@code [low, high]}.
 *
 * @param low its lower end
 * @param high its upper end, not below the lower
 */
public record Interval(double low, double high) {
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  static Interval fromJson(List<Double> ends) {
    return new Interval(ends.get(0), ends.get(1));
  }

  @JsonValue
  List<Double> toJson() {
    return List.of(low, high);
  }

  /** True where the value lies inside, ends included. */
  public boolean contains(double value) {
    return value >= low && value <= high;
  }

  /** True where the two have no point in common. */
  public boolean partsFrom(Interval other) {
    return low > other.high || high < other.low;
  }
}
