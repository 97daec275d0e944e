package thinclick.server.room;

import java.util.List;
import java.util.Locale;
import java.util.random.RandomGenerator;

/**
 * The word that a room is called by, across a room: syllables of one consonant and one vowel, none
 * of which is written in two ways.
 */
public final class RoomWord {
  /** Syllables in a local network: 80^4 words, 25 bits. */
  public static final int LOCAL = 4;

  /** Syllables where the host is bound publicly: 80^6 words, 38 bits. */
  public static final int PUBLIC = 6;

  private static final String CONSONANTS = "bdfghjklmnprstvz";
  private static final String VOWELS = "aeiou";

  /**
   * From memory: rude or hateful in languages a class may speak, or close enough to be laughed at.
   */
  private static final List<String> RUDE =
      List.of(
          "baka", "boba", "bobo", "kaka", "kako", "koko", "koka", "kuka", "kulo", "kuso", "kona",
          "kono", "fagi", "fago", "fegi", "figa", "foda", "fuka", "fuki", "fuko", "hiru", "hitu",
          "homo", "hore", "huri", "hure", "huro", "jude", "kike", "luder", "mona", "moro", "nazi",
          "nega", "negi", "nego", "niga", "nigi", "nigo", "nigu", "pedo", "pene", "peni", "pipi",
          "piso", "pizu", "popo", "puta", "puto", "pute", "pupu", "rape", "rapi", "rasi", "sado",
          "satan", "sefi", "seku", "sifi", "suka", "tete", "teta", "titi", "tito", "vagi", "zobi");

  private RoomWord() {}

  /** A word of so many syllables. */
  public static String pick(RandomGenerator random, int syllables) {
    while (true) {
      StringBuilder word = new StringBuilder();
      for (int i = 0; i < syllables; i++) {
        word.append(CONSONANTS.charAt(random.nextInt(CONSONANTS.length())));
        word.append(VOWELS.charAt(random.nextInt(VOWELS.length())));
      }
      if (RUDE.stream().noneMatch(rude -> word.indexOf(rude) >= 0)) {
        return word.toString();
      }
    }
  }

  /** The word as it is kept, however it was typed: small letters, without spaces and hyphens. */
  public static String normal(String typed) {
    return typed.toLowerCase(Locale.ROOT).replaceAll("[\\s-]+", "");
  }
}
