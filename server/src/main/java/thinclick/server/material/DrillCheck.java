package thinclick.server.material;

import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Line;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.pitch.Instrument;
import thinclick.server.material.pitch.Key;
import thinclick.server.material.pitch.Progressions;
import thinclick.server.material.pitch.Scale;

/** What a drill file's words must mean, beyond what its form already says. */
public final class DrillCheck {
  private DrillCheck() {}

  /** Refuses instruments, keys, scales and progressions that are not known, naming the chair. */
  public static Drill checked(Drill drill) {
    for (int i = 0; i < drill.chairs().size(); i++) {
      Drill.Chair chair = drill.chairs().get(i);
      try {
        if (chair.instrument() != null) {
          Instrument.find("instrument", chair.instrument());
        }
        if (chair.line() != null) {
          check(chair.line());
          PartWriter.write(drill, chair, drill.tempo().start(), "");
        }
      } catch (BadInput bad) {
        throw bad.within("chairs[" + i + "]");
      }
    }
    return drill;
  }

  private static void check(Line line) {
    if (line.scale() != null) {
      Scale.find("line.scale", line.scale());
      Key.tonicOf("line.key", line.key() == null ? "C" : line.key());
    } else if (line.progression() != null) {
      Progressions.in(
          "line.progression",
          line.progression(),
          line.key() == null ? null : Key.parse("line.key", line.key()));
    }
  }
}
