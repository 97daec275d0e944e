package thinclick.server.words;

import java.util.regex.Pattern;

/** Sentences whose figures stay on one line with their units, and with what they number. */
public final class Unbroken {
  private static final Pattern NUMBERED =
      Pattern.compile("\\b(at|bar|bars|Takt|Takte|Takten) (\\d)");

  private Unbroken() {}

  /** The same with no-break spaces there: "18 ms", "80 %", "bar 14". */
  public static String of(String text) {
    String units = text.replace(" %", "\u00a0%").replace(" ms", "\u00a0ms");
    return NUMBERED.matcher(units).replaceAll("$1\u00a0$2");
  }
}
