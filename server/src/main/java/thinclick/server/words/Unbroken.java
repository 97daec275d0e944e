package thinclick.server.words;

import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Sentences whose figures stay on one line with their units, and with what they number: on the
 * screen, on paper and in the terminal. Whoever breaks a sentence into lines asks here first.
 */
public final class Unbroken {
  private static final Pattern NUMBERED =
      Pattern.compile("\\b(at|bar|bars|Takt|Takte|Takten) (\\d)");

  private static final Pattern SHORT_UNIT = Pattern.compile("(?<=\\d) (?=(?:s|dB|MB)\\b)");

  private Unbroken() {}

  /** The same with no-break spaces there: "18 ms", "80 %", "bar 14". */
  public static String of(String text) {
    String units = text.replace(" %", "\u00a0%").replace(" ms", "\u00a0ms");
    units = SHORT_UNIT.matcher(units).replaceAll("\u00a0");
    return NUMBERED.matcher(units).replaceAll("$1\u00a0$2");
  }

  /** The pieces between which a line may end, for those who set a word at a time. */
  public static List<String> pieces(String text) {
    return Arrays.stream(of(text).split(" ", -1)).map(word -> word.replace('\u00a0', ' ')).toList();
  }
}
