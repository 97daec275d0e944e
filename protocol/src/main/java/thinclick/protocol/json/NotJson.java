package thinclick.protocol.json;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tools.jackson.core.JacksonException;
import tools.jackson.core.exc.InputCoercionException;
import tools.jackson.core.exc.StreamConstraintsException;
import tools.jackson.core.exc.UnexpectedEndOfInputException;

/**
 * Text that is not JSON, or more of it than is taken, said as expected and found. Jackson's own
 * sentences are for programmers; what they name is kept, the rest is said in plain words.
 */
final class NotJson {
  private static final Pattern CHARACTER =
      Pattern.compile(
          "(?:character \\(|escape )(?:'(.+?)' \\(code|\\(?CTRL-CHAR, code (\\d+))",
          Pattern.DOTALL);
  private static final Pattern TOKEN = Pattern.compile("oken '(.*?)': ", Pattern.DOTALL);
  private static final Pattern DUPLICATE =
      Pattern.compile("Duplicate Object property \"(.*?)\"", Pattern.DOTALL);
  private static final Pattern CLOSE = Pattern.compile("close marker '(.)'");
  private static final Pattern BYTE = Pattern.compile("UTF-8 \\w+ byte 0x(\\w+)");
  private static final Pattern NUMBER =
      Pattern.compile("Numeric value \\((.*?)\\) out of range of `(\\w+)` \\((\\S+) - (\\S+)\\)");
  private static final Pattern LIMIT =
      Pattern.compile("(\\w+ ?\\w*?) (?:length|depth) \\((\\d+)\\).*?\\((\\d+)");

  private NotJson() {}

  /** What was expected and what was found. */
  static String says(JacksonException problem) {
    String said = problem.getOriginalMessage();
    if (problem instanceof UnexpectedEndOfInputException || said.startsWith("Unexpected end")) {
      return "expected the rest of the JSON text, found its end";
    }
    if (problem instanceof StreamConstraintsException) {
      return limit(said);
    }
    if (problem instanceof InputCoercionException) {
      return outOfRange(said);
    }
    return "expected " + expected(said) + ", found " + found(said);
  }

  private static String limit(String said) {
    Matcher limit = LIMIT.matcher(said);
    if (!limit.find()) {
      return "expected less, found more than is taken";
    }
    String unit =
        switch (limit.group(1)) {
          case "Document nesting" -> "levels of brackets";
          case "Number value" -> "digits";
          default -> "characters";
        };
    return "expected at most " + limit.group(3) + " " + unit + ", found " + limit.group(2);
  }

  private static String outOfRange(String said) {
    Matcher number = NUMBER.matcher(said);
    return number.find()
        ? "expected a whole number from %s to %s, found %s"
            .formatted(number.group(3), number.group(4), number.group(1))
        : "expected a smaller number, found one out of range";
  }

  private static String expected(String said) {
    if (said.contains("to separate Object entries")) {
      return "a comma or }";
    }
    if (said.contains("to separate Array entries")) {
      return "a comma or ]";
    }
    if (said.contains("to start property name")) {
      return "a field's name in double quotes";
    }
    if (said.contains("a colon")) {
      return "a colon";
    }
    if (said.contains("root-level")) {
      return "an object";
    }
    if (said.contains("numeric value")) {
      return "a number";
    }
    if (said.contains("UTF-8")) {
      return "UTF-8";
    }
    if (DUPLICATE.matcher(said).find()) {
      return "each field once";
    }
    if (said.contains("escape")) {
      return "one of JSON's escapes";
    }
    return "a value";
  }

  private static String found(String said) {
    if (said.contains("Leading zeroes")) {
      return "a leading 0";
    }
    Matcher duplicate = DUPLICATE.matcher(said);
    if (duplicate.find()) {
      return "\"" + duplicate.group(1) + "\" again";
    }
    Matcher bytes = BYTE.matcher(said);
    if (bytes.find()) {
      String hex = bytes.group(1); // a byte is sign-extended in the sentence: 0xffffff9c
      return "byte 0x" + hex.substring(Math.max(0, hex.length() - 2));
    }
    Matcher character = CHARACTER.matcher(said);
    if (character.find()) {
      return character.group(1) != null
          ? character.group(1)
          : "a control character, code " + character.group(2);
    }
    Matcher token = TOKEN.matcher(said);
    if (token.find()) {
      return token.group(1);
    }
    Matcher close = CLOSE.matcher(said);
    return close.find() ? close.group(1) : "something else";
  }
}
