package thinclick.protocol.json;

/**
 * Which characters a person sees as themselves. The others end a line, colour a terminal, turn the
 * direction of what follows, or show nothing at all: names may not hold them, messages and logs
 * show them escaped.
 */
public final class Visible {
  private Visible() {}

  /** By its general category in Unicode. */
  public static boolean is(int codePoint) {
    return switch (Character.getType(codePoint)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          false;
      default -> true;
    };
  }

  /** Itself, or its number: {@code \}{@code u001b}. */
  public static String shown(int codePoint) {
    return is(codePoint) ? Character.toString(codePoint) : String.format("\\u%04x", codePoint);
  }
}
