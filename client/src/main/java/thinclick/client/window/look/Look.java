package thinclick.client.window.look;

import thinclick.protocol.json.Check;

/**
 * How the window is to look, as its user set it.
 *
 * @param shade light or dark paper
 * @param contrast whether the strong inks are used
 * @param textSize pixels of running text
 * @param partInWords whether the part is written out in words below the music
 */
public record Look(Shade shade, Contrast contrast, double textSize, boolean partInWords) {
  /** Running text of usual size, pixels. */
  public static final double USUAL_TEXT = 15;

  /** The largest text that can be set: twice the usual. */
  public static final double LARGEST_TEXT = 30;

  /** The smallest. */
  public static final double SMALLEST_TEXT = 11;

  /** Where nothing was set. */
  public static final Look FIRST = new Look(Shade.SYSTEM, Contrast.SYSTEM, USUAL_TEXT, false);

  /** The colour of the paper. */
  public enum Shade {
    /** As the system has it. */
    SYSTEM,
    LIGHT,
    DARK
  }

  /** How far ink and paper are apart. */
  public enum Contrast {
    /** As the system has it. */
    SYSTEM,
    USUAL,
    STRONG
  }

  public Look {
    Check.present("shade", shade);
    Check.present("contrast", contrast);
    Check.range("textSize", textSize, SMALLEST_TEXT, LARGEST_TEXT);
  }

  /** The inks and papers that this comes to. */
  public Palette palette(SystemLook system) {
    boolean dark = shade == Shade.SYSTEM ? system.dark() : shade == Shade.DARK;
    boolean strong = contrast == Contrast.SYSTEM ? system.strong() : contrast == Contrast.STRONG;
    return Palette.of(dark, strong);
  }

  /** The same on other paper. */
  public Look with(Shade other) {
    return new Look(other, contrast, textSize, partInWords);
  }

  /** The same with other inks. */
  public Look with(Contrast other) {
    return new Look(shade, other, textSize, partInWords);
  }

  /** The same with larger or smaller text, as far as that goes. */
  public Look withText(double size) {
    double fit = Math.max(SMALLEST_TEXT, Math.min(LARGEST_TEXT, size));
    return new Look(shade, contrast, fit, partInWords);
  }

  /** The same with or without the part in words. */
  public Look withPartInWords(boolean wanted) {
    return new Look(shade, contrast, textSize, wanted);
  }
}
