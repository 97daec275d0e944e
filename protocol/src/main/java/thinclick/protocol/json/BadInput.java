package thinclick.protocol.json;

/**
 * Input that cannot be taken: says where it is wrong, what was expected and what was found.
 *
 * <p>The message is one line fit for a person at a terminal: {@code "stages[1].beats[0]: expected a
 * beat from 1 to 4, found 5"}.
 */
public final class BadInput extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private static final int MAX_CHARACTERS = 500;

  private final String where;
  private final String says;

  /**
   * @param where the field's path, {@code "line 6, column 13"} or {@code "byte 12"}; empty when the
   *     whole input is meant
   * @param says what was expected and what was found
   */
  public BadInput(String where, String says) {
    super(line(where, says), null, false, false); // strangers cause it; the place is in the line
    this.where = where;
    this.says = says;
  }

  /** What was found may hold anything, so that the line shows no control and never grows long. */
  private static String line(String where, String says) {
    String whole = where.isEmpty() ? says : where + ": " + says;
    if (whole.length() <= MAX_CHARACTERS && whole.chars().allMatch(c -> c >= ' ' && c <= '~')) {
      return whole;
    }
    StringBuilder line = new StringBuilder();
    whole.codePoints().limit(MAX_CHARACTERS).forEach(point -> line.append(Visible.shown(point)));
    return line.append(whole.codePointCount(0, whole.length()) > MAX_CHARACTERS ? " ..." : "")
        .toString();
  }

  /** The field's path, a byte, or empty. */
  public String where() {
    return where;
  }

  /** What was expected and what was found, without the place. */
  public String says() {
    return says;
  }

  /**
   * The same complaint, one level further out: {@code "beats[0]"} becomes {@code
   * "stages[1].beats[0]"}.
   */
  public BadInput within(String outer) {
    if (outer.isEmpty()) {
      return this;
    }
    if (outer.equals(where) || outer.endsWith("." + where)) {
      return new BadInput(
          outer, says); // a value that names itself, inside a field of the same name
    }
    String joined =
        where.isEmpty() ? outer : where.startsWith("[") ? outer + where : outer + "." + where;
    return new BadInput(joined, says);
  }
}
