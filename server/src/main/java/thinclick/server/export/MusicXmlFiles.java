package thinclick.server.export;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import thinclick.server.engraving.Cut;
import thinclick.server.material.WrittenPart;

/**
 * Writes parts as one MusicXML 4.0 score: the rhythm as it is engraved, with ties, tuplets and
 * beams; written pitch and transposition; chord symbols; percussion; tempo and swing as sound.
 *
 * <p>Parts of different length are repeated to the longest. A part that begins anew after its last
 * bar has repeat signs where all parts agree on them.
 */
public final class MusicXmlFiles {
  private static final String DOCTYPE =
      "<!DOCTYPE score-partwise PUBLIC \"-//Recordare//DTD MusicXML 4.0 Partwise//EN\""
          + " \"http://www.musicxml.org/dtds/partwise.dtd\">";

  private MusicXmlFiles() {}

  /** Writes the score to {@code out}, which stays open. */
  public static void write(List<WrittenPart> parts, OutputStream out) throws IOException {
    if (parts.isEmpty()) {
      throw new IllegalArgumentException("expected at least one part");
    }
    try {
      XmlText xml = new XmlText(XMLOutputFactory.newInstance().createXMLStreamWriter(out, "UTF-8"));
      xml.start(DOCTYPE);
      xml.open("score-partwise", "version", "4.0");
      xml.open("work");
      xml.text("work-title", parts.get(0).heading().title());
      xml.close();
      xml.open("identification");
      xml.open("encoding");
      xml.text("software", "Thinclick");
      xml.close();
      xml.close();
      score(xml, parts);
      xml.close();
      xml.end();
    } catch (XMLStreamException e) {
      throw new IOException(e);
    }
  }

  private static void score(XmlText xml, List<WrittenPart> parts) throws XMLStreamException {
    int bars = parts.stream().mapToInt(WrittenPart::bars).max().orElse(1);
    int repeatFrom = parts.get(0).repeatFromBar();
    boolean repeats =
        parts.stream().allMatch(part -> part.bars() == bars && part.repeatFromBar() == repeatFrom);
    xml.open("part-list");
    for (int i = 0; i < parts.size(); i++) {
      new MusicXmlPart(xml, parts.get(i), i + 1, bars, Cut.BEATS).header();
    }
    xml.close();
    for (int i = 0; i < parts.size(); i++) {
      new MusicXmlPart(xml, parts.get(i), i + 1, bars, Cut.BEATS).body(repeats ? repeatFrom : -1);
    }
  }
}
