package thinclick.client.window.review;

import java.util.List;

/**
 * A table as the leader reads it.
 *
 * @param heads of its columns
 * @param lines as many cells each
 */
record Lines(List<String> heads, List<List<String>> lines) {
  Lines {
    heads = List.copyOf(heads);
    lines = List.copyOf(lines);
  }
}
