package thinclick.server.scoring.model;

import java.util.Arrays;

/**
 * All that one player's likelihood reads, laid out for one pass: the steps at which the player
 * attacks, a click sounds or another is heard, in order.
 *
 * <p>At each event the player's own attack (if any) is observed first, then the corrections act,
 * then time passes to the next event.
 */
final class Track {
  /** How the hidden position stood before the first event. */
  enum Before {
    /** Following a click on every beat without playing, as in a count-in. */
    LISTENED,
    /** Attacking with a click on every beat. */
    TAPPED,
    /** Nothing is known. */
    UNKNOWN
  }

  /** Beats from each event to the next; 0 at the last. */
  final double[] gapBeats;

  /** The player's own attacks, ms from the written place; NaN where there is none. */
  final double[] ownMillis;

  /** The mean's column of each own attack; -1 where there is none. */
  final int[] position;

  /** Where the click sounds. */
  final boolean[] click;

  /** Heard attacks of event k stand at heardFrom[k] to heardFrom[k + 1]. */
  final int[] heardFrom;

  /** The gain that each heard attack acts through. */
  final int[] heardGain;

  /** Heard attacks, ms from the written place, the other's positional mean removed. */
  final double[] heardMillis;

  /** How many gains there are, the click's included. */
  final int gains;

  /** The index of the click's gain; -1 where no gain is the click's. */
  final int clickGain;

  /** How many positional means there are. */
  final int positions;

  /** Own attacks observed. */
  final int observed;

  final Before before;
  final double beatMillis;

  private Track(Builder from) {
    int events = from.events;
    gapBeats = new double[events];
    for (int k = 0; k + 1 < events; k++) {
      gapBeats[k] = from.beat[k + 1] - from.beat[k];
    }
    ownMillis = Arrays.copyOf(from.own, events);
    position = Arrays.copyOf(from.position, events);
    click = Arrays.copyOf(from.click, events);
    heardFrom = Arrays.copyOf(from.heardFrom, events + 1);
    heardFrom[events] = from.heard;
    heardGain = Arrays.copyOf(from.heardGain, from.heard);
    heardMillis = Arrays.copyOf(from.heardMillis, from.heard);
    gains = from.gains;
    clickGain = from.clickGain;
    before = from.before;
    beatMillis = from.beatMillis;
    int count = 0;
    int columns = 0;
    for (int p : position) {
      if (p >= 0) {
        count++;
        columns = Math.max(columns, p + 1);
      }
    }
    observed = count;
    positions = columns;
  }

  int events() {
    return gapBeats.length;
  }

  /** Lays events down one by one, in the order of their steps. */
  static final class Builder {
    private final int gains;
    private final int clickGain;
    private final Before before;
    private final double beatMillis;
    private int events;
    private int heard;
    private double[] beat = new double[64];
    private double[] own = new double[64];
    private int[] position = new int[64];
    private boolean[] click = new boolean[64];
    private int[] heardFrom = new int[65];
    private int[] heardGain = new int[64];
    private double[] heardMillis = new double[64];

    /**
     * Begins a track.
     *
     * @param gains how many gains act in it
     * @param clickGain which of them is the click's; -1 for none
     */
    Builder(double beatMillis, int gains, int clickGain, Before before) {
      this.beatMillis = beatMillis;
      this.gains = gains;
      this.clickGain = clickGain;
      this.before = before;
    }

    /** Opens the event at a place in beats; later than the one before. */
    void event(double atBeat) {
      if (events == beat.length) {
        int longer = 2 * events;
        beat = Arrays.copyOf(beat, longer);
        own = Arrays.copyOf(own, longer);
        position = Arrays.copyOf(position, longer);
        click = Arrays.copyOf(click, longer);
        heardFrom = Arrays.copyOf(heardFrom, longer + 1);
      }
      beat[events] = atBeat;
      own[events] = Double.NaN;
      position[events] = -1;
      click[events] = false;
      heardFrom[events] = heard;
      events++;
    }

    /** The player's own attack at the open event. */
    void own(double millis, int column) {
      own[events - 1] = millis;
      position[events - 1] = column;
    }

    /** A click at the open event. */
    void click() {
      click[events - 1] = true;
    }

    /** Another's attack, heard at the open event. */
    void heard(int gain, double millis) {
      if (heard == heardGain.length) {
        heardGain = Arrays.copyOf(heardGain, 2 * heard);
        heardMillis = Arrays.copyOf(heardMillis, 2 * heard);
      }
      heardGain[heard] = gain;
      heardMillis[heard++] = millis;
    }

    Track build() {
      return new Track(this);
    }
  }
}
