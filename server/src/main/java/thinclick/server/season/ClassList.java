package thinclick.server.season;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.SeasonFile;
import thinclick.protocol.file.SeasonFile.Member;
import thinclick.protocol.json.BadInput;

/**
 * A class as it was written down: nicknames and chairs, nothing else.
 *
 * @param title by which it is called
 * @param keepMonths how long its takes are kept, 0 for ever; null: as the host does it
 * @param members who was written into it; who merely played in it is known from its takes
 */
public record ClassList(String title, @Nullable Integer keepMonths, List<Member> members) {
  public ClassList {
    members = List.copyOf(members);
  }

  /**
   * A title as it is kept.
   *
   * @throws BadInput where it is empty, too long, or holds what cannot be seen
   */
  public static String title(String where, String written) {
    String shown = Normalizer.normalize(written.strip(), Normalizer.Form.NFC);
    int points = shown.codePointCount(0, shown.length());
    if (points < 1 || points > SeasonFile.LONGEST_TITLE) {
      throw new BadInput(
          where, "expected 1 to " + SeasonFile.LONGEST_TITLE + " characters, found " + points);
    }
    if (shown.codePoints().anyMatch(Character::isISOControl)) {
      throw new BadInput(where, "expected visible characters, found a control character");
    }
    return shown;
  }

  /** Equal for titles that mean the same class: in any case, with hyphens for spaces. */
  public static String key(String title) {
    return Normalizer.normalize(title.strip(), Normalizer.Form.NFKC)
        .replace('-', ' ')
        .toUpperCase(Locale.ROOT)
        .toLowerCase(Locale.ROOT)
        .replaceAll("\\s+", " ");
  }

  /** Who was written in under that name. */
  public Optional<Member> member(String name) {
    String key = NameKey.of(name);
    return members.stream().filter(one -> NameKey.of(one.name()).equals(key)).findFirst();
  }
}
