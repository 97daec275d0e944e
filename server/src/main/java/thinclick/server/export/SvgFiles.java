package thinclick.server.export;

import java.awt.geom.GeneralPath;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.io.OutputStream;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import thinclick.server.engraving.Glyph;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Page;

/**
 * Writes pages as one SVG, the pages below each other. Signs and letters are outlines, each kept
 * once, so that it looks the same everywhere; what a mark says aloud is its label.
 */
public final class SvgFiles {
  private static final String SVG = "http://www.w3.org/2000/svg";
  private static final double UNITS_PER_SPACE = 250; // Bravura: 1000 units are four spaces
  private static final double UNITS_PER_EM = 1000; // Source Serif 4

  private final XMLStreamWriter xml;

  private SvgFiles(XMLStreamWriter xml) {
    this.xml = xml;
  }

  /** Writes the pages to {@code out}, which stays open. */
  public static void write(List<Page> pages, String title, Locale language, OutputStream out)
      throws IOException {
    try {
      XMLStreamWriter xml = XMLOutputFactory.newInstance().createXMLStreamWriter(out, "UTF-8");
      new SvgFiles(xml).document(pages, title, language);
      xml.close();
    } catch (XMLStreamException e) {
      throw new IOException(e);
    }
  }

  private void document(List<Page> pages, String title, Locale language)
      throws IOException, XMLStreamException {
    double width = pages.stream().mapToDouble(Page::widthMm).max().orElse(0);
    double height = pages.stream().mapToDouble(Page::heightMm).sum();
    xml.writeStartDocument("UTF-8", "1.0");
    line();
    xml.writeStartElement("svg");
    xml.writeDefaultNamespace(SVG);
    attribute("width", number(width) + "mm");
    attribute("height", number(height) + "mm");
    attribute("viewBox", "0 0 " + number(width) + " " + number(height));
    attribute("lang", language.toLanguageTag());
    line();
    xml.writeStartElement("title");
    xml.writeCharacters(title);
    xml.writeEndElement();
    line();
    definitions(pages);
    double y = 0;
    for (Page page : pages) {
      xml.writeEmptyElement("rect");
      attribute("y", number(y));
      attribute("width", number(page.widthMm()));
      attribute("height", number(page.heightMm()));
      attribute("fill", "#ffffff");
      line();
      xml.writeStartElement("g");
      String scale = number(page.spaceMm());
      attribute("transform", "translate(0 " + number(y) + ") scale(" + scale + ")");
      attribute("aria-label", page.title());
      line();
      for (Mark mark : page.marks()) {
        mark(mark);
        line();
      }
      xml.writeEndElement();
      line();
      y += page.heightMm();
    }
    xml.writeEndElement();
    line();
    xml.writeEndDocument();
  }

  private void definitions(List<Page> pages) throws IOException, XMLStreamException {
    Map<String, GeneralPath> outlines = new LinkedHashMap<>();
    for (Page page : pages) {
      for (Mark mark : page.marks()) {
        if (mark instanceof Mark.Sign sign && !outlines.containsKey(id(sign.glyph()))) {
          outlines.put(id(sign.glyph()), GlyphOutlines.shipped().of(sign.glyph()));
        } else if (mark instanceof Mark.Text text) {
          for (int point : text.text().codePoints().toArray()) {
            if (!outlines.containsKey(id(text, point))) {
              outlines.put(id(text, point), GlyphOutlines.shipped().of(text.face(), point));
            }
          }
        }
      }
    }
    xml.writeStartElement("defs");
    line();
    for (Map.Entry<String, GeneralPath> outline : outlines.entrySet()) {
      xml.writeEmptyElement("path");
      attribute("id", outline.getKey());
      attribute("d", path(outline.getValue()));
      line();
    }
    xml.writeEndElement();
    line();
  }

  private void mark(Mark mark) throws XMLStreamException {
    String color = InkColor.hex(mark.ink());
    if (mark instanceof Mark.Sign sign) {
      xml.writeEmptyElement("use");
      attribute("href", "#" + id(sign.glyph()));
      double scale = sign.scale() / UNITS_PER_SPACE;
      attribute("transform", place(sign.x(), sign.y(), scale));
      attribute("fill", color);
      label(mark);
    } else if (mark instanceof Mark.Line line) {
      xml.writeEmptyElement("path");
      String from = number(line.x1()) + " " + number(line.y1());
      attribute("d", "M" + from + "L" + number(line.x2()) + " " + number(line.y2()));
      attribute("stroke", color);
      attribute("stroke-width", number(line.thickness()));
      if (line.dotted()) {
        double gap = Mark.Line.DOT_PERIOD - line.thickness();
        attribute("stroke-dasharray", number(line.thickness()) + " " + number(gap));
      }
      label(mark);
    } else if (mark instanceof Mark.Shape shape) {
      xml.writeEmptyElement("path");
      StringBuilder path = new StringBuilder("M" + number(shape.x()) + " " + number(shape.y()));
      for (Mark.Curve curve : shape.curves()) {
        path.append('C');
        append(path, curve.x1(), curve.y1(), curve.x2(), curve.y2(), curve.x(), curve.y());
      }
      attribute("d", path.append('Z').toString());
      attribute("fill", color);
      label(mark);
    } else if (mark instanceof Mark.Text text) {
      text(text, color);
    }
  }

  private void text(Mark.Text text, String color) throws XMLStreamException {
    xml.writeStartElement("g");
    attribute("transform", place(text.x(), text.y(), text.size() / UNITS_PER_EM));
    attribute("fill", color);
    attribute("aria-label", text.text());
    double x = 0;
    for (int point : text.text().codePoints().toArray()) {
      xml.writeEmptyElement("use");
      attribute("href", "#" + id(text, point));
      attribute("x", number(x));
      x += text.face().width(Character.toString(point), UNITS_PER_EM);
    }
    xml.writeEndElement();
  }

  private void label(Mark mark) throws XMLStreamException {
    if (!mark.place().spoken().isEmpty()) {
      attribute("aria-label", mark.place().spoken());
    }
  }

  private void attribute(String name, String value) throws XMLStreamException {
    xml.writeAttribute(name, value);
  }

  private void line() throws XMLStreamException {
    xml.writeCharacters("\n");
  }

  private static String id(Glyph glyph) {
    return "m" + Integer.toHexString(glyph.codePoint());
  }

  private static String id(Mark.Text text, int point) {
    return text.face().name().toLowerCase(Locale.ROOT).charAt(0) + Integer.toHexString(point);
  }

  private static String place(double x, double y, double scale) {
    String factor = String.format(Locale.ROOT, "%.6f", scale);
    return "matrix(" + factor + " 0 0 -" + factor + " " + number(x) + " " + number(y) + ")";
  }

  static String path(GeneralPath outline) {
    StringBuilder path = new StringBuilder();
    float[] at = new float[6];
    for (PathIterator i = outline.getPathIterator(null); !i.isDone(); i.next()) {
      switch (i.currentSegment(at)) {
        case PathIterator.SEG_MOVETO -> append(path.append('M'), at[0], at[1]);
        case PathIterator.SEG_LINETO -> append(path.append('L'), at[0], at[1]);
        case PathIterator.SEG_QUADTO -> append(path.append('Q'), at[0], at[1], at[2], at[3]);
        case PathIterator.SEG_CUBICTO ->
            append(path.append('C'), at[0], at[1], at[2], at[3], at[4], at[5]);
        default -> path.append('Z');
      }
    }
    return path.toString();
  }

  private static void append(StringBuilder path, double... numbers) {
    for (int i = 0; i < numbers.length; i++) {
      path.append(i == 0 ? "" : " ").append(number(numbers[i]));
    }
  }

  /** A number to a thousandth, without zeros at its end. */
  static String number(double value) {
    long thousandths = Math.round(value * 1000);
    if (thousandths % 1000 == 0) {
      return Long.toString(thousandths / 1000);
    }
    String sign = thousandths < 0 ? "-" : "";
    long size = Math.abs(thousandths);
    String part = String.format(Locale.ROOT, "%03d", size % 1000).replaceAll("0+$", "");
    return sign + size / 1000 + "." + part;
  }
}
