package thinclick.server.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.Nearest;

/** Words and numbers as people type them behind an option. */
final class Typed {
  private Typed() {}

  /**
   * Does what an option asks for. What the drill refuses of it names a field that nobody typed: it
   * is said of the option.
   *
   * @param others further options that have a hand in it, told by their fields
   */
  static <T> T of(Supplier<T> doing, String option, String... others) {
    try {
      return byField(doing, others);
    } catch (BadInput bad) {
      throw bad.where().startsWith("--") ? bad : new BadInput(option, bad.says());
    }
  }

  /** The same where only a field of an option's name tells that it is the option's. */
  static <T> T byField(Supplier<T> doing, String... options) {
    try {
      return doing.get();
    } catch (BadInput bad) {
      String field = bad.where().replaceFirst("[^a-zA-Z-].*", "");
      String named = "--" + field.replaceAll("(?=[A-Z])", "-").toLowerCase(Locale.ROOT);
      throw List.of(options).contains(named) ? new BadInput(named, bad.says()) : bad;
    }
  }

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
