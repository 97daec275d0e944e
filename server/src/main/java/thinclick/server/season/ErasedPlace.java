package thinclick.server.season;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;

/**
 * A file, and what was or would be erased in it.
 *
 * @param file where
 * @param erased what of a database; null for another file
 * @param done what happened to another file; null for a database
 */
public record ErasedPlace(String file, @Nullable Erased erased, @Nullable Done done) {
  private static final List<String> OUTSIDE =
      List.of(
          "erase.outside.files",
          "erase.outside.seasons",
          "erase.outside.players",
          "erase.outside.copies");

  /** What happens to a file that is not looked into as a database. */
  public enum Done {
    /** A backup, of which the same would go; it is looked into only when it does. */
    THE_SAME,
    /** It was written again without the name. */
    REWRITTEN,
    /** It was deleted. */
    DELETED,
    /** It is no file of ours to change, and the name stands in it. */
    STILL_NAMED
  }

  /** "room.db: name replaced in two takes (t1, t2), ..." */
  public String say(Speaker speaker) {
    return file + ": " + speaker.say(said());
  }

  /** What comes before {@link #outside}: "Erasing here does not reach:". */
  public static String outsideHead(Speaker speaker) {
    return speaker.say("erase.outside");
  }

  /**
   * Where a name may still be that this computer cannot reach: the rest of that sentence, a line
   * for each kind of place.
   */
  public static List<String> outside(Speaker speaker) {
    return OUTSIDE.stream().map(speaker::say).toList();
  }

  private Said said() {
    if (done != null) {
      return Said.of("erase.file." + done);
    }
    if (erased == null || erased.nothing()) {
      return Said.of("erase.nothing");
    }
    List<Said> parts = new ArrayList<>();
    if (!erased.deleted().isEmpty()) {
      parts.add(Said.of("erase.gone", counted("erase.takesGone", erased.deleted().size())));
    } else {
      parts.add(
          Said.of(
              erased.takes().isEmpty() ? "erase.replaced" : "erase.replacedIn",
              counted("erase.takes", erased.takes().size()),
              String.join(", ", erased.takes())));
    }
    if (erased.reviews() > 0) {
      parts.add(counted("erase.reviews", erased.reviews()));
    }
    if (erased.members() > 0) {
      parts.add(counted("erase.members", erased.members()));
    }
    if (erased.rooms() > 0) {
      parts.add(counted("erase.rooms", erased.rooms()));
    }
    return Said.of("erase.row", new Said.Row(parts, false));
  }

  private static Said counted(String key, int count) {
    return Said.of(key, count, Integer.toString(count));
  }
}
