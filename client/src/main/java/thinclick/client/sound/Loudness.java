package thinclick.client.sound;

import thinclick.protocol.json.Check;

/**
 * The level of the click, in decibels below full scale, kept where it cannot hurt by surprise. What
 * arrives at an ear no program can know: it depends on amplifier, headphones and room.
 */
public record Loudness(double dbfs) {
  /** No click is ever louder. */
  public static final double CEILING_DBFS = -6;

  /** The level of a first run and of any output not known before. */
  public static final double FIRST_DBFS = -24;

  /** A remembered level opens at most at this. */
  public static final double REMEMBERED_DBFS = -12;

  /** The softest level that can be chosen. */
  public static final double SOFTEST_DBFS = -60;

  /** From here on a level counts as raised, and the caution is said again. */
  public static final double RAISED_DBFS = -12;

  /** Where nothing is known of the output. */
  public static final Loudness FIRST = new Loudness(FIRST_DBFS);

  public Loudness {
    Check.range("level", dbfs, SOFTEST_DBFS, CEILING_DBFS);
  }

  /** The nearest level that may be chosen. */
  public static Loudness nearest(double dbfs) {
    return new Loudness(Math.max(SOFTEST_DBFS, Math.min(CEILING_DBFS, dbfs)));
  }

  /** What a remembered level opens at. */
  public static Loudness remembered(double dbfs) {
    return nearest(Math.min(REMEMBERED_DBFS, dbfs));
  }

  /** True where it is louder than what a session opens with. */
  public boolean raised() {
    return dbfs > RAISED_DBFS;
  }

  /** The peak as a share of full scale. */
  double peak() {
    return Math.pow(10, dbfs / 20);
  }
}
