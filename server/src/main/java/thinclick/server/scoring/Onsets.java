package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Attack;

/**
 * Which onsets of one player are one attack: within 35 ms at different pitches the first counts, on
 * the same pitch or key within 25 ms as well; those without a pitch are on the same key. One rule
 * for the review, for what is judged while a take runs and for the marks on the stand.
 */
public final class Onsets {
  /** Onsets closer than this at different pitches are one attack, ms. */
  private static final double CHORD_MILLIS = 35;

  /** Onsets closer than this on the same pitch or key are one attack, ms. */
  private static final double DOUBLE_MILLIS = 25;

  private static final int NO_PITCH = -1;

  private final Map<Integer, Double> lastOnKey = new HashMap<>();
  private double head = Double.NEGATIVE_INFINITY;
  private int headKey = NO_PITCH;

  /** Those of one player's onsets that count, in the order of time. */
  public static List<Attack> counted(List<Attack> ascending) {
    Onsets onsets = new Onsets();
    List<Attack> counted = new ArrayList<>();
    for (Attack attack : ascending) {
      if (!onsets.aside(attack.micros() / 1e3, attack.pitch(), attack.setAside())) {
        counted.add(attack);
      }
    }
    return List.copyOf(counted);
  }

  /**
   * The next onset, in the order of time; one that arrives late belongs to none before it.
   *
   * @param atMillis when
   * @return true where it belongs to an attack before it
   */
  public boolean aside(double atMillis, @Nullable Integer pitch) {
    return aside(atMillis, pitch, false);
  }

  /**
   * As {@link #aside(double, Integer)}.
   *
   * @param said true where it was set aside already
   */
  boolean aside(double atMillis, @Nullable Integer pitch, boolean said) {
    int key = pitch == null ? NO_PITCH : pitch;
    boolean chord = key != headKey && after(head, atMillis, CHORD_MILLIS);
    Double before = lastOnKey.get(key);
    boolean doubled = before != null && after(before, atMillis, DOUBLE_MILLIS);
    if (!doubled) {
      lastOnKey.put(key, atMillis); // a double is measured from the first of its row, not the last
    }
    if (said || chord || doubled) {
      return true;
    }
    head = atMillis;
    headKey = key;
    return false;
  }

  private static boolean after(double before, double at, double within) {
    return at >= before && at - before <= within;
  }
}
