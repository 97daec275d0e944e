package thinclick.protocol.json;

/**
 * Input that cannot be taken: says where it is wrong, what was expected and what was found.
 *
 * <p>The message is one line fit for a person at a terminal: {@code "stages[1].beats[0]: expected a
 * beat from 1 to 4, found 5"}.
 */
public final class BadInput extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String where;
  private final String says;

  /**
   * @param where the field's path or {@code "byte 12"}; empty when the whole input is meant
   * @param says what was expected and what was found
   */
  public BadInput(String where, String says) {
    super(where.isEmpty() ? says : where + ": " + says);
    this.where = where;
    this.says = says;
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
