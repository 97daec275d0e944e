package thinclick.server.export;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import thinclick.server.picture.Drawing;

/**
 * Writes a drawing as SVG or PNG. Letters are outlines of the shipped fonts, so that both look the
 * same everywhere, also where no font is installed; what the drawing says is its description.
 */
public final class DrawingFiles {
  private static final double UNITS_PER_EM = 1000; // Source Serif 4
  private static final float[] DASH = {4, 3};

  private DrawingFiles() {}

  /** The drawing as an SVG document in UTF-8. */
  public static byte[] svg(Drawing drawing) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      XMLStreamWriter xml = XMLOutputFactory.newInstance().createXMLStreamWriter(out, "UTF-8");
      new Svg(xml).document(drawing);
      xml.close();
    } catch (XMLStreamException e) {
      throw new IllegalStateException(e); // memory does not fail
    } catch (IOException e) {
      throw new UncheckedIOException(e); // a shipped font
    }
    return out.toByteArray();
  }

  /**
   * The drawing as a PNG picture.
   *
   * @param scale pixels a unit
   */
  public static byte[] png(Drawing drawing, double scale) {
    BufferedImage image =
        new BufferedImage(
            (int) Math.ceil(drawing.width() * scale),
            (int) Math.ceil(drawing.height() * scale),
            BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
      g.scale(scale, scale);
      for (Drawing.Item item : drawing.items()) {
        paint(g, item);
      }
      ImageIO.write(image, "png", out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      g.dispose();
    }
    return out.toByteArray();
  }

  private static void paint(Graphics2D g, Drawing.Item item) throws IOException {
    g.setColor(new Color(item.tint().rgb()));
    if (item instanceof Drawing.Line line) {
      float thickness = (float) line.thickness();
      g.setStroke(
          line.dashed()
              ? new BasicStroke(thickness, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, DASH, 0)
              : new BasicStroke(thickness, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND));
      g.draw(new Line2D.Double(line.x1(), line.y1(), line.x2(), line.y2()));
    } else if (item instanceof Drawing.Box box) {
      g.fill(new Rectangle2D.Double(box.x(), box.y(), box.width(), box.height()));
    } else if (item instanceof Drawing.Disc disc) {
      double r = disc.radius();
      g.fill(new Ellipse2D.Double(disc.x() - r, disc.y() - r, 2 * r, 2 * r));
    } else if (item instanceof Drawing.Words words) {
      double x = words.left();
      double scale = words.size() / UNITS_PER_EM;
      for (int point : words.text().codePoints().toArray()) {
        AffineTransform place = new AffineTransform(scale, 0, 0, -scale, x, words.y());
        g.fill(place.createTransformedShape(GlyphOutlines.shipped().of(words.face(), point)));
        x += words.face().width(Character.toString(point), words.size());
      }
    }
  }

  /** One document. */
  private static final class Svg {
    private final XMLStreamWriter xml;

    Svg(XMLStreamWriter xml) {
      this.xml = xml;
    }

    void document(Drawing drawing) throws XMLStreamException, IOException {
      xml.writeStartDocument("UTF-8", "1.0");
      xml.writeCharacters("\n");
      xml.writeStartElement("svg");
      xml.writeDefaultNamespace("http://www.w3.org/2000/svg");
      put("width", drawing.width());
      put("height", drawing.height());
      xml.writeAttribute(
          "viewBox",
          "0 0 " + SvgFiles.number(drawing.width()) + " " + SvgFiles.number(drawing.height()));
      xml.writeAttribute("role", "img");
      element("title", drawing.title());
      element("desc", drawing.says());
      for (Drawing.Item item : drawing.items()) {
        xml.writeCharacters("\n");
        write(item);
      }
      xml.writeCharacters("\n");
      xml.writeEndElement();
      xml.writeEndDocument();
    }

    private void write(Drawing.Item item) throws XMLStreamException, IOException {
      String color = "#%06x".formatted(item.tint().rgb());
      if (item instanceof Drawing.Line line) {
        xml.writeEmptyElement("line");
        put("x1", line.x1());
        put("y1", line.y1());
        put("x2", line.x2());
        put("y2", line.y2());
        put("stroke-width", line.thickness());
        xml.writeAttribute("stroke", color);
        if (line.dashed()) {
          xml.writeAttribute("stroke-dasharray", (int) DASH[0] + " " + (int) DASH[1]);
        }
      } else if (item instanceof Drawing.Box box) {
        xml.writeEmptyElement("rect");
        put("x", box.x());
        put("y", box.y());
        put("width", box.width());
        put("height", box.height());
        xml.writeAttribute("fill", color);
      } else if (item instanceof Drawing.Disc disc) {
        xml.writeEmptyElement("circle");
        put("cx", disc.x());
        put("cy", disc.y());
        put("r", disc.radius());
        xml.writeAttribute("fill", color);
      } else if (item instanceof Drawing.Words words) {
        words(words, color);
      }
    }

    private void words(Drawing.Words words, String color) throws XMLStreamException, IOException {
      StringBuilder path = new StringBuilder();
      double x = words.left();
      double scale = words.size() / UNITS_PER_EM;
      for (int point : words.text().codePoints().toArray()) {
        AffineTransform place = new AffineTransform(scale, 0, 0, -scale, x, words.y());
        path.append(
            SvgFiles.path(
                new java.awt.geom.GeneralPath(
                    place.createTransformedShape(
                        GlyphOutlines.shipped().of(words.face(), point)))));
        x += words.face().width(Character.toString(point), words.size());
      }
      xml.writeEmptyElement("path");
      xml.writeAttribute("aria-label", words.text());
      xml.writeAttribute("fill", color);
      xml.writeAttribute("d", path.toString());
    }

    private void element(String name, String text) throws XMLStreamException {
      xml.writeCharacters("\n");
      xml.writeStartElement(name);
      xml.writeCharacters(text);
      xml.writeEndElement();
    }

    private void put(String name, double value) throws XMLStreamException {
      xml.writeAttribute(name, SvgFiles.number(value));
    }
  }
}
