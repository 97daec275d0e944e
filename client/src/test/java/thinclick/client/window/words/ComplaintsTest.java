package thinclick.client.window.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
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
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.ErrorCode;

/** Whatever the code refuses, and a window may have to show, is said in the reader's language. */
class ComplaintsTest {
  private static final Path SERVER = Path.of("../server/src/main/java/thinclick/server");
  private static final Path PROTOCOL = Path.of("../protocol/src/main/java/thinclick/protocol");
  private static final Path CLIENT = Path.of("src/main/java/thinclick/client");

  /** What a window's host, room, class book and composing may refuse. */
  private static final List<Path> REACH_A_WINDOW =
      List.of(
          SERVER.resolve("room"),
          SERVER.resolve("dealing"),
          SERVER.resolve("material"),
          SERVER.resolve("season"),
          SERVER.resolve("net/FrameHandler.java"),
          SERVER.resolve("net/LifeHandler.java"),
          SERVER.resolve("net/Port.java"),
          SERVER.resolve("host/ClassBook.java"),
          SERVER.resolve("host/Erasing.java"),
          SERVER.resolve("host/HostLock.java"),
          SERVER.resolve("store/Database.java"),
          PROTOCOL.resolve("json/Check.java"),
          PROTOCOL.resolve("music"),
          PROTOCOL.resolve("file/Answer.java"),
          PROTOCOL.resolve("file/Drill.java"),
          PROTOCOL.resolve("file/FileCodec.java"),
          PROTOCOL.resolve("file/FreeBars.java"),
          PROTOCOL.resolve("file/FreeSpan.java"),
          PROTOCOL.resolve("file/Line.java"),
          PROTOCOL.resolve("file/SeasonFile.java"),
          PROTOCOL.resolve("disk/OutputFile.java"),
          PROTOCOL.resolve("message/ClientMessage.java"),
          CLIENT.resolve("link/Socket.java"),
          CLIENT.resolve("link/SocketHandler.java"),
          CLIENT.resolve("link/Line.java"),
          CLIENT.resolve("link/Conversation.java"),
          CLIENT.resolve("link/Trust.java"),
          CLIENT.resolve("window/lectern/Composing.java"));

  private static final Pattern BEGINS =
      Pattern.compile(
          "new (?:BadInput|Refusal|Untrusted)\\(|(?:[cC]onnection|out)\\.close\\(|[ .]end\\(|cut\\(|over\\(");

  /** Said between programs, or of a certificate that no client has. */
  private static final Set<String> NOBODY_SEES =
      Set.of("expected a line of our own", "clients show no certificates");

  /** Put together from parts that the table below has whole. */
  private static final Set<String> IN_PARTS =
      Set.of("7 in \"7\"", "expected 7, found \"7\"", "7", "7; trying again in 7 ms");

  private final FromAfar german = new FromAfar(Words.in(Locale.GERMAN));

  @Test
  void everyRefusalInTheCodeIsSaidInGerman() throws IOException {
    Set<String> unknown = new TreeSet<>();
    int seen = 0;
    for (Path file : files()) {
      for (String line : lines(Files.readString(file))) {
        seen++;
        if (!NOBODY_SEES.contains(line)
            && !IN_PARTS.contains(line)
            && german.say(line).startsWith("Gesagt wurde")) {
          unknown.add(file.getFileName() + ": " + line);
        }
      }
    }
    assertThat(unknown).isEmpty();
    assertThat(seen).as("lines found in the code").isGreaterThan(170);
  }

  @ParameterizedTest
  @EnumSource(CloseCode.class)
  void everyCloseIsSaidInGerman(CloseCode code) {
    assertThat(german.say(code.says())).doesNotContain(code.says());
  }

  @ParameterizedTest
  @EnumSource(ErrorCode.class)
  void whatNobodyForesawIsAtLeastSaidByItsCode(ErrorCode code) {
    Refused unheard = new Refused(code, "something that a later host says");
    assertThat(german.say(unheard)).doesNotContain("later host").endsWith(".");
    assertThat(new FromAfar(Words.in(Locale.ENGLISH)).say(unheard)).isNotBlank();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "tempo | expected 30 to 300, found 12.5 | Tempo: möglich ist 30 bis 300, nicht 12,5 | tempo: expected 30 to 300, found 12.5",
        "stages[1].beats[0] | expected a beat from 1 to 4 in 4/4, found 5 | Abschnitt 2, Schlag 1: in 4/4 gibt es die Schläge 1 bis 4, nicht 5 | stage 2, beat 1: expected a beat from 1 to 4 in 4/4, found 5",
        "scale | expected a scale, found \"dorisch\"; did you mean \"dorian\", \"major\" or \"minor\"? | Tonleiter: eine Tonleiter „dorisch“ gibt es hier nicht; die Namen sind englisch; gemeint vielleicht „dorian“, „major“ oder „minor“? | scale: expected a scale, found “dorisch”; did you mean “dorian”, “major” or “minor”?",
        "progression, bar 3 | expected 1, 2 or 4 chords in 4/4, found 3 | Akkorde, Takt\u00a03: in einen Takt\u00a04/4 passen 1, 2 oder 4 Akkorde, nicht 3 | chords, bar\u00a03: expected 1, 2 or 4 chords in 4/4, found 3",
        "CLASS | expected a class that there is, found \"7b\"; there is none yet | eine Klasse „7b“ gibt es nicht; es gibt noch keine | expected a class that there is, found “7b”; there is none yet",
        "feel | expected a role and milliseconds, late positive, such as \"comping 25\" or \"ride 0 -10\", found \"spät\" | Spät oder früh: gebraucht werden eine Rolle und Millisekunden, spät ist plus, wie „comping 25“ oder „ride 0 -10“, nicht „spät“ | late or early: expected a role and milliseconds, late positive, such as “comping 25” or “ride 0 -10”, found “spät”",
        "free | expected a role and bars, such as \"comping 5-8 of 8\", found \"solo\" | Freie Takte: gebraucht werden eine Rolle und Takte, wie „comping 5-8 von 8“, nicht „solo“ | free bars: expected a role and bars, such as “comping 5-8 of 8”, found “solo”",
        "free | expected 0 to 4095, found -1 in \"comping 0\" | Freie Takte: möglich ist 0 bis 4095, nicht -1, in „comping 0“ | free bars: expected 0 to 4095, found -1 in “comping 0”",
      })
  void placeAndValuesAreSaid(String where, String says, String inGerman, String inEnglish) {
    BadInput wrong = new BadInput(where, says);
    assertThat(Words.in(Locale.GERMAN).say(wrong)).isEqualTo(inGerman);
    assertThat(Words.in(Locale.ENGLISH).say(wrong)).isEqualTo(inEnglish);
  }

  @Test
  void bothLanguagesHaveTheSameKeysAndBlanks() throws IOException {
    Properties english = bundle("");
    Properties inGerman = bundle("_de");
    assertThat(inGerman.stringPropertyNames())
        .containsExactlyInAnyOrderElementsOf(english.stringPropertyNames());
    for (String key : inGerman.stringPropertyNames()) {
      Set<String> blanks = blanks(english.getProperty(key));
      assertThat(blanks).as(key).containsAll(blanks(inGerman.getProperty(key)));
    }
  }

  private static Set<String> blanks(String pattern) {
    Set<String> blanks = new TreeSet<>();
    Matcher blank = Pattern.compile("\\{(\\d)").matcher(pattern);
    while (blank.find()) {
      blanks.add(blank.group(1));
    }
    return blanks;
  }

  private static Properties bundle(String language) throws IOException {
    Properties bundle = new Properties();
    String file = "complaints" + language + ".properties";
    try (InputStream in = Words.class.getResourceAsStream(file)) {
      bundle.load(new InputStreamReader(in, StandardCharsets.UTF_8));
    }
    return bundle;
  }

  private static List<Path> files() throws IOException {
    List<Path> files = new ArrayList<>();
    for (Path path : REACH_A_WINDOW) {
      try (Stream<Path> inside = Files.walk(path)) {
        inside.filter(file -> file.toString().endsWith(".java")).forEach(files::add);
      }
    }
    return files;
  }

  /** What is said at each place: its literals, 7 for every value between them, and each choice. */
  private static List<String> lines(String code) {
    List<String> lines = new ArrayList<>();
    Matcher begins = BEGINS.matcher(code);
    while (begins.find()) {
      List<String> arguments = arguments(code, begins.end());
      boolean placed = begins.group().endsWith("BadInput(") && arguments.size() > 1;
      for (String argument : placed ? arguments.subList(1, 2) : arguments) {
        if (argument.matches("(?s).*\"[^\"]* [^\"]*\".*") && !argument.contains("->")) {
          lines.addAll(said(argument));
        }
      }
    }
    return lines;
  }

  /** The arguments of a call whose bracket was opened just before. */
  private static List<String> arguments(String code, int from) {
    List<String> arguments = new ArrayList<>();
    int depth = 0;
    boolean quoted = false;
    int begin = from;
    for (int at = from; at < code.length(); at++) {
      char c = code.charAt(at);
      if (c == '"' && code.charAt(at - 1) != '\\') {
        quoted = !quoted;
      } else if (!quoted && (c == '(' || c == '{')) {
        depth++;
      } else if (!quoted && (c == ')' || c == '}') && --depth < 0) {
        arguments.add(code.substring(begin, at).strip());
        break;
      } else if (!quoted && c == ',' && depth == 0) {
        arguments.add(code.substring(begin, at).strip());
        begin = at + 1;
      }
    }
    return arguments;
  }

  private static List<String> said(String expression) {
    int question = outside(expression, " ? ");
    if (question >= 0) {
      int colon = question + 3 + outside(expression.substring(question + 3), " : ");
      List<String> both = new ArrayList<>(said(expression.substring(question + 3, colon)));
      both.addAll(said(expression.substring(colon + 3)));
      return both;
    }
    int plus = outside(expression, "+ ");
    if (plus >= 0) {
      List<String> all = new ArrayList<>();
      for (String left : said(expression.substring(0, plus))) {
        for (String right : said(expression.substring(plus + 2))) {
          all.add(left + right);
        }
      }
      return all;
    }
    String one = expression.strip();
    if (one.startsWith("\"")) {
      return List.of(one.substring(1, one.length() - 1).replace("\\\"", "\""));
    }
    if (one.startsWith("(") && one.endsWith(")")) {
      return said(one.substring(1, one.length() - 1));
    }
    if (one.startsWith("Nearest.didYouMean")) {
      return List.of("did you mean \"this\", \"that\" or \"other\"?");
    }
    if (one.startsWith("KNOWN")) {
      return List.of("2/4, 3/4, 4/4, 5/4, 6/4, 7/4, 6/8, 9/8 or 12/8");
    }
    return List.of("7");
  }

  /** Where a sign first stands outside quotes and brackets; -1 where it does not. */
  private static int outside(String text, String sign) {
    int depth = 0;
    boolean quoted = false;
    for (int at = 0; at < text.length(); at++) {
      char c = text.charAt(at);
      if (c == '"' && (at == 0 || text.charAt(at - 1) != '\\')) {
        quoted = !quoted;
      } else if (!quoted && c == '(') {
        depth++;
      } else if (!quoted && c == ')') {
        depth--;
      }
      if (!quoted && depth == 0 && text.startsWith(sign, at)) {
        return at;
      }
    }
    return -1;
  }
}
