package thinclick.server.command;

import thinclick.server.words.Speaker;

/** Counts as English prose writes them: in words up to twelve, then in figures. */
final class Counted {
  private Counted() {}

  /** {@code "three"}, {@code "14"}. */
  static String of(int count) {
    return Speaker.english().say(Speaker.number(count));
  }

  /** {@code "one take"}, {@code "three takes"}, of a thing whose plural is an s. */
  static String of(int count, String thing) {
    return of(count) + " " + plural(count, thing);
  }

  /** The thing as a count in figures wants it: {@code "take"}, {@code "takes"}. */
  static String plural(long count, String thing) {
    return count == 1 ? thing : thing + "s";
  }
}
