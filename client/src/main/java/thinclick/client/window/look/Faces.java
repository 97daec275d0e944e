package thinclick.client.window.look;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.Map;
import javafx.scene.text.Font;
import thinclick.server.engraving.Speller;

/** The fonts that pages and window share; loaded once, on the window's thread. */
public enum Faces {
  /** Running text. */
  TEXT("SourceSerif4-Regular.ttf"),
  /** Directions and remarks. */
  ITALIC("SourceSerif4-It.ttf"),
  /** Titles. */
  SEMIBOLD("SourceSerif4-Semibold.ttf"),
  /** Music signs; four staff spaces high. */
  MUSIC("Bravura.otf");

  private static final Map<Faces, String> NAMES = new EnumMap<>(Faces.class);

  private final String file;

  Faces(String file) {
    this.file = file;
  }

  /** Makes all of them known to the window. */
  public static void load() {
    for (Faces face : values()) {
      face.fontName();
    }
  }

  /** The face at a size in pixels. */
  public Font at(double size) {
    return Font.font(fontName(), size);
  }

  private String fontName() {
    return NAMES.computeIfAbsent(this, Faces::read);
  }

  private static String read(Faces face) {
    // The files lie beside the layout that is set in them.
    try (InputStream in = Speller.class.getResourceAsStream(face.file)) {
      Font font = in == null ? null : Font.loadFont(in, 12);
      if (font == null) {
        throw new IllegalStateException("the font " + face.file + " is missing or damaged");
      }
      return font.getName();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
