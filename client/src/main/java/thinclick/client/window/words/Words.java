package thinclick.client.window.words;

import java.text.MessageFormat;
import java.text.NumberFormat;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import thinclick.protocol.json.BadInput;
import thinclick.server.words.RoleWords;
import thinclick.server.words.Speaker;

/**
 * The window's sentences in one language. Patterns are those of {@link MessageFormat}, plurals by
 * its choices; numbers are written as the language writes them.
 */
public final class Words {
  private static final char MINUS = '\u2212';
  private static final String BUNDLE = "thinclick.client.window.words.window";

  private final ResourceBundle bundle;
  private final Locale locale;
  private final Complaints complaints;

  private Words(ResourceBundle bundle, Locale locale) {
    this.bundle = bundle;
    this.locale = locale;
    complaints = new Complaints(locale);
  }

  /** The sentences in this language, in English where there are none. */
  public static Words in(Locale locale) {
    ResourceBundle.Control rootOnly =
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);
    ResourceBundle found = ResourceBundle.getBundle(BUNDLE, locale, rootOnly);
    boolean english = found.getLocale().equals(Locale.ROOT);
    boolean itsOwn = !english || locale.getLanguage().equals(Locale.ENGLISH.getLanguage());
    return new Words(found, itsOwn ? locale : Locale.ENGLISH);
  }

  /** Sentences from elsewhere; a test stretches them. */
  public static Words of(ResourceBundle bundle, Locale locale) {
    return new Words(bundle, locale);
  }

  /** The sentence of a key with its blanks filled. */
  public String say(String key, Object... blanks) {
    return new MessageFormat(bundle.getString(key), locale).format(blanks);
  }

  /** A whole number as the language writes it, below nought with a minus and not a hyphen. */
  public String whole(long number) {
    return NumberFormat.getIntegerInstance(locale).format(number).replace('-', MINUS);
  }

  /** A count as prose writes it: in words up to twelve, then in figures. */
  public String count(int number) {
    return Speaker.of(language()).say(Speaker.number(number));
  }

  /** So many of something, by the key of its plurals: "one take", "three takes", "14 takes". */
  public String count(String key, int number) {
    return say(key, number, count(number));
  }

  /** Several in a row, the last joined by an "and". */
  public String list(List<String> names) {
    return Speaker.of(language()).list(names);
  }

  /** Why something typed or asked for cannot be taken. */
  public String say(BadInput wrong) {
    return complaints.say(wrong);
  }

  Complaints complaints() {
    return complaints;
  }

  /** As a sentence: a capital first and a full stop last, or the colon before a list. */
  public static String sentence(String says) {
    String stripped = says.strip();
    if (stripped.isEmpty()) {
      return "";
    }
    String end = stripped.matches("(?s).*[.!?:]") ? "" : ".";
    return begun(stripped) + end;
  }

  /** What stands inside sentences too, as it begins a line of its own. */
  public static String begun(String says) {
    return says.isEmpty() ? "" : says.substring(0, 1).toUpperCase(Locale.ROOT) + says.substring(1);
  }

  /** Keys as they are written on a keyboard of this language, from {@code "Ctrl+D"}. */
  public String keys(String english) {
    return english.replace("Ctrl", say("key.control")).replace("Period", say("key.period"));
  }

  /** What a chair does, as a drill says it: {@code "comping"}. */
  public String role(String role) {
    return RoleWords.of(role, Speaker.of(language()));
  }

  /** The language that is spoken, which is English where there is no bundle of another. */
  public Locale language() {
    Locale found = bundle.getLocale();
    return found == null || found.equals(Locale.ROOT) ? Locale.ENGLISH : found;
  }

  /** The language's own rules for numbers. */
  public Locale locale() {
    return locale;
  }
}
