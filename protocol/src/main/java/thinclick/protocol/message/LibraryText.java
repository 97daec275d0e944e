package thinclick.protocol.message;

import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.AnswerMessage.LibraryList;

/**
 * The text of a host's list of drills and lessons, the longest that anybody may ask for: written
 * once, since whoever asks is told the same.
 */
final class LibraryText {
  private static volatile @Nullable LibraryText last;

  private final LibraryList list;
  private final byte[] text;

  private LibraryText(LibraryList list) {
    this.list = list;
    this.text = MessageCodec.writeByFields(list);
  }

  /** The text of a list; written anew where another list was asked for before. */
  static byte[] of(LibraryList list) {
    LibraryText written = last;
    if (written == null || !written.list.equals(list)) {
      written = new LibraryText(list);
      last = written;
    }
    return written.text.clone();
  }
}
