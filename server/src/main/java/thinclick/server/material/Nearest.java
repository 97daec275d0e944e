package thinclick.server.material;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.apache.commons.text.similarity.LevenshteinDistance;

/** The right words that come nearest to a wrong one, for sentences that complain. */
public final class Nearest {
  private static final LevenshteinDistance LETTERS = LevenshteinDistance.getDefaultInstance();

  private Nearest() {}

  /** The form in which words are compared: any case, hyphens for spaces, no space at the ends. */
  public static String folded(String word) {
    return word.strip().toLowerCase(Locale.ROOT).replace('-', ' ').replaceAll("\\s+", " ");
  }

  /** The {@code most} words nearest to {@code typed}, nearest first; equals in their order. */
  public static List<String> words(String typed, Collection<String> words, int most) {
    String wanted = folded(typed);
    return words.stream()
        .map(word -> new Far(word, distance(wanted, folded(word))))
        .sorted(Comparator.comparingInt(Far::by))
        .limit(most)
        .map(Far::word)
        .toList();
  }

  /** How far off a word is, found once: a comparison would ask ten times as often. */
  private record Far(String word, int by) {}

  /** {@code did you mean "Short threes", "Long threes" or "Tresillo"?} */
  public static String didYouMean(String typed, Collection<String> words) {
    List<String> near =
        words(typed, words, 3).stream().map(word -> '"' + word + '"').collect(Collectors.toList());
    if (near.size() < 2) {
      return "did you mean " + String.join("", near) + "?";
    }
    String last = near.remove(near.size() - 1);
    return "did you mean " + String.join(", ", near) + " or " + last + "?";
  }

  /** Letters to change; a word that holds the other whole, or a word of it, comes before. */
  private static int distance(String wanted, String word) {
    int letters = LETTERS.apply(wanted, word);
    if (!wanted.isEmpty() && (word.contains(wanted) || wanted.contains(word))) {
      return letters - 1_000;
    }
    int nearestPiece = letters;
    for (String piece : word.split(" ", -1)) {
      nearestPiece = Math.min(nearestPiece, LETTERS.apply(wanted, piece) + 1);
    }
    int shared = 0;
    for (String piece : wanted.split(" ", -1)) {
      shared += piece.length() > 2 && word.contains(piece) ? 1 : 0;
    }
    return Math.min(letters, nearestPiece) - 3 * shared;
  }
}
