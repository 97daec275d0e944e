package thinclick.client.check;

import java.util.List;

/** What a sound check came to. */
public sealed interface Verdict {
  /** What is taken as known where no check was passed: a lean is not judged then, milliseconds. */
  double UNKNOWN_MILLIS = 60;

  /** How the delay was found. */
  enum How {
    /** Click and taps were heard by the microphone: the machine's delay alone. */
    MICROPHONE,
    /** From taps along with the click: machine and habit in one. */
    TAPS
  }

  /** Why a check is not taken. */
  enum Why {
    /** Too few taps could be used. */
    FEW,
    /** The taps scatter so much that the delay is not known to 25 ms. */
    SCATTERED,
    /** More than a fifth of the taps lie far from the others. */
    OUTLIERS,
    /** The first half says another delay than the second. */
    HALVES,
    /** The output stumbled meanwhile. */
    STUMBLED,
    /** The delay is beyond 350 ms, which no usable machine has. */
    BEYOND,
    /** The microphone did not hear the click. */
    CLICK_UNHEARD,
    /** The microphone did not hear the taps. */
    TAPS_UNHEARD
  }

  /**
   * The chair's delay is known.
   *
   * @param latencyMillis what is taken off each stamp, positive where the stamp comes late
   * @param uncertaintyMillis how far the truth may lie from it, either way
   * @param taps how many it rests on
   * @param offsets of all taps to what they answered, milliseconds, in order; for the ledger
   */
  record Known(
      How how, double latencyMillis, double uncertaintyMillis, int taps, List<Double> offsets)
      implements Verdict {
    public Known {
      offsets = List.copyOf(offsets);
    }
  }

  /**
   * The check is not taken; play goes on with no correction and {@link #UNKNOWN_MILLIS}.
   *
   * @param usable how many taps could be used
   * @param offsets as in {@link Known}
   */
  record Refused(Why why, int usable, List<Double> offsets) implements Verdict {
    public Refused {
      offsets = List.copyOf(offsets);
    }
  }

  /** Of all taps to what they answered, milliseconds, in order. */
  List<Double> offsets();
}
