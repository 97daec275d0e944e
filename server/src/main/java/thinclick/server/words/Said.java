package thinclick.server.words;

import java.util.List;

/**
 * Something to be said, in no language yet: a key of the message bundle and what goes into it.
 *
 * @param key the message's key
 * @param values what stands for {0}, {1} ...: texts as they are, whole numbers (which choose
 *     plurals), {@link Quantity quantities}, rows, and others of this kind, said in their turn
 */
public record Said(String key, List<Object> values) {
  public Said {
    values = List.copyOf(values);
  }

  /**
   * Several values, one after the other.
   *
   * @param and true where the last is joined by an "and"
   */
  public record Row(List<? extends Object> values, boolean and) {
    public Row {
      values = List.copyOf(values);
    }
  }

  /** A message with its values. */
  public static Said of(String key, Object... values) {
    return new Said(key, List.of(values));
  }
}
