package thinclick.server.export;

import java.awt.Color;
import java.awt.geom.GeneralPath;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.util.Matrix;
import thinclick.server.engraving.Face;
import thinclick.server.engraving.Glyph;
import thinclick.server.engraving.Ink;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Page;

/**
 * Writes pages as PDF: music signs as outlines, each kept once, text as text in the embedded face.
 */
public final class PdfFiles {
  private static final double POINTS_PER_MM = 72 / 25.4;
  private static final float UNITS_PER_SPACE = 250; // Bravura: 1000 units are four spaces

  private final PDDocument document;
  private final Map<Face, PDFont> fonts = new EnumMap<>(Face.class);
  private final Map<Glyph, PDFormXObject> signs = new EnumMap<>(Glyph.class);

  private PdfFiles(PDDocument document) {
    this.document = document;
  }

  /** Writes English pages to {@code out}, which stays open. */
  public static void write(List<Page> pages, String title, OutputStream out) throws IOException {
    write(pages, title, Locale.ENGLISH, out);
  }

  /**
   * Writes the pages to {@code out}, which stays open.
   *
   * @param language of the words on them, for those who have them read out
   */
  public static void write(List<Page> pages, String title, Locale language, OutputStream out)
      throws IOException {
    try (PDDocument document = new PDDocument()) {
      PDDocumentInformation information = document.getDocumentInformation();
      information.setTitle(title);
      information.setCreator("Thinclick");
      document.getDocumentCatalog().setLanguage(language.toLanguageTag());
      PdfFiles writer = new PdfFiles(document);
      for (Page page : pages) {
        writer.page(page);
      }
      document.save(out, CompressParameters.DEFAULT_COMPRESSION);
    }
  }

  /** In the unit of PDF. */
  static float points(double millimetres) {
    return (float) (millimetres * POINTS_PER_MM);
  }

  private void page(Page page) throws IOException {
    float width = points(page.widthMm());
    float height = points(page.heightMm());
    PDPage pdfPage = new PDPage(new PDRectangle(width, height));
    document.addPage(pdfPage);
    try (PDPageContentStream content = new PDPageContentStream(document, pdfPage)) {
      float scale = (float) (page.spaceMm() * POINTS_PER_MM);
      content.transform(new Matrix(scale, 0, 0, -scale, 0, height));
      Ink ink = null;
      for (Mark mark : page.marks()) {
        if (mark.ink() != ink) {
          ink = mark.ink();
          Color color = InkColor.of(ink);
          content.setStrokingColor(color);
          content.setNonStrokingColor(color);
        }
        draw(content, mark);
      }
    }
  }

  private void draw(PDPageContentStream content, Mark mark) throws IOException {
    if (mark instanceof Mark.Sign sign) {
      sign(content, sign);
    } else if (mark instanceof Mark.Line line) {
      line(content, line);
    } else if (mark instanceof Mark.Shape shape) {
      shape(content, shape);
    } else if (mark instanceof Mark.Text text) {
      text(content, text);
    }
  }

  private void sign(PDPageContentStream content, Mark.Sign sign) throws IOException {
    PDFormXObject form = signs.get(sign.glyph());
    if (form == null) {
      form = form(sign.glyph());
      signs.put(sign.glyph(), form);
    }
    float scale = (float) sign.scale() / UNITS_PER_SPACE;
    content.saveGraphicsState();
    content.transform(new Matrix(scale, 0, 0, -scale, (float) sign.x(), (float) sign.y()));
    content.drawForm(form);
    content.restoreGraphicsState();
  }

  private PDFormXObject form(Glyph glyph) throws IOException {
    GeneralPath path = GlyphOutlines.shipped().of(glyph);
    PDFormXObject form = new PDFormXObject(document);
    Rectangle2D bounds = path.getBounds2D();
    form.setBBox(
        new PDRectangle(
            (float) bounds.getX() - 1,
            (float) bounds.getY() - 1,
            (float) bounds.getWidth() + 2,
            (float) bounds.getHeight() + 2));
    StringBuilder operators = new StringBuilder();
    float[] at = new float[6];
    for (PathIterator i = path.getPathIterator(null); !i.isDone(); i.next()) {
      switch (i.currentSegment(at)) {
        case PathIterator.SEG_MOVETO -> operators.append(point(at, 0)).append("m\n");
        case PathIterator.SEG_LINETO -> operators.append(point(at, 0)).append("l\n");
        case PathIterator.SEG_CUBICTO ->
            operators.append(point(at, 0)).append(point(at, 2)).append(point(at, 4)).append("c\n");
        case PathIterator.SEG_CLOSE -> operators.append("h\n");
        default -> throw new IOException("a quadratic curve in a CFF outline");
      }
    }
    operators.append("f\n");
    try (OutputStream stream = form.getContentStream().createOutputStream(COSName.FLATE_DECODE)) {
      stream.write(operators.toString().getBytes(StandardCharsets.US_ASCII));
    }
    return form;
  }

  private static String point(float[] at, int index) {
    return number(at[index]) + " " + number(at[index + 1]) + " ";
  }

  private static String number(float value) {
    return value == Math.rint(value) ? Integer.toString((int) value) : Float.toString(value);
  }

  private void line(PDPageContentStream content, Mark.Line line) throws IOException {
    content.setLineWidth((float) line.thickness());
    if (line.dotted()) {
      float on = (float) line.thickness();
      content.setLineDashPattern(new float[] {on, (float) Mark.Line.DOT_PERIOD - on}, 0);
    }
    content.moveTo((float) line.x1(), (float) line.y1());
    content.lineTo((float) line.x2(), (float) line.y2());
    content.stroke();
    if (line.dotted()) {
      content.setLineDashPattern(new float[0], 0);
    }
  }

  private void shape(PDPageContentStream content, Mark.Shape shape) throws IOException {
    content.moveTo((float) shape.x(), (float) shape.y());
    for (Mark.Curve curve : shape.curves()) {
      content.curveTo(
          (float) curve.x1(),
          (float) curve.y1(),
          (float) curve.x2(),
          (float) curve.y2(),
          (float) curve.x(),
          (float) curve.y());
    }
    content.closePath();
    content.fill();
  }

  private void text(PDPageContentStream content, Mark.Text text) throws IOException {
    PDFont font = fonts.get(text.face());
    if (font == null) {
      try (InputStream in = GlyphOutlines.resource(text.face().file())) {
        font = PDType0Font.load(document, in, true);
      }
      fonts.put(text.face(), font);
    }
    content.beginText();
    content.setFont(font, (float) text.size());
    content.setTextMatrix(new Matrix(1, 0, 0, -1, (float) text.x(), (float) text.y()));
    content.showTextWithPositioning(letters(text.text(), font));
    content.endText();
  }

  /**
   * The text letter by letter, as its width was measured: ligatures would stand closer, and could
   * not be found or copied.
   */
  static Object[] letters(String text, PDFont font) {
    return drawable(text, font).codePoints().mapToObj(Character::toString).toArray();
  }

  /** The text with characters that the face does not have replaced by a question mark. */
  private static String drawable(String text, PDFont font) {
    StringBuilder drawable = new StringBuilder();
    text.codePoints()
        .forEach(
            point -> {
              String character = Character.toString(point);
              drawable.append(has(font, character) ? character : "?");
            });
    return drawable.toString();
  }

  private static boolean has(PDFont font, String character) {
    try {
      font.encode(character);
      return true;
    } catch (IOException | IllegalArgumentException absent) {
      return false;
    }
  }
}
