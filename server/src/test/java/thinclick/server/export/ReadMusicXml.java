package thinclick.server.export;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.StringReader;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.parsers.SAXParserFactory;
import javax.xml.transform.sax.SAXSource;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.audiveris.proxymusic.Attributes;
import org.audiveris.proxymusic.Note;
import org.audiveris.proxymusic.Pitch;
import org.audiveris.proxymusic.ScorePartwise;
import org.audiveris.proxymusic.StartStop;
import org.audiveris.proxymusic.Tie;
import org.audiveris.proxymusic.util.Marshalling;
import org.w3c.dom.ls.LSInput;
import org.w3c.dom.ls.LSResourceResolver;
import org.xml.sax.InputSource;
import org.xml.sax.XMLReader;

/** Validates MusicXML against the W3C schema and reads it with a library that did not write it. */
final class ReadMusicXml {
  private static final Schema SCHEMA = schema();

  private ReadMusicXml() {}

  /** A sounding note; times in quarters from the beginning, ties joined. */
  record Onset(double at, double length, int written) {}

  /** The same in the divisions of the file, so that sums stay exact. */
  private record Counted(long at, long length, int written) {}

  /** Throws where the document breaks a rule of MusicXML 4.0. */
  static void validate(byte[] document) throws Exception {
    SAXParserFactory factory = SAXParserFactory.newInstance();
    factory.setNamespaceAware(true);
    XMLReader reader = factory.newSAXParser().getXMLReader();
    reader.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
    InputSource source = new InputSource(new ByteArrayInputStream(document));
    SCHEMA.newValidator().validate(new SAXSource(reader, source));
  }

  /** The onsets of each part. */
  static List<List<Onset>> onsets(byte[] document) throws Exception {
    ScorePartwise score = (ScorePartwise) Marshalling.unmarshal(new ByteArrayInputStream(document));
    List<List<Onset>> parts = new ArrayList<>();
    for (ScorePartwise.Part part : score.getPart()) {
      List<Counted> onsets = new ArrayList<>();
      long at = 0;
      double divisions = 1;
      for (ScorePartwise.Part.Measure measure : part.getMeasure()) {
        for (Object child : measure.getNoteOrBackupOrForward()) {
          if (child instanceof Attributes attributes && attributes.getDivisions() != null) {
            divisions = attributes.getDivisions().doubleValue();
          } else if (child instanceof Note note) {
            long length = note.getDuration().longValueExact();
            if (note.getRest() == null) {
              sound(note, at, length, onsets);
            }
            at += length;
          }
        }
      }
      double quarter = divisions;
      parts.add(
          onsets.stream()
              .map(on -> new Onset(on.at() / quarter, on.length() / quarter, on.written()))
              .toList());
    }
    return parts;
  }

  private static void sound(Note note, long at, long length, List<Counted> onsets) {
    boolean continues = note.getTie().stream().map(Tie::getType).anyMatch(StartStop.STOP::equals);
    if (continues && !onsets.isEmpty()) {
      Counted last = onsets.remove(onsets.size() - 1);
      onsets.add(new Counted(last.at(), last.length() + length, last.written()));
    } else {
      onsets.add(new Counted(at, length, midi(note.getPitch())));
    }
  }

  private static int midi(Pitch pitch) {
    if (pitch == null) {
      return -1;
    }
    int letter = "C D EF G A B".indexOf(pitch.getStep().value());
    BigDecimal alter = pitch.getAlter();
    return 12 * (pitch.getOctave() + 1) + letter + (alter == null ? 0 : alter.intValue());
  }

  private static Schema schema() {
    try {
      SchemaFactory factory = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI);
      factory.setResourceResolver(new Beside());
      InputStream schema =
          ScorePartwise.class.getResourceAsStream("/META-INF/jaxb/xsd/musicxml.xsd");
      return factory.newSchema(new StreamSource(schema));
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  /** Answers the schema's two imports from the fixtures. */
  private record Beside() implements LSResourceResolver {
    @Override
    public LSInput resolveResource(
        String type, String namespace, String publicId, String systemId, String baseUri) {
      String file = systemId.substring(systemId.lastIndexOf('/') + 1);
      InputStream in = ReadMusicXml.class.getResourceAsStream("/fixtures/" + file);
      if (in == null) {
        throw new IllegalStateException("no " + systemId + " among the fixtures");
      }
      return new Given(in);
    }
  }

  private record Given(InputStream in) implements LSInput {
    @Override
    public java.io.Reader getCharacterStream() {
      try {
        return new StringReader(
            new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8));
      } catch (java.io.IOException e) {
        throw new java.io.UncheckedIOException(e);
      }
    }

    @Override
    public void setCharacterStream(java.io.Reader reader) {}

    @Override
    public InputStream getByteStream() {
      return null;
    }

    @Override
    public void setByteStream(InputStream stream) {}

    @Override
    public String getStringData() {
      return null;
    }

    @Override
    public void setStringData(String data) {}

    @Override
    public String getSystemId() {
      return null;
    }

    @Override
    public void setSystemId(String id) {}

    @Override
    public String getPublicId() {
      return null;
    }

    @Override
    public void setPublicId(String id) {}

    @Override
    public String getBaseURI() {
      return null;
    }

    @Override
    public void setBaseURI(String uri) {}

    @Override
    public String getEncoding() {
      return null;
    }

    @Override
    public void setEncoding(String encoding) {}

    @Override
    public boolean getCertifiedText() {
      return false;
    }

    @Override
    public void setCertifiedText(boolean certified) {}
  }
}
