package thinclick.server.words;

import java.util.Locale;
import java.util.Set;

/** What a chair does for the whole, in a reader's language; drills may name roles of their own. */
public final class RoleWords {
  /** The roles that there are words for. */
  static final Set<String> KNOWN =
      Set.of(
          "timeline",
          "clave",
          "bass",
          "ride",
          "timekeeper",
          "hi-hat",
          "comping",
          "answer",
          "answers",
          "horns",
          "shaker",
          "other");

  private RoleWords() {}

  /** The role said; a word that is not known stands as the drill writes it. */
  public static String of(String role, Speaker speaker) {
    String lower = role.toLowerCase(Locale.ROOT);
    return KNOWN.contains(lower) ? speaker.say("role." + lower) : role;
  }

  /** The same for a sentence. */
  public static Object said(String role) {
    String lower = role.toLowerCase(Locale.ROOT);
    return KNOWN.contains(lower) ? Said.of("role." + lower) : role;
  }
}
