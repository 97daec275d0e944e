package thinclick.server.export;

import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** An XML document written element by element, indented. */
final class XmlText {
  private final XMLStreamWriter xml;
  private int depth;
  private boolean empty = true;

  XmlText(XMLStreamWriter xml) {
    this.xml = xml;
  }

  void start(String doctype) throws XMLStreamException {
    xml.writeStartDocument("UTF-8", "1.0");
    xml.writeCharacters("\n");
    xml.writeDTD(doctype);
  }

  void end() throws XMLStreamException {
    xml.writeCharacters("\n");
    xml.writeEndDocument();
    xml.close();
  }

  /** Opens an element with attributes given as name, value, name, value. */
  void open(String name, String... attributes) throws XMLStreamException {
    line();
    xml.writeStartElement(name);
    attributes(attributes);
    depth++;
    empty = true;
  }

  void close() throws XMLStreamException {
    depth--;
    if (!empty) {
      line();
    }
    xml.writeEndElement();
    empty = false;
  }

  /** An element that holds text. */
  void text(String name, String text, String... attributes) throws XMLStreamException {
    line();
    xml.writeStartElement(name);
    attributes(attributes);
    xml.writeCharacters(text);
    xml.writeEndElement();
    empty = false;
  }

  void text(String name, long number) throws XMLStreamException {
    text(name, Long.toString(number));
  }

  /** An element without content. */
  void empty(String name, String... attributes) throws XMLStreamException {
    line();
    xml.writeEmptyElement(name);
    attributes(attributes);
    empty = false;
  }

  private void attributes(String... attributes) throws XMLStreamException {
    for (int i = 0; i < attributes.length; i += 2) {
      xml.writeAttribute(attributes[i], attributes[i + 1]);
    }
  }

  private void line() throws XMLStreamException {
    xml.writeCharacters("\n" + " ".repeat(depth));
  }
}
