package thinclick.client.window.help;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import thinclick.client.window.help.HelpText.Kind;
import thinclick.client.window.help.HelpText.Run;
import thinclick.client.window.help.HelpText.Section;
import thinclick.client.window.words.Words;

/** The help says in two languages what the README says, with the names that stand on the screen. */
class HelpTextTest {
  private static final HelpText ENGLISH = HelpText.in(Locale.ENGLISH);
  private static final HelpText GERMAN = HelpText.in(Locale.GERMAN);

  @Test
  void everySectionStandsInTheReadmeWordForWord() throws IOException {
    String readme = Files.readString(Path.of("..", "README.md"));
    for (String section : HelpText.markdown(Locale.ENGLISH).strip().split("(?m)^(?=## )", -1)) {
      if (!section.isBlank()) {
        assertThat(readme).contains(section.strip());
      }
    }
  }

  @Test
  void bothLanguagesHaveTheSameStepsAndLines() {
    assertThat(GERMAN.sections()).hasSameSizeAs(ENGLISH.sections());
    assertThat(ENGLISH.sections()).hasSize(4);
    for (int i = 0; i < ENGLISH.sections().size(); i++) {
      Section english = ENGLISH.sections().get(i);
      Section german = GERMAN.sections().get(i);
      assertThat(german.lines().stream().map(HelpText.Line::mark).toList())
          .as(german.title())
          .isEqualTo(english.lines().stream().map(HelpText.Line::mark).toList());
      for (int line = 0; line < english.lines().size(); line++) {
        assertThat(named(german.lines().get(line)))
            .as("%s, %s", german.title(), german.lines().get(line).text())
            .hasSameSizeAs(named(english.lines().get(line)));
      }
    }
  }

  @Test
  void aFigureStandsInOneLineWithItsUnit() {
    String set =
        HelpText.parse("## Care\n- Up to 80 dB for 40 hours (A Book, p. 75), then rest.")
            .sections()
            .get(0)
            .lines()
            .get(0)
            .together()
            .get(0)
            .text();
    assertThat(set).contains("80\u00a0dB for 40 hours", "p.\u00a075", "then\u00a0rest.");
  }

  /** What the German help calls a control is what the German window calls the same control. */
  @Test
  void namesAndKeysAreThoseOfTheWindowInBothLanguages() throws IOException {
    Properties english = bundle("");
    Properties german = bundle("_de");
    Words words = Words.in(Locale.GERMAN);
    List<Run> englishRuns = named(ENGLISH);
    List<Run> germanRuns = named(GERMAN);
    for (int i = 0; i < englishRuns.size(); i++) {
      Run run = englishRuns.get(i);
      if (run.kind() == Kind.KEYS) {
        assertThat(germanRuns.get(i).text()).isEqualTo(words.keys(run.text()));
      } else if (!run.text().endsWith(".")) {
        assertThat(called(run.text(), english, german))
            .as(run.text())
            .contains(germanRuns.get(i).text());
      }
    }
  }

  private static Set<String> called(String name, Properties english, Properties german) {
    Set<String> called = new TreeSet<>();
    for (String key : english.stringPropertyNames()) {
      if (english.getProperty(key).equals(name)) {
        called.add(german.getProperty(key));
      }
    }
    return called;
  }

  private static List<Run> named(HelpText text) {
    List<Run> named = new ArrayList<>();
    text.sections().forEach(section -> section.lines().forEach(line -> named.addAll(named(line))));
    return named;
  }

  private static List<Run> named(HelpText.Line line) {
    return line.runs().stream().filter(run -> run.kind() != Kind.WORDS).toList();
  }

  private static Properties bundle(String language) throws IOException {
    Properties bundle = new Properties();
    String file = "window" + language + ".properties";
    try (Reader in =
        new InputStreamReader(Words.class.getResourceAsStream(file), StandardCharsets.UTF_8)) {
      bundle.load(in);
    }
    return bundle;
  }
}
