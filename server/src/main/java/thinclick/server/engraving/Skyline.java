package thinclick.server.engraving;

import java.util.Arrays;

/** How far up and down the marks of a system reach, sampled every quarter space along it. */
final class Skyline {
  private static final double SAMPLES_PER_SPACE = 4;

  private double[] top;
  private double[] bottom;

  Skyline() {
    this(new double[0], new double[0]);
  }

  private Skyline(double[] top, double[] bottom) {
    this.top = top;
    this.bottom = bottom;
  }

  /** The same, to which other marks may be added here alone. */
  Skyline copy() {
    return new Skyline(top.clone(), bottom.clone());
  }

  void add(Box box) {
    int from = Math.max(0, (int) Math.floor(box.left() * SAMPLES_PER_SPACE));
    int to = Math.max(from, (int) Math.ceil(box.right() * SAMPLES_PER_SPACE));
    grow(to + 1);
    for (int i = from; i <= to; i++) {
      top[i] = Math.min(top[i], box.top());
      bottom[i] = Math.max(bottom[i], box.bottom());
    }
  }

  /** The highest point between two places, at most {@code ground}. */
  double top(double left, double right, double ground) {
    double highest = ground;
    for (int i = first(left); i <= last(right, top.length); i++) {
      highest = Math.min(highest, top[i]);
    }
    return highest;
  }

  /** The lowest point between two places, at least {@code ground}. */
  double bottom(double left, double right, double ground) {
    double lowest = ground;
    for (int i = first(left); i <= last(right, bottom.length); i++) {
      lowest = Math.max(lowest, bottom[i]);
    }
    return lowest;
  }

  private static int first(double left) {
    return Math.max(0, (int) Math.floor(left * SAMPLES_PER_SPACE));
  }

  private static int last(double right, int length) {
    return Math.min(length - 1, (int) Math.ceil(right * SAMPLES_PER_SPACE));
  }

  private void grow(int length) {
    int old = top.length;
    if (length > old) {
      int grown = Math.max(length, old * 2);
      top = Arrays.copyOf(top, grown);
      bottom = Arrays.copyOf(bottom, grown);
      Arrays.fill(top, old, grown, Double.POSITIVE_INFINITY);
      Arrays.fill(bottom, old, grown, Double.NEGATIVE_INFINITY);
    }
  }
}
