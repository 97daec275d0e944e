package thinclick.server.scoring;

/**
 * Where the band's shared course stands now and how its tempo leans, from what came before: a
 * Kalman filter over position (ms from the written grid) and tempo bias (ms a step).
 */
final class LiveCourse {
  /** SD of the position's walk, ms per square root of a step. */
  private static final double WALK = 2;

  /** SD of the tempo bias's walk, as a share of a step: under clicks, and in silence. */
  private static final double HELD_TURN = 0.0005;

  private static final double FREE_TURN = 0.002;

  /** What a click takes back of a distance, and of the tempo bias; SD of it as a share. */
  private static final double PULL = 0.25;

  private static final double PULL_DOUBT = 0.2;

  /** Nearer than this to the click its pull is left to the attacks to show, ms. */
  private static final double NEAR = 15;

  /** SD of the tempo to begin with, as a share: under a click, and without one. */
  private static final double HELD_START = 0.003;

  private static final double FREE_START = 0.1;

  /** How late odd steps are expected at first where the band decides, as a share of a step. */
  private static final double SWING_START = 0.12;

  private static final double SWING_GAIN = 0.12;

  private final Sheet sheet;
  private double late;
  private double step = Double.NEGATIVE_INFINITY;
  private double position;
  private double tempo;
  private double p11;
  private double p12;
  private double p22;

  /** A course before its first attack: a click to begin with gives position and tempo. */
  LiveCourse(Sheet sheet) {
    this.sheet = sheet;
    boolean clicked = sheet.stageClicks[0];
    double start = (clicked ? HELD_START : FREE_START) * sheet.stepMillis;
    p11 = clicked ? 100 : 400;
    p22 = start * start;
    late = sheet.take.swing().asTheBandPlays() ? SWING_START * sheet.stepMillis : 0;
  }

  /** The course at a step, ms from the written grid. */
  double at(double where) {
    return step == Double.NEGATIVE_INFINITY ? position : position + tempo * (where - step);
  }

  /** The place in steps at which an instant lies on the course, ms from step 0. */
  double stepAt(double millis) {
    double from = step == Double.NEGATIVE_INFINITY ? 0 : step;
    return (millis - position + tempo * from) / Math.max(1, sheet.stepMillis + tempo);
  }

  /** The variance of that at the last step heard, ms2. */
  double variance() {
    return p11;
  }

  /**
   * Hears an attack.
   *
   * @param where the step it sounded on
   * @param off how far it lay from the course and its player's lean, ms
   * @param noise its variance, ms2
   */
  void hear(double where, double off, double noise) {
    if (step != Double.NEGATIVE_INFINITY && where > step) {
      pass(where);
    }
    step = Math.max(step, where);
    double z = off * off / (9 * (p11 + noise));
    double s = p11 + noise * Math.max(1, z);
    double g1 = p11 / s;
    double g2 = p12 / s;
    position += g1 * off;
    tempo += g2 * off;
    p22 -= g2 * p12;
    p12 -= g1 * p12;
    p11 -= g1 * p11;
  }

  private void pass(double where) {
    double gap = Math.min(64, where - step);
    int here = (int) Math.max(0, Math.min(sheet.steps - 1, step));
    double turn = (sheet.silentAt(here) ? FREE_TURN : HELD_TURN) * sheet.stepMillis;
    position += tempo * (where - step);
    p11 += 2 * gap * p12 + gap * gap * p22 + WALK * WALK * gap;
    p12 += gap * p22;
    p22 += turn * turn * gap;
    int clicks = Math.min(8, sheet.clicksBetween((int) step - 1, (int) where - 1));
    double nearest = sheet.beatMillis() * Math.rint(position / sheet.beatMillis());
    double off = Math.abs(nearest) <= 2 * sheet.beatMillis() ? position : position - nearest;
    for (int click = 0; click < clicks && Math.abs(off) > NEAR; click++) {
      p11 += PULL_DOUBT * off * PULL_DOUBT * off;
      position -= PULL * off;
      off -= PULL * off;
      tempo *= 1 - PULL;
    }
  }

  /** How late an odd step comes beyond its place, where the band decides the swing, ms. */
  double swung(int where) {
    return (where & 1) == 0 ? 0 : late;
  }

  /** Hears how far an odd step lay from where it was expected, ms. */
  void hearSwing(double off) {
    late =
        Math.max(-0.1, Math.min(0.6, (late + SWING_GAIN * off) / sheet.stepMillis))
            * sheet.stepMillis;
  }

  /** Takes a shift that all share into the course. */
  void move(double millis) {
    position += millis;
  }
}
