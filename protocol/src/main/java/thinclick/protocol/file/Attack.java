package thinclick.protocol.file;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.Absent;
import thinclick.protocol.json.Check;
import tools.jackson.databind.annotation.JsonDeserialize;

/**
 * One tapped or keyed note onset.
 *
 * @param player who played it
 * @param micros its room time, corrected by the chair's measured delay
 * @param velocity 1-127, or null where the input has none
 * @param pitch MIDI note number 0-127, or null for a tap
 * @param lengthMillis how long it was held, or null where the release is not known
 * @param lateByMillis how late the stamp may be at most, never early; null where not measured
 * @param setAside true where it belongs to another attack (a chord's later notes, a double trigger)
 * @param unsure true where the clock was not trusted when it was stamped
 */
public record Attack(
    String player,
    long micros,
    @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Integer velocity,
    @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Integer pitch,
    @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Double lengthMillis,
    @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Double lateByMillis,
    @JsonInclude(JsonInclude.Include.NON_DEFAULT) @JsonDeserialize(using = Absent.MeansFalse.class)
        boolean setAside,
    @JsonInclude(JsonInclude.Include.NON_DEFAULT) @JsonDeserialize(using = Absent.MeansFalse.class)
        boolean unsure) {
  /** The longest note that is kept, milliseconds. */
  public static final double LONGEST_MILLIS = 3_600_000;

  public Attack {
    Check.present("player", player);
    Check.range("micros", micros, -Check.MAX_SAFE, Check.MAX_SAFE);
    Check.range("velocity", velocity, 1, 127);
    Check.range("pitch", pitch, 0, 127);
    Check.range("lengthMillis", lengthMillis, 0, LONGEST_MILLIS);
    Check.range("lateByMillis", lateByMillis, 0, 60_000);
  }

  /** A tap without pitch, velocity or length. */
  public static Attack tap(String player, long micros) {
    return new Attack(player, micros, null, null, null, null, false, false);
  }

  /** The same attack, played by another. */
  public Attack renamed(String other) {
    return new Attack(other, micros, velocity, pitch, lengthMillis, lateByMillis, setAside, unsure);
  }
}
