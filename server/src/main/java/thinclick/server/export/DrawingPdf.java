package thinclick.server.export;

import java.awt.Color;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.util.Matrix;
import thinclick.server.engraving.Face;
import thinclick.server.engraving.Paper;
import thinclick.server.picture.Drawing;
import thinclick.server.picture.Tint;

/** Writes drawings as pages of PDF, each as large as it fits; text as text. */
public final class DrawingPdf {
  private static final float[] DASH = {4, 3};

  /** Control points of a quarter circle, from the common approximation by cubics. */
  private static final float ROUND = 0.5523f;

  private final PDDocument document;
  private final PDPageContentStream content;
  private final Map<Face, PDFont> fonts;

  private DrawingPdf(PDDocument document, PDPageContentStream content, Map<Face, PDFont> fonts) {
    this.document = document;
    this.content = content;
    this.fonts = fonts;
  }

  /**
   * Drawings as a PDF document, each a page. The sheet's own ground is not printed.
   *
   * @param drawings at least one; the first says what the document is
   * @param paper of every page
   * @param language of the words on them, for those who have them read out
   */
  public static byte[] pdf(List<Drawing> drawings, Paper paper, Locale language) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PDDocument document = new PDDocument()) {
      PDDocumentInformation information = document.getDocumentInformation();
      information.setTitle(drawings.get(0).title());
      information.setSubject(drawings.get(0).says());
      information.setCreator("Thinclick");
      document.getDocumentCatalog().setLanguage(language.toLanguageTag());
      Map<Face, PDFont> fonts = new EnumMap<>(Face.class);
      for (Drawing drawing : drawings) {
        page(document, fonts, drawing, paper);
      }
      document.save(out, CompressParameters.DEFAULT_COMPRESSION);
    } catch (IOException e) {
      throw new UncheckedIOException(e); // memory and shipped fonts
    }
    return out.toByteArray();
  }

  private static void page(
      PDDocument document, Map<Face, PDFont> fonts, Drawing drawing, Paper paper)
      throws IOException {
    float width = PdfFiles.points(paper.width());
    float height = PdfFiles.points(paper.height());
    PDPage page = new PDPage(new PDRectangle(width, height));
    document.addPage(page);
    try (PDPageContentStream content = new PDPageContentStream(document, page)) {
      float scale = (float) Math.min(width / drawing.width(), height / drawing.height());
      float left = (float) (width - scale * drawing.width()) / 2;
      content.transform(new Matrix(scale, 0, 0, -scale, left, height));
      DrawingPdf writer = new DrawingPdf(document, content, fonts);
      for (Drawing.Item item : drawing.items()) {
        writer.draw(item);
      }
    }
  }

  private void draw(Drawing.Item item) throws IOException {
    // What is printed lies on the printer's own paper.
    Color color = item.tint() == Tint.PAPER ? Color.WHITE : new Color(item.tint().rgb());
    content.setStrokingColor(color);
    content.setNonStrokingColor(color);
    if (item instanceof Drawing.Line line) {
      content.setLineWidth((float) line.thickness());
      content.setLineDashPattern(line.dashed() ? DASH : new float[0], 0);
      content.moveTo((float) line.x1(), (float) line.y1());
      content.lineTo((float) line.x2(), (float) line.y2());
      content.stroke();
    } else if (item instanceof Drawing.Box box) {
      content.addRect((float) box.x(), (float) box.y(), (float) box.width(), (float) box.height());
      content.fill();
    } else if (item instanceof Drawing.Disc disc) {
      disc((float) disc.x(), (float) disc.y(), (float) disc.radius());
    } else if (item instanceof Drawing.Words words) {
      words(words);
    }
  }

  private void disc(float x, float y, float r) throws IOException {
    float c = ROUND * r;
    content.moveTo(x + r, y);
    content.curveTo(x + r, y + c, x + c, y + r, x, y + r);
    content.curveTo(x - c, y + r, x - r, y + c, x - r, y);
    content.curveTo(x - r, y - c, x - c, y - r, x, y - r);
    content.curveTo(x + c, y - r, x + r, y - c, x + r, y);
    content.fill();
  }

  private void words(Drawing.Words words) throws IOException {
    PDFont font = fonts.get(words.face());
    if (font == null) {
      try (InputStream in = GlyphOutlines.resource(words.face().file())) {
        font = PDType0Font.load(document, in, true);
      }
      fonts.put(words.face(), font);
    }
    content.beginText();
    content.setFont(font, (float) words.size());
    content.setTextMatrix(new Matrix(1, 0, 0, -1, (float) words.left(), (float) words.y()));
    content.showTextWithPositioning(PdfFiles.letters(words.text(), font));
    content.endText();
  }
}
