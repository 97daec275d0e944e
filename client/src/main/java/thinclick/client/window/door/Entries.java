package thinclick.client.window.door;

import java.text.Normalizer;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thinclick.client.link.RoomAddress;
import thinclick.client.window.words.FromAfar;
import thinclick.client.window.words.Words;
import thinclick.protocol.invite.JoinLink;
import thinclick.protocol.json.BadInput;

/**
 * The name, the address and the room word as they are written: each is checked, and what is wrong
 * is said at the one it is about.
 */
final class Entries {
  private static final int LONGEST_NAME = 32;
  private static final Pattern WORD = Pattern.compile("[\\p{L} -]{1,32}");

  final Entry name = new Entry();
  final Entry address = new Entry();
  final Entry word = new Entry();

  private final Words words;

  Entries(Words words) {
    this.words = words;
  }

  void right() {
    all().forEach(Entry::right);
  }

  /** The first that has to be put right, in the order of the page. */
  Optional<Entry> firstWrong() {
    return all().stream().filter(Entry::isWrong).findFirst();
  }

  private List<Entry> all() {
    return List.of(name, address, word);
  }

  /** Which one a host's refusal is about; null where it is about none. */
  @Nullable Entry about(FromAfar.About about) {
    return switch (about) {
      case NAME -> name;
      case ADDRESS -> address;
      case WORD -> word;
      case NOTHING -> null;
    };
  }

  /** The name as a host takes it; null where it takes none such, which is said. */
  @Nullable String checkedName() {
    String written = Normalizer.normalize(name.written().strip(), Normalizer.Form.NFC);
    int length = written.codePointCount(0, written.length());
    if (length == 0) {
      name.wrong(words.say("door.name.missing"));
      return null;
    }
    if (length > LONGEST_NAME) {
      name.wrong(words.say("door.name.long", LONGEST_NAME, length));
      return null;
    }
    return written;
  }

  /** Where the host is; null where that is no address, which is said. */
  @Nullable RoomAddress checkedAddress() {
    try {
      return RoomAddress.parse(address.written().strip());
    } catch (BadInput wrong) {
      boolean link = JoinLink.isOne(address.written());
      address.wrong(words.say(link ? "door.link.wrong" : "door.address.wrong"));
      return null;
    }
  }

  /**
   * The word of the room; null where it cannot be one, which is said.
   *
   * @param where the address as it was checked; a link that is whole may bring the word along
   */
  @Nullable String checkedWord(@Nullable RoomAddress where) {
    String linked = where == null ? null : linkedWord();
    if (linked != null) {
      return linked;
    }
    String written = word.written().strip();
    if (written.isEmpty()) {
      word.wrong(words.say("door.word.missing"));
    } else if (!WORD.matcher(written).matches()) {
      word.wrong(words.say("door.word.wrong"));
    }
    return word.isWrong() ? null : written;
  }

  /** True where the address alone leads into a room. */
  boolean addressIsEnough() {
    try {
      return linkedWord() != null;
    } catch (BadInput wrong) {
      return false;
    }
  }

  /** The word that a join link brings along; null where the address is none or has none. */
  private @Nullable String linkedWord() {
    String written = address.written();
    return JoinLink.isOne(written) ? JoinLink.parse(written).word() : null;
  }
}
