package thinclick.server.export;

import java.awt.geom.GeneralPath;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.GlyphData;
import org.apache.fontbox.ttf.OTFParser;
import org.apache.fontbox.ttf.OpenTypeFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import thinclick.server.engraving.Face;
import thinclick.server.engraving.Glyph;

/**
 * The shapes of music signs and letters, read from the fonts that are shipped, without the
 * desktop's own fonts. Shapes are in the font's units, y upward.
 */
final class GlyphOutlines {
  private final OpenTypeFont music;
  private final CmapLookup musicLookup;
  private final Map<Face, TrueTypeFont> letters = new ConcurrentHashMap<>();

  private GlyphOutlines(OpenTypeFont music) throws IOException {
    this.music = music;
    this.musicLookup = music.getUnicodeCmapLookup();
  }

  private static final class Holder {
    static final GlyphOutlines SHIPPED = load();
  }

  /** The shipped fonts, opened once. */
  static GlyphOutlines shipped() {
    return Holder.SHIPPED;
  }

  private static GlyphOutlines load() {
    try (InputStream in = resource(Glyph.FILE)) {
      return new GlyphOutlines(new OTFParser().parse(new RandomAccessReadBuffer(in)));
    } catch (IOException e) {
      throw new UncheckedIOException("the shipped Bravura cannot be read", e);
    }
  }

  static InputStream resource(String file) throws IOException {
    InputStream in = Face.class.getResourceAsStream(file);
    if (in == null) {
      throw new IOException("the resource " + file + " is missing");
    }
    return in;
  }

  static TrueTypeFont open(Face face) throws IOException {
    try (InputStream in = resource(face.file())) {
      return new TTFParser().parse(new RandomAccessReadBuffer(in));
    }
  }

  /** The shape of a letter; a thousand units are its size. Empty where the face has none. */
  GeneralPath of(Face face, int codePoint) throws IOException {
    TrueTypeFont font = letters.get(face);
    if (font == null) {
      font = open(face);
      letters.put(face, font);
    }
    int id = font.getUnicodeCmapLookup().getGlyphId(codePoint);
    GlyphData shape = font.getGlyph().getGlyph(id);
    return shape == null ? new GeneralPath() : shape.getPath();
  }

  /** The shape of a music sign; 250 units are a staff space. */
  GeneralPath of(Glyph glyph) throws IOException {
    int id = musicLookup.getGlyphId(glyph.codePoint());
    return music.getCFF().getFont().getType2CharString(id).getPath();
  }
}
