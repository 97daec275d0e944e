package thinclick.server.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.Nearest;

/** Words and numbers as people type them behind an option. */
final class Typed {
  private Typed() {}

  /** The value of a word in any case, hyphens for spaces; a miss names the nearest. */
  static <T> T word(String where, String typed, Map<String, T> words) {
    @Nullable T found = words.get(Nearest.folded(typed));
    if (found == null) {
      throw new BadInput(
          where,
          "expected "
              + String.join(", ", words.keySet().stream().sorted().toList())
              + ", found \""
              + typed
              + "\"; "
              + Nearest.didYouMean(typed, words.keySet()));
    }
    return found;
  }

  /** Whole numbers with spaces or commas between. */
  static List<Integer> numbers(String where, String written) {
    List<Integer> numbers = new ArrayList<>();
    for (String piece : written.strip().split("[\\s,]+", -1)) {
      try {
        numbers.add(Integer.parseInt(piece));
      } catch (NumberFormatException notANumber) {
        throw new BadInput(
            where, "expected whole numbers such as \"0 3 6\", found \"" + written + "\"");
      }
    }
    return numbers;
  }
}
