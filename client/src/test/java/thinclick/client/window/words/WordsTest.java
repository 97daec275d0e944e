package thinclick.client.window.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every sentence that the window asks for is there, and none is there for nobody. */
class WordsTest {
  private static final Path WINDOW = Path.of("src/main/java/thinclick/client/window");
  private static final Pattern LITERAL = Pattern.compile("\"([a-z][A-Za-z]*(?:\\.[A-Za-z]+)+)\"");

  /** Keys that are put together from parts; each part is a name in the code. */
  private static final Set<String> BUILT =
      Set.of(
          "view.door",
          "view.stand",
          "view.lectern",
          "view.review",
          "view.practice",
          "view.check",
          "manner.steady",
          "manner.ahead",
          "manner.behind",
          "manner.loose",
          "manner.stubborn",
          "manner.lost",
          "view.settings",
          "settings.shade.system",
          "settings.shade.light",
          "settings.shade.dark",
          "settings.contrast.system",
          "settings.contrast.usual",
          "settings.contrast.strong",
          "settings.shade",
          "settings.contrast",
          "settings.key.tap",
          "settings.key.views",
          "settings.key.region",
          "settings.key.deal",
          "settings.key.countIn",
          "settings.key.stop",
          "settings.key.size",
          "settings.key.paper",
          "settings.does.tap",
          "settings.does.views",
          "settings.does.region",
          "settings.does.deal",
          "settings.does.countIn",
          "settings.does.stop",
          "settings.does.size",
          "settings.does.paper");

  @Test
  void theKeysInTheCodeAreThoseInTheBundle() throws IOException {
    Set<String> used = new TreeSet<>(BUILT);
    try (Stream<Path> files = Files.walk(WINDOW)) {
      for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
        Matcher matcher = LITERAL.matcher(Files.readString(file));
        while (matcher.find()) {
          if (!matcher.group(1).startsWith("thinclick.") && !isSystemName(matcher.group(1))) {
            used.add(matcher.group(1));
          }
        }
      }
    }
    assertThat(bundle().stringPropertyNames()).containsExactlyInAnyOrderElementsOf(used);
  }

  @Test
  void everyPatternCanBeFilled() throws IOException {
    Object[] blanks = {1, 2, 3, 4, 5};
    Properties bundle = bundle();
    for (String key : bundle.stringPropertyNames()) {
      String said = new MessageFormat(bundle.getProperty(key), Locale.ENGLISH).format(blanks);
      assertThat(said).as(key).isNotBlank().doesNotContain("{");
    }
  }

  @Test
  void pluralsAreWritten() {
    Words words = Words.in(Locale.ENGLISH);
    assertThat(words.say("lectern.lesson", "First day", 45, 1))
        .isEqualTo("First day, 45 minutes, one drill");
    assertThat(words.say("lectern.lesson", "First day", 45, 6))
        .isEqualTo("First day, 45 minutes, 6 drills");
  }

  private static boolean isSystemName(String literal) {
    return literal.startsWith("os.")
        || literal.startsWith("com.")
        || literal.startsWith("org.")
        || literal.startsWith("user.")
        || literal.endsWith(".css")
        || literal.endsWith(".db")
        || literal.endsWith(".json")
        || literal.endsWith(".otf")
        || literal.endsWith(".ttf");
  }

  private static Properties bundle() throws IOException {
    Properties bundle = new Properties();
    try (InputStream in = Words.class.getResourceAsStream("window.properties")) {
      bundle.load(in);
    }
    return bundle;
  }
}
