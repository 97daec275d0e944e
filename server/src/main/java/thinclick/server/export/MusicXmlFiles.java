package thinclick.server.export;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import thinclick.protocol.music.ClickPlan;
import thinclick.server.material.WrittenPart;

/**
 * Writes parts as one MusicXML 4.0 score of the whole take: the rhythm as it is engraved, with
 * ties, tuplets and beams; written pitch and transposition; chord symbols; percussion; tempo and
 * swing as sound.
 *
 * <p>Bars are written out from the first to the last, without repeats, because the click is another
 * at every stage: it stands below as a part of its own, each stage in words where it begins.
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

  private static void score(XmlText xml, List<WrittenPart> written) throws XMLStreamException {
    int bars = new ClickPlan(written.get(0).stages()).bars();
    List<MusicXmlPart> parts = new ArrayList<>();
    for (int i = 0; i < written.size(); i++) {
      parts.add(MusicXmlPart.of(xml, written.get(i), i + 1, bars));
    }
    parts.add(MusicXmlPart.click(xml, written.get(0), parts.size() + 1, bars));
    xml.open("part-list");
    for (MusicXmlPart part : parts) {
      part.header();
    }
    xml.close();
    for (MusicXmlPart part : parts) {
      part.body();
    }
  }
}
