package thinclick.server.words;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.Enumeration;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.ResourceBundle;
import java.util.TreeMap;

/** Message bundles for tests. */
final class Bundles {
  private static final String NAME = "thinclick.server.words.review";

  private Bundles() {}

  static ResourceBundle english() {
    return ResourceBundle.getBundle(NAME, Locale.ROOT);
  }

  /** What stands in one file alone, nothing of what it falls back to. */
  static Map<String, String> messages(String suffix) {
    Properties messages = new Properties();
    try (Reader reader =
        new InputStreamReader(
            Bundles.class.getResourceAsStream("review" + suffix + ".properties"),
            StandardCharsets.UTF_8)) {
      messages.load(reader);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
    Map<String, String> all = new TreeMap<>();
    messages.forEach((key, value) -> all.put((String) key, (String) value));
    return all;
  }

  /** English with four tenths more in every sentence, as a longer language would have. */
  static Speaker stretched() {
    Map<String, String> messages = new TreeMap<>();
    ResourceBundle english = english();
    for (String key : english.keySet()) {
      String pattern = english.getString(key);
      int letters = pattern.replaceAll("\\{[^}]*}", "").length();
      boolean piece = key.startsWith("number.") || key.startsWith("list.") || letters < 4;
      messages.put(key, piece ? pattern : pattern + "~".repeat((int) Math.ceil(0.4 * letters)));
    }
    return new Speaker(
        Locale.ROOT,
        new ResourceBundle() {
          @Override
          protected Object handleGetObject(String key) {
            return messages.get(key);
          }

          @Override
          public Enumeration<String> getKeys() {
            return Collections.enumeration(messages.keySet());
          }
        });
  }
}
