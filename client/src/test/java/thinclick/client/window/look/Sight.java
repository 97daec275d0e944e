package thinclick.client.window.look;

/** How colours are told apart: contrast by WCAG 2.2, distance in CIE L*a*b*, with and without. */
final class Sight {
  /**
   * What an eye that lacks one kind of cone sees, in linear sRGB. Machado, Oliveira and Fernandes
   * (2009), A physiologically-based model for simulation of colour vision deficiency, severity 1;
   * that of protanopia compared with a public table of the paper's figures, the others from memory.
   */
  enum Deficiency {
    PROTANOPIA(
        new double[][] {
          {0.152286, 1.052583, -0.204868},
          {0.114503, 0.786281, 0.099216},
          {-0.003882, -0.048116, 1.051998}
        }),
    DEUTERANOPIA(
        new double[][] {
          {0.367322, 0.860646, -0.227968},
          {0.280085, 0.672501, 0.047413},
          {-0.011820, 0.042940, 0.968881}
        }),
    TRITANOPIA(
        new double[][] {
          {1.255528, -0.076749, -0.178779},
          {-0.078411, 0.930809, 0.147602},
          {0.004733, 0.691367, 0.303900}
        });

    private final double[][] matrix;

    Deficiency(double[][] matrix) {
      this.matrix = matrix;
    }

    double[] seen(double[] linear) {
      double[] seen = new double[3];
      for (int row = 0; row < 3; row++) {
        for (int column = 0; column < 3; column++) {
          seen[row] += matrix[row][column] * linear[column];
        }
        seen[row] = Math.max(0, Math.min(1, seen[row]));
      }
      return seen;
    }
  }

  private Sight() {}

  /** The contrast ratio of WCAG 2.2: (lighter + .05) / (darker + .05). */
  static double contrast(int one, int other) {
    double first = luminance(linear(one)) + 0.05;
    double second = luminance(linear(other)) + 0.05;
    return Math.max(first, second) / Math.min(first, second);
  }

  /** The distance in CIE 1976 L*a*b* as the eye with this deficiency sees the two. */
  static double distance(Deficiency deficiency, int one, int other) {
    double[] first = lab(deficiency.seen(linear(one)));
    double[] second = lab(deficiency.seen(linear(other)));
    return Math.sqrt(
        square(first[0] - second[0]) + square(first[1] - second[1]) + square(first[2] - second[2]));
  }

  private static double[] linear(int colour) {
    double[] linear = new double[3];
    for (int i = 0; i < 3; i++) {
      double value = (colour >> (16 - 8 * i) & 0xFF) / 255.0;
      linear[i] = value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
    }
    return linear;
  }

  private static double luminance(double[] linear) {
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
  }

  /** IEC 61966-2-1 primaries, white D65. */
  private static double[] lab(double[] rgb) {
    double x = 0.4124564 * rgb[0] + 0.3575761 * rgb[1] + 0.1804375 * rgb[2];
    double y = 0.2126729 * rgb[0] + 0.7151522 * rgb[1] + 0.0721750 * rgb[2];
    double z = 0.0193339 * rgb[0] + 0.1191920 * rgb[1] + 0.9503041 * rgb[2];
    double fx = root(x / 0.95047);
    double fy = root(y);
    double fz = root(z / 1.08883);
    return new double[] {116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)};
  }

  private static double root(double t) {
    return t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
  }

  private static double square(double value) {
    return value * value;
  }
}
