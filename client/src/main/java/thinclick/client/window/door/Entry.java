package thinclick.client.window.door;

import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;

/** Something that is written at the door, and what is wrong with it until it is written anew. */
public final class Entry {
  private final StringProperty written = new SimpleStringProperty("");
  private final ReadOnlyStringWrapper says = new ReadOnlyStringWrapper("");

  Entry() {
    written.addListener(any -> right());
  }

  /** What is written, as it is written. */
  public StringProperty writtenProperty() {
    return written;
  }

  /** What is written, as it is written. */
  public String written() {
    return written.get();
  }

  /** Writes something. */
  public void write(String text) {
    written.set(text);
  }

  /** What is wrong with it, a sentence; empty where nothing is. */
  public ReadOnlyStringProperty saysProperty() {
    return says.getReadOnlyProperty();
  }

  /** What is wrong with it, a sentence; empty where nothing is. */
  public String says() {
    return says.get();
  }

  void wrong(String sentence) {
    says.set(sentence);
  }

  void right() {
    says.set("");
  }

  boolean isWrong() {
    return !says.get().isEmpty();
  }
}
