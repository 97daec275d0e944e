package thinclick.client.window.help;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The help as text: the sections of {@code help.md}, which stand in the README as well. Of Markdown
 * it knows headings, numbered and plain lines, names of controls in bold and keys as code.
 *
 * @param sections in order
 */
public record HelpText(List<Section> sections) {
  /** A space at which no line ends. */
  private static final String HARD_SPACE = "\u00a0";

  /** A figure and its unit, a page and its number: they stand in one line. */
  private static final Pattern INSEPARABLE =
      Pattern.compile("(?<=\\d) (?=dB\\b)|(?<=\\b[pS]\\.) (?=\\d)");

  private static final Pattern RUN = Pattern.compile("\\*\\*(.+?)\\*\\*|`(.+?)`");
  private static final Pattern NUMBERED = Pattern.compile("(\\d+)\\. (.*)");

  public HelpText {
    sections = List.copyOf(sections);
  }

  /**
   * A heading with what stands under it.
   *
   * @param title the heading
   * @param lines in order
   */
  public record Section(String title, List<Line> lines) {
    public Section {
      lines = List.copyOf(lines);
    }
  }

  /**
   * A paragraph or a step.
   *
   * @param mark what stands before it: {@code "1."}, a dash, or nothing
   * @param runs its words, piece by piece
   */
  public record Line(String mark, List<Run> runs) {
    public Line {
      runs = List.copyOf(runs);
    }

    /**
     * Its words as they are set: the last two stay together, so that the last line is not one word
     * alone, and so does a figure with its unit.
     */
    public List<Run> together() {
      List<Run> set = new ArrayList<>();
      for (Run run : runs) {
        set.add(new Run(run.kind(), INSEPARABLE.matcher(run.text()).replaceAll(HARD_SPACE)));
      }
      int at = set.size() - 1;
      while (at >= 0 && set.get(at).text().strip().indexOf(' ') < 0) {
        at--;
      }
      if (at >= 0) {
        Run last = set.get(at);
        int gap = last.text().stripTrailing().lastIndexOf(' ');
        set.set(
            at,
            new Run(
                last.kind(),
                last.text().substring(0, gap) + HARD_SPACE + last.text().substring(gap + 1)));
      }
      return set;
    }

    /** The line as it is read out. */
    public String text() {
      String words = runs.stream().map(Run::text).collect(Collectors.joining());
      return mark.isEmpty() ? words : mark + " " + words;
    }
  }

  /** What a piece of a line is. */
  public enum Kind {
    WORDS,
    /** The name of something on the screen. */
    NAME,
    /** Keys to be pressed. */
    KEYS
  }

  /** A piece of a line. */
  public record Run(Kind kind, String text) {}

  /** The help in a language, in English where there is none. */
  public static HelpText in(Locale language) {
    return parse(markdown(language));
  }

  /** The file that the help stands in. */
  static String markdown(Locale language) {
    String own = "help_" + language.getLanguage() + ".md";
    String name = HelpText.class.getResource(own) == null ? "help.md" : own;
    try (InputStream in = HelpText.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("no " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  static HelpText parse(String markdown) {
    List<Section> sections = new ArrayList<>();
    String title = "";
    List<Line> lines = new ArrayList<>();
    for (String line : markdown.lines().toList()) {
      if (line.startsWith("## ")) {
        if (!lines.isEmpty()) {
          sections.add(new Section(title, lines));
        }
        title = line.substring(3);
        lines = new ArrayList<>();
      } else if (!line.isBlank()) {
        lines.add(line(line));
      }
    }
    sections.add(new Section(title, lines));
    return new HelpText(sections);
  }

  private static Line line(String line) {
    Matcher numbered = NUMBERED.matcher(line);
    if (numbered.matches()) {
      return new Line(numbered.group(1) + ".", runs(numbered.group(2)));
    }
    return line.startsWith("- ")
        ? new Line("\u2013", runs(line.substring(2)))
        : new Line("", runs(line));
  }

  private static List<Run> runs(String line) {
    List<Run> runs = new ArrayList<>();
    Matcher run = RUN.matcher(line);
    int at = 0;
    while (run.find()) {
      if (run.start() > at) {
        runs.add(new Run(Kind.WORDS, line.substring(at, run.start())));
      }
      boolean name = run.group(1) != null;
      runs.add(name ? new Run(Kind.NAME, run.group(1)) : new Run(Kind.KEYS, run.group(2)));
      at = run.end();
    }
    if (at < line.length()) {
      runs.add(new Run(Kind.WORDS, line.substring(at)));
    }
    return runs;
  }
}
