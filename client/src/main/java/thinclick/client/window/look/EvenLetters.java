package thinclick.client.window.look;

import java.util.Locale;
import java.util.Properties;

/**
 * Letters stand where the layout puts them, to a fraction of a pixel. On Windows and macOS the
 * system's own rasterizer sees to that. Elsewhere the toolkit paints letters up to 80 pixels as
 * ready pictures at whole pixels, while their widths are fractions: a gap of three or four pixels
 * between words then comes out up to one too narrow or too wide. Painted as outlines, as the
 * toolkit does with what is larger, each stands in its place.
 */
public final class EvenLetters {
  /** The size in pixels up to which letters are ready pictures. */
  static final String LIMIT = "prism.fontSizeLimit";

  private static final String NONE = "1";

  private EvenLetters() {}

  /**
   * Asks the toolkit for it; to be called before the toolkit starts. What was set already stays.
   *
   * @param properties those of the process
   */
  public static void ask(Properties properties) {
    String system = properties.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    if (!system.contains("win") && !system.contains("mac")) {
      properties.putIfAbsent(LIMIT, NONE);
    }
  }
}
