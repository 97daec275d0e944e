package thinclick.client.window;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextInputControl;
import javafx.scene.text.Text;
import thinclick.client.window.words.Words;
import thinclick.server.lesson.LessonScript;
import thinclick.server.words.Speaker;

/** Finds what a page in another language still says in English: a sentence of an English bundle. */
final class EnglishLeft {
  private static final Pattern BLANK = Pattern.compile("\\{\\d[^{}]*}");
  private static final Pattern TWO_LETTERS = Pattern.compile("[A-Za-z]{2}");

  /** English words that are the German ones of another key. */
  private static final Pattern ALIKE =
      Pattern.compile(
          "(?i)dorian|ride|bass|system|name|pause|tempo|drift|takt|clave|shaker|hi-hat|timeline");

  /** Words of both languages or of titles, which stay: a sentence of no other tells nothing. */
  private static final Pattern IN_BOTH = Pattern.compile("\\b(was|and|over)\\b");

  /** Sentences without a blank, which are compared; the others are matched. */
  private static final Set<String> WHOLE = new HashSet<>();

  private static final List<Gapped> WITH_BLANKS = new ArrayList<>();

  /** What was shown before: most of a page stands on the next one too. */
  private static final Map<String, Boolean> KNOWN = new ConcurrentHashMap<>();

  static {
    add(Words.class, "window");
    add(Words.class, "complaints");
    add(Speaker.class, "review");
    add(LessonScript.class, "lesson");
  }

  private EnglishLeft() {}

  /** Everything below a node that is English, with the words as they are shown. */
  static List<String> under(Node node) {
    List<String> found = new ArrayList<>();
    collect(node, found);
    return found;
  }

  private static void collect(Node node, List<String> found) {
    if (!node.isVisible()) {
      return;
    }
    Stream.of(
            node instanceof Labeled labeled ? labeled.getText() : null,
            node instanceof Text text ? text.getText() : null,
            node instanceof TextInputControl input ? input.getPromptText() : null,
            node instanceof ComboBoxBase<?> box ? box.getPromptText() : null,
            node.getAccessibleText(),
            node.getAccessibleHelp())
        .filter(Objects::nonNull)
        .distinct()
        .filter(EnglishLeft::isEnglish)
        .forEach(found::add);
    if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(inside -> collect(inside, found));
    }
  }

  static boolean isEnglish(String shown) {
    return KNOWN.computeIfAbsent(
        shown.strip(),
        text ->
            TWO_LETTERS.matcher(text).find()
                && !ALIKE.matcher(text).matches()
                && (WHOLE.contains(text)
                    || WITH_BLANKS.stream().anyMatch(one -> one.matches(text))));
  }

  private static void add(Class<?> beside, String name) {
    Properties english = read(beside, name + ".properties");
    Properties german = read(beside, name + "_de.properties");
    for (String key : english.stringPropertyNames()) {
      String said = english.getProperty(key);
      String own = outer(said);
      boolean telling = IN_BOTH.matcher(own).replaceAll("").matches("(?s).*[A-Za-z]{3}.*");
      if (!said.equals(german.getProperty(key)) && telling) {
        if (BLANK.matcher(own).find()) {
          WITH_BLANKS.add(Gapped.of(own));
        } else {
          WHOLE.add(own);
        }
      }
    }
  }

  /** The pattern with plurals as one blank; a choice may hold blanks of its own. */
  private static String outer(String said) {
    StringBuilder outer = new StringBuilder();
    int depth = 0;
    for (char c : said.toCharArray()) {
      depth += c == '{' ? 1 : 0;
      if (depth == 0) {
        outer.append(c);
      } else if (c == '}' && --depth == 0) {
        outer.append("{0}");
      }
    }
    return outer.toString().replace("''", "'");
  }

  /**
   * A sentence with blanks, which stand for anything. Its pieces are looked for one after another:
   * a regular expression would try all ways to share out a long text.
   *
   * @param pieces what stands around the blanks, one more than there are blanks
   */
  private record Gapped(List<String> pieces) {
    static Gapped of(String said) {
      return new Gapped(List.of(BLANK.split(said, -1)));
    }

    boolean matches(String text) {
      String last = pieces.get(pieces.size() - 1);
      int end = text.length() - last.length();
      if (!text.startsWith(pieces.get(0)) || !text.endsWith(last)) {
        return false;
      }
      int from = pieces.get(0).length();
      for (String piece : pieces.subList(1, pieces.size() - 1)) {
        int at = text.indexOf(piece, from);
        from = at < 0 ? end + 1 : at + piece.length();
      }
      return from <= end;
    }
  }

  private static Properties read(Class<?> beside, String file) {
    Properties bundle = new Properties();
    try (Reader in =
        new InputStreamReader(
            Objects.requireNonNull(beside.getResourceAsStream(file), file),
            StandardCharsets.UTF_8)) {
      bundle.load(in);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
    return bundle;
  }
}
