package thinclick.server.command;

import java.nio.file.Path;
import java.util.List;
import thinclick.protocol.json.BadInput;
import tools.jackson.core.JacksonException;

/**
 * A file of options that is no TOML, said as expected and found, with the line and the column that
 * an editor shows. What the parser says of it stands behind, for those who know TOML.
 */
final class NotToml {
  private NotToml() {}

  /** The complaint about a file that holds this text. */
  static BadInput explain(Path file, String text, JacksonException wrong) {
    int line = Math.max(1, wrong.getLocation().getLineNr());
    int column = Math.max(1, wrong.getLocation().getColumnNr());
    List<String> lines = text.lines().toList();
    String there = line <= lines.size() ? lines.get(line - 1) : "";
    int at = Math.min(column - 1, there.length());
    String said = wrong.getOriginalMessage().lines().findFirst().orElse("");
    return new BadInput(
        file + ":" + line + ":" + column,
        says(said, there.substring(0, at), there.substring(at).strip())
            + " (in the parser's words: "
            + said
            + ")");
  }

  private static String says(String said, String before, String rest) {
    String found = ", found " + (rest.isEmpty() ? "the end of the line" : "\"" + rest + "\"");
    if (said.startsWith("Premature end") || said.startsWith("EOF")) {
      return before.stripTrailing().endsWith("=")
          ? "expected a value after =, found the end of the file"
          : "expected a closing quote or bracket, found the end of the file";
    }
    if (said.startsWith("Duplicate key")
        || said.startsWith("Table redefined")
        || said.startsWith("Path into existing")) {
      return "expected each key once, found one again";
    }
    if (said.startsWith("Newline not permitted")) {
      return "expected a closing quote, found the end of the line";
    }
    if (said.startsWith("More data after value")) {
      return "expected nothing after the value on its line" + found;
    }
    if (said.startsWith("Zero-prefixed")) {
      return "expected a number without a 0 before it" + found;
    }
    if (said.startsWith("Unknown escape")) {
      return "expected a backslash written twice" + found;
    }
    if (said.startsWith("Illegal control")) {
      return "expected a text without control characters, found one";
    }
    return before.contains("=")
        ? "expected a text in quotes, a whole number, true or false" + found
        : "expected a line such as port = 7420" + found;
  }
}
