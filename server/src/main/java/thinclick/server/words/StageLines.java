package thinclick.server.words;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Rung;
import thinclick.server.material.StageText;

/**
 * The lines of a click plan in a reader's language, to be read and edited: what {@link StageText}
 * is in English. English is understood in every language; what is written reads back the same.
 */
public final class StageLines {
  private static final Pattern ENGLISH = Pattern.compile("(\\d+) bars?: (.*)");
  private static final Pattern OWN =
      Pattern.compile("(beats|steps) ([\\d ]+)(?: of every (\\d+) bars)?");

  /** The rungs that have a name of fewer words, for where there is no room for theirs. */
  static final List<Rung> BRIEF =
      List.of(Rung.FIRST_ONLY, Rung.EVERY_SECOND_BAR, Rung.EVERY_FOURTH_BAR);

  private final Speaker speaker;
  private final Meter meter;
  private final int stepsPerBeat;
  private final @Nullable List<Integer> groups;
  private final Map<String, String> names = new LinkedHashMap<>();

  /**
   * @param groups how the beats of a bar stand together, or null for the usual
   */
  public StageLines(
      Speaker speaker, Meter meter, int stepsPerBeat, @Nullable List<Integer> groups) {
    this.speaker = speaker;
    this.meter = meter;
    this.stepsPerBeat = stepsPerBeat;
    this.groups = groups;
    for (Rung rung : Rung.values()) {
      names.put(rung.nameIn(meter, groups), name(rung));
      names.putIfAbsent(rung.plainName(), speaker.say("rung." + rung.name()));
    }
  }

  /** What a rung is called in the meter: "one and three" for the group firsts of 4/4. */
  public String name(Rung rung) {
    List<Integer> beats = rung.stage(meter, stepsPerBeat, groups, 1, 0).beats();
    boolean called = rung == Rung.GROUP_FIRSTS || rung == Rung.GROUP_LASTS;
    if (called && beats != null && beats.size() > 1) {
      return beats(beats);
    }
    Rung alone = rung == Rung.GROUP_FIRSTS ? Rung.FIRST_ONLY : Rung.LAST_ONLY;
    return speaker.say("rung." + (called ? alone : rung).name());
  }

  private String beats(List<Integer> beats) {
    Said.Row row = new Said.Row(beats.stream().map(Speaker::number).toList(), true);
    return speaker.say(Said.of("click.beats", row));
  }

  /** The line of a stage. */
  public String of(Stage stage) {
    String english = StageText.of(stage, meter, stepsPerBeat, groups);
    Matcher line = ENGLISH.matcher(english);
    if (!line.matches()) {
      return english;
    }
    return speaker.say(
        Said.of(
            "line.stage", Integer.valueOf(line.group(1)), line.group(1), clicks(line.group(2))));
  }

  /** What clicks in a stage, in as few words as name it: "every second bar". */
  public String briefly(Stage stage) {
    Matcher line = ENGLISH.matcher(StageText.of(stage, meter, stepsPerBeat, groups));
    if (!line.matches()) {
      return "";
    }
    String english = line.group(2);
    return BRIEF.stream()
        .filter(rung -> rung.plainName().equals(english))
        .findFirst()
        .map(rung -> speaker.say("brief." + rung.name()))
        .orElseGet(() -> clicks(english));
  }

  private String clicks(String english) {
    Matcher own = OWN.matcher(english);
    if (!own.matches()) {
      return names.getOrDefault(english, english);
    }
    Said.Row numbers = new Said.Row(List.copyOf(numbers(own.group(2))), true);
    String said = speaker.say(Said.of("line." + own.group(1), numbers));
    return own.group(3) == null ? said : speaker.say(Said.of("line.every", said, own.group(3)));
  }

  /**
   * Reads a line, as {@link StageText#parse} does.
   *
   * @param seed draws silent bars
   * @throws BadInput with what was expected, in the reader's language
   */
  public List<Stage> parse(String written, long seed) {
    try {
      return StageText.parse(english(written), meter, stepsPerBeat, groups, seed);
    } catch (BadInput wrong) {
      if (speaker.language().equals(Speaker.english().language())) {
        throw wrong;
      }
      throw new BadInput(
          speaker.say("line.where"), speaker.say(Said.of("line.wrong", written.strip())));
    }
  }

  /** Rungs and ladders, such as "all beats to first only", in English; the unknown stays. */
  public String rungs(String written) {
    return clicksInEnglish(folded(written));
  }

  /** The same line in English; what is not known stays. */
  private String english(String written) {
    String text = folded(written.strip().replaceAll("\\.$", ""));
    Matcher line = Pattern.compile("(\\d+)\\s*" + read("bars") + "?\\s*:?\\s*(.*)").matcher(text);
    if (!line.matches() || line.group(2).isEmpty()) {
      return written;
    }
    return line.group(1) + " bars: " + clicksInEnglish(line.group(2));
  }

  private String clicksInEnglish(String said) {
    Matcher own =
        Pattern.compile(
                ("(?:(?<beats>%s)|%s) (?<numbers>\\d+(?:[ ,]+(?:%s )?\\d+)*)"
                        + "(?: %s (?<every>\\d+) %s)?")
                    .formatted(
                        read("beats"), read("steps"), read("and"), read("every"), read("bars")))
            .matcher(said);
    if (own.matches()) {
      String every = own.group("every");
      return (own.group("beats") == null ? "steps " : "beats ")
          + String.join(" ", numbers(own.group("numbers")))
          + (every == null ? "" : " of every " + every + " bars");
    }
    String whole = nameInEnglish(said);
    if (whole != null) {
      return whole;
    }
    List<String> pieces = new ArrayList<>();
    for (String piece : said.split(",", -1)) {
      List<String> ends = new ArrayList<>();
      for (String end : piece.split(" " + read("to") + " ", -1)) {
        String name = nameInEnglish(end);
        ends.add(name == null ? end : name);
      }
      pieces.add(String.join(" to ", ends));
    }
    return String.join(",", pieces);
  }

  /** A word of the language or the English one. */
  private String read(String what) {
    return "(?:%s|%s)"
        .formatted(speaker.say("line.read." + what), Speaker.english().say("line.read." + what));
  }

  private static List<String> numbers(String said) {
    List<String> numbers = new ArrayList<>();
    for (String piece : said.split("\\D+", -1)) {
      if (!piece.isEmpty()) {
        numbers.add(piece);
      }
    }
    return numbers;
  }

  private @Nullable String nameInEnglish(String said) {
    for (Map.Entry<String, String> name : names.entrySet()) {
      if (folded(name.getValue()).equals(folded(said))) {
        return name.getKey();
      }
    }
    return null;
  }

  private static String folded(String said) {
    return said.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
  }
}
