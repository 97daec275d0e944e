package thinclick.server.gathering;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import thinclick.protocol.file.Attack;
import thinclick.protocol.json.Check;

/** Puts recorded notes on the room time of a take. */
public final class Gathering {
  /** How far bar 1 may be from the start of a recording, either way, milliseconds. */
  private static final double FURTHEST_MILLIS = 3_600_000;

  private Gathering() {}

  /**
   * One player's recording.
   *
   * @param player the player's name
   * @param notes what was played, timed from the start of the recording
   */
  public record Recorded(String player, List<RecordedNote> notes) {
    public Recorded {
      notes = List.copyOf(notes);
    }
  }

  /**
   * The room time of bar 1, so that no recorded time is negative: the recording begins at 0, or as
   * much later as it was started after bar 1.
   *
   * @param offsetMillis where bar 1 lies in the recordings, from their start; negative where they
   *     were started after it
   */
  public static long startMicros(double offsetMillis) {
    Check.range("--offset-millis", offsetMillis, -FURTHEST_MILLIS, FURTHEST_MILLIS);
    return Math.max(0, Math.round(offsetMillis * 1_000));
  }

  /** All notes as attacks in room time, in the order they were played. */
  public static List<Attack> attacks(List<Recorded> recordings, double offsetMillis) {
    long shiftMicros = startMicros(offsetMillis) - Math.round(offsetMillis * 1_000);
    List<Attack> attacks = new ArrayList<>();
    for (Recorded recording : recordings) {
      for (RecordedNote note : recording.notes()) {
        Long held = note.lengthMicros();
        attacks.add(
            new Attack(
                recording.player(),
                note.micros() + shiftMicros,
                note.velocity(),
                note.pitch(),
                held == null ? null : Math.min(held / 1_000.0, Attack.LONGEST_MILLIS),
                null,
                false,
                false));
      }
    }
    attacks.sort(Comparator.comparingLong(Attack::micros));
    return List.copyOf(attacks);
  }
}
