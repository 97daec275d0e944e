package thinclick.client.window.words;

import java.text.DecimalFormatSymbols;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import thinclick.protocol.json.BadInput;
import thinclick.server.words.Unbroken;

/**
 * Complaints in the reader's language. Programs complain in English, one line "where: expected,
 * found"; the English bundle {@code complaints.properties} holds those lines as they are said, so
 * that one that comes is known again and said by the pattern of the same key in another language.
 * {@code ComplaintsTest} looks that every line in the code has its pattern.
 */
final class Complaints {
  private static final String BUNDLE = "thinclick.client.window.words.complaints";
  private static final ResourceBundle ENGLISH = bundle(Locale.ROOT);
  private static final String NUMBER = "(-?\\d+(?:\\.\\d+)?)";
  private static final Pattern BLANK = Pattern.compile("\\{(\\d)(,number)?}");
  private static final Pattern FRACTION = Pattern.compile("-?\\d+\\.\\d+");
  private static final Pattern QUOTED = Pattern.compile("\"([^\"]*)\"");
  private static final int MOST_BLANKS = 10;
  private static final Pattern FIELD = Pattern.compile("([A-Za-z- ]+?)(?:\\[(\\d+)])?");
  private static final Pattern IN_BAR = Pattern.compile("(.+), bar (\\d+)");
  private static final Pattern LINE =
      Pattern.compile("([\\w.\\[\\]-]{1,80}): (.+)", Pattern.DOTALL);

  /** One line as it is said; those round others are tried first, then the wordiest. */
  private record Line(String key, Pattern said, List<Integer> blanks, int letters) {}

  /** Those with hardly a word of their own: what stands in their first blank must be known. */
  private static final Set<String> ROUND_OTHERS =
      Set.of("inWish", "meant", "book.noClass", "phase.or");

  private static final List<Line> LINES = lines();

  private final ResourceBundle bundle;
  private final Locale locale;

  Complaints(Locale locale) {
    bundle = bundle(locale);
    this.locale = speaksEnglish() ? Locale.ENGLISH : locale;
  }

  /** A complaint with its place; in English where nobody foresaw it. */
  String say(BadInput bad) {
    return placed(where(bad.where()), known(bad.says()).orElse(bad.says()));
  }

  /** What a line says, with or without its place; empty where nobody foresaw it. */
  Optional<String> say(String line) {
    Optional<String> whole = known(line);
    Matcher placed = LINE.matcher(line);
    if (whole.isPresent() || !placed.matches()) {
      return whole.map(this::quoted);
    }
    return known(placed.group(2)).map(says -> placed(where(placed.group(1)), says));
  }

  private String placed(String where, String says) {
    return quoted(where.isEmpty() ? says : format("where", where, says));
  }

  private Optional<String> known(String english) {
    for (Line line : LINES) {
      Matcher matcher = line.said().matcher(english);
      boolean said = matcher.matches();
      if (said && ROUND_OTHERS.contains(line.key())) {
        said = known(matcher.group(1)).isPresent();
      }
      if (said) {
        return Optional.of(speaksEnglish() ? english : filled(line, matcher));
      }
    }
    return Optional.empty();
  }

  private String filled(Line line, Matcher matcher) {
    Object[] blanks = new Object[MOST_BLANKS];
    for (int i = 0; i < line.blanks().size(); i++) {
      blanks[line.blanks().get(i)] = blank(matcher.group(i + 1));
    }
    return format(line.key(), blanks);
  }

  /** What stands in a blank: a complaint of its own, a number, or what somebody wrote. */
  private String blank(String written) {
    if (FRACTION.matcher(written).matches()) {
      return written.replace('.', DecimalFormatSymbols.getInstance(locale).getDecimalSeparator());
    }
    return known(written).orElse(written);
  }

  /** The field's place as the window calls it; empty where the window has no such field. */
  private String where(String path) {
    Matcher inBar = IN_BAR.matcher(path);
    if (inBar.matches()) {
      return format("where.bar", where(inBar.group(1)), inBar.group(2));
    }
    List<String> said = new ArrayList<>();
    for (String part : path.split("\\.", -1)) {
      Matcher field = FIELD.matcher(part);
      if (field.matches() && bundle.containsKey("where." + field.group(1))) {
        String name = format("where." + field.group(1));
        said.add(
            field.group(2) == null
                ? name
                : format("where.at", name, Integer.parseInt(field.group(2)) + 1));
      }
    }
    return String.join(", ", said);
  }

  private boolean speaksEnglish() {
    return bundle.getLocale().equals(Locale.ROOT);
  }

  private String format(String key, Object... blanks) {
    return new MessageFormat(bundle.getString(key), locale).format(blanks);
  }

  /** Quotation marks as the language writes them. */
  private String quoted(String said) {
    return Unbroken.of(QUOTED.matcher(said).replaceAll(format("quoted", "$1")));
  }

  private static ResourceBundle bundle(Locale locale) {
    return ResourceBundle.getBundle(
        BUNDLE,
        locale,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  private static List<Line> lines() {
    List<Line> lines = new ArrayList<>();
    for (String key : ENGLISH.keySet()) {
      if (!key.startsWith("where") && !key.equals("quoted")) {
        lines.add(line(key, ENGLISH.getString(key).replace("''", "'")));
      }
    }
    lines.sort(
        Comparator.comparing((Line line) -> !ROUND_OTHERS.contains(line.key()))
            .thenComparing(Line::letters, Comparator.reverseOrder())
            .thenComparing(Line::key));
    return List.copyOf(lines);
  }

  private static Line line(String key, String said) {
    StringBuilder pattern = new StringBuilder();
    List<Integer> blanks = new ArrayList<>();
    Matcher blank = BLANK.matcher(said);
    int after = 0;
    int letters = 0;
    while (blank.find()) {
      pattern.append(Pattern.quote(said.substring(after, blank.start())));
      letters += blank.start() - after + (blank.group(2) == null ? 0 : 1);
      pattern.append(blank.group(2) == null ? "(.+?)" : NUMBER);
      blanks.add(Integer.valueOf(blank.group(1)));
      after = blank.end();
    }
    pattern.append(Pattern.quote(said.substring(after)));
    letters += said.length() - after;
    return new Line(
        key, Pattern.compile(pattern.toString(), Pattern.DOTALL), List.copyOf(blanks), letters);
  }
}
