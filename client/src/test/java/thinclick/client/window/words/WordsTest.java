package thinclick.client.window.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.ChoiceFormat;
import java.text.Format;
import java.text.MessageFormat;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.file.DealKind;
import thinclick.server.season.ErasedPlace;

/** Every sentence that the window asks for is there, and none is there for nobody. */
class WordsTest {
  private static final Path WINDOW = Path.of("src/main/java/thinclick/client/window");
  private static final Pattern LITERAL = Pattern.compile("\"([a-z][A-Za-z]*(?:\\.[A-Za-z]+)+)\"");

  private static final Pattern BLANK = Pattern.compile("\\{\\d(?=[,}])");

  /** A figure, or the blank for one, parted from what it counts by a space that may end a line. */
  private static final Pattern PARTED =
      Pattern.compile(
          "(\\{\\d(,number(,integer)?)?}|\\d) "
              + "(%|(ms|px|dB|s|bars?|beats?|minutes?|seconds?|hours?|days?|weeks?|months?|attacks?"
              + "|clicks?|times|a minute|metres?|Takte?n?|Schläge?n?|Minuten?|Sekunden?|Stunden?"
              + "|Tage?n?|Wochen?|Monate?n?|Anschläge?n?|Klicks?|Meter)\\b)");

  /** The few that a German says as an English player does. */
  private static final Set<String> ALIKE =
      Set.of(
          "figure.millis",
          "lectern.clock",
          "season.name",
          "lectern.head.name",
          "lectern.pause",
          "lectern.tempo",
          "review.drift",
          "settings.language.de",
          "settings.language.en",
          "shell.title");

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
          "manner.follows",
          "manner.pushes",
          "manner.drags",
          "manner.ahead",
          "manner.behind",
          "manner.loose",
          "manner.stubborn",
          "manner.lost",
          "view.settings",
          "view.help",
          "settings.key.help",
          "settings.does.help",
          "settings.shade.system",
          "settings.shade.light",
          "settings.shade.dark",
          "settings.contrast.system",
          "settings.contrast.usual",
          "settings.contrast.strong",
          "settings.countIn.clicked",
          "settings.countIn.spoken",
          "settings.language.system",
          "settings.language.en",
          "settings.language.de",
          "settings.shade",
          "settings.contrast",
          "settings.key.tap",
          "settings.key.views",
          "settings.key.region",
          "settings.key.reader",
          "settings.key.deal",
          "settings.key.countIn",
          "settings.key.page",
          "settings.key.rescue",
          "settings.key.pause",
          "settings.key.stop",
          "settings.key.size",
          "settings.key.paper",
          "settings.does.tap",
          "settings.does.views",
          "settings.does.region",
          "settings.does.reader",
          "settings.does.deal",
          "settings.does.countIn",
          "settings.does.page",
          "settings.does.rescue",
          "settings.does.pause",
          "settings.does.stop",
          "settings.does.size",
          "settings.does.paper");

  @Test
  void theKeysInTheCodeAreThoseInTheBundle() throws IOException {
    Set<String> used = new TreeSet<>(BUILT);
    for (DealKind kind : DealKind.values()) {
      used.add("compose.deal." + kind.name());
    }
    for (String time : List.of("season.goes.", "season.gone.")) {
      for (String kind : List.of("takes", "deleted", "reviews", "rooms", "members")) {
        used.add(time + kind);
      }
      for (ErasedPlace.Done done : ErasedPlace.Done.values()) {
        used.add(time + done.name());
      }
    }
    try (Stream<Path> files = Files.walk(WINDOW)) {
      for (Path file : files.filter(WordsTest::asksForSentences).toList()) {
        Matcher matcher = LITERAL.matcher(Files.readString(file));
        while (matcher.find()) {
          if (!matcher.group(1).startsWith("thinclick.") && !isSystemName(matcher.group(1))) {
            used.add(matcher.group(1));
          }
        }
      }
    }
    assertThat(bundle("").stringPropertyNames()).containsExactlyInAnyOrderElementsOf(used);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "_de"})
  void everyPatternCanBeFilled(String language) throws IOException {
    Properties bundle = bundle(language);
    for (String key : bundle.stringPropertyNames()) {
      for (int number : List.of(0, 1, 2, 1_200)) {
        Object[] blanks = {number, number, number, number, number};
        String said = new MessageFormat(bundle.getProperty(key), locale(language)).format(blanks);
        assertThat(said).as(key).isNotBlank().doesNotContain("{").doesNotContain("''");
      }
    }
  }

  @Test
  void everySentenceIsThereInGermanWithTheSameBlanksAndPlurals() throws IOException {
    Properties english = bundle("");
    Properties german = bundle("_de");
    assertThat(german.stringPropertyNames())
        .containsExactlyInAnyOrderElementsOf(english.stringPropertyNames());
    for (String key : english.stringPropertyNames()) {
      assertThat(shape(german.getProperty(key))).as(key).isEqualTo(shape(english.getProperty(key)));
    }
  }

  @Test
  void nothingWasLeftInEnglish() throws IOException {
    Properties english = bundle("");
    Properties german = bundle("_de");
    Set<String> alike = new TreeSet<>();
    for (String key : english.stringPropertyNames()) {
      String said = english.getProperty(key);
      boolean words = said.replaceAll("\\{[^}]*}", "").matches("(?s).*[a-z]{2}.*");
      if (words && said.equals(german.getProperty(key))) {
        alike.add(key);
      }
    }
    assertThat(alike).isEqualTo(ALIKE);
  }

  @Test
  void theLanguageThatWasChosenIsSpoken() {
    assertThat(Words.in(Language.DE.locale(Locale.US)).say("view.lectern")).isEqualTo("Pult");
    assertThat(Words.in(Language.EN.locale(Locale.GERMANY)).say("view.lectern"))
        .isEqualTo("Lectern");
    assertThat(Words.in(Language.SYSTEM.locale(Locale.GERMANY)).say("view.lectern"))
        .isEqualTo("Pult");
    Words french = Words.in(Language.SYSTEM.locale(Locale.FRANCE));
    assertThat(french.say("view.lectern")).isEqualTo("Lectern");
    assertThat(french.locale()).as("numbers are those of what is spoken").isEqualTo(Locale.ENGLISH);
    assertThat(Language.DE.locale(Locale.forLanguageTag("de-CH")).getCountry()).isEqualTo("CH");
    assertThat(Words.in(Locale.GERMAN).keys("Ctrl+D")).isEqualTo("Strg+D");
  }

  @Test
  void pluralsAreWritten() {
    Words words = Words.in(Locale.ENGLISH);
    assertThat(words.say("lectern.lesson", "First day", 45, 1, "one"))
        .isEqualTo("First day, 45\u00a0minutes, one drill");
    assertThat(words.say("lectern.lesson", "First day", 45, 6, words.count(6)))
        .isEqualTo("First day, 45\u00a0minutes, six drills");
  }

  /** At no width does a line end between a figure and its unit. */
  @ParameterizedTest
  @ValueSource(strings = {"window", "window_de", "complaints_de"})
  void aFigureAndWhatItCountsAreNotParted(String file) throws IOException {
    Properties bundle = read(file);
    assertThat(bundle).isNotEmpty();
    for (String key : bundle.stringPropertyNames()) {
      assertThat(bundle.getProperty(key)).as(key).doesNotContainPattern(PARTED);
    }
  }

  /** Complaints have a bundle of their own. */
  private static boolean asksForSentences(Path file) {
    return file.toString().endsWith(".java") && !file.endsWith("Complaints.java");
  }

  private static boolean isSystemName(String literal) {
    return literal.startsWith("os.")
        || literal.startsWith("com.")
        || literal.startsWith("org.")
        || literal.startsWith("user.")
        || literal.startsWith("glass.")
        || literal.startsWith("prism.")
        || literal.startsWith(
            "picture.") // the words of the server, which the picture is drawn with
        || literal.endsWith(".css")
        || literal.endsWith(".db")
        || literal.endsWith(".json")
        || literal.endsWith(".md")
        || literal.endsWith(".otf")
        || literal.endsWith(".ttf");
  }

  @Test
  void whatIsBelowNoughtHasAMinusAndNoHyphen() {
    assertThat(Words.in(Locale.ENGLISH).whole(-24)).isEqualTo("\u221224");
    assertThat(Words.in(Locale.GERMAN).whole(-1024)).isEqualTo("\u22121.024");
    assertThat(Words.in(Locale.GERMAN).whole(43)).isEqualTo("43");
  }

  /** The blanks of a pattern and where its plurals change, in no order. */
  private static Set<String> shape(String pattern) {
    Set<String> shape = new TreeSet<>();
    Matcher blanks = BLANK.matcher(pattern);
    while (blanks.find()) {
      shape.add(blanks.group());
    }
    for (Format format : new MessageFormat(pattern, Locale.ROOT).getFormatsByArgumentIndex()) {
      if (format instanceof ChoiceFormat choice) {
        shape.add(Arrays.toString(choice.getLimits()));
      }
    }
    return shape;
  }

  private static Locale locale(String language) {
    return language.isEmpty() ? Locale.ENGLISH : Locale.GERMAN;
  }

  private static Properties bundle(String language) throws IOException {
    return read("window" + language);
  }

  private static Properties read(String file) throws IOException {
    Properties bundle = new Properties();
    try (InputStream in = Words.class.getResourceAsStream(file + ".properties")) {
      bundle.load(new InputStreamReader(in, StandardCharsets.UTF_8));
    }
    return bundle;
  }
}
