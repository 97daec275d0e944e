package thinclick.server.words;

import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import thinclick.protocol.music.Meter;

/** The words on a page of music and those that it is read out with, in one language. */
public final class SheetWords {
  private static final Pattern TONIC =
      Pattern.compile(
          "(?:(?<kind>.*) in )?(?<tonic>[A-G](?: double)?(?: flat| sharp)?) (?<mode>.+)");

  private static final int MOST_KEPT = 4_096;
  private static final Map<Locale, SheetWords> KNOWN = new ConcurrentHashMap<>();

  private final Speaker speaker;

  /** A page says few things, again and again. */
  private final Map<Said, String> kept = new ConcurrentHashMap<>();

  private SheetWords(Speaker speaker) {
    this.speaker = speaker;
  }

  /** The words of a language, English where there are none. */
  public static SheetWords in(Locale language) {
    return KNOWN.computeIfAbsent(language, one -> new SheetWords(Speaker.of(one)));
  }

  /** What a message of the page says, such as {@code "sheet.level"}. */
  public String say(String key, Object... values) {
    return say(Said.of(key, values));
  }

  /** The same of something to be said. */
  public String say(Said said) {
    if (kept.size() > MOST_KEPT) {
      kept.clear();
    }
    return kept.computeIfAbsent(said, speaker::say);
  }

  /** A role, as its drill names it where it is not known. */
  public String role(String role) {
    return RoleWords.of(role, speaker);
  }

  /** A number as the language writes it. */
  public String shown(Quantity number) {
    return speaker.shown(number);
  }

  /** A chair without a name of its own, numbered from 1. */
  public String chair(int number) {
    return say("text.chair", number);
  }

  /** An instrument by its English name; one that is not known keeps it. */
  public String instrument(String name) {
    return known("instrument.", name);
  }

  /** {@code "E flat major"}, {@code "D dorian"} or {@code "ii-V-I in C major"}, flats as signs. */
  public String line(String english) {
    Matcher tonic = TONIC.matcher(english);
    if (!tonic.matches()) {
      return signs(english);
    }
    String letter = printed(tonic.group("tonic"));
    String mode = tonic.group("mode");
    String key =
        switch (mode) {
          case "major" -> say("sheet.major", letter);
          case "minor" -> say("sheet.minor", letter);
          default -> say("sheet.mode", letter, known("scale.", mode));
        };
    String kind = tonic.group("kind");
    return kind == null ? key : say("sheet.lineIn", known("progression.", kind), key);
  }

  /** A note by its English name, {@code "B flat"}, as it is read out. */
  public String note(String english) {
    return known("note.", english);
  }

  /** The same as it is printed: with the sign of the flat, or the language's own name of it. */
  public String printed(String english) {
    return signs(note(english));
  }

  /** The key alone, where a line says what is played in it. */
  public String key(String english) {
    int in = english.indexOf(" in ");
    return line(in < 0 ? english : english.substring(in + 4));
  }

  /** Where a step of the bar stands, as it is read out: "the and of 2". */
  public String place(int stepInBar, Meter meter, int stepsPerBeat) {
    return say(PlaceWords.inBar(stepInBar, meter, stepsPerBeat));
  }

  /** "bar 3", as it is read out. */
  public String bar(int number) {
    return say("sheet.bar", number);
  }

  /** The click, before what is said of its notes. */
  public String click() {
    return say("sheet.click");
  }

  /**
   * What became of an attack, as it is read out: "early 30 ms".
   *
   * @param kind placed, early, late, dropped or added
   * @param millis how far off
   */
  public String mark(String kind, long millis) {
    return say("mark." + kind, Long.toString(millis));
  }

  private String known(String prefix, String name) {
    String key = prefix + name.replace(' ', '-');
    return speaker.has(key) ? speaker.say(key) : name;
  }

  private static String signs(String words) {
    return words
        .replace(" double flat", "\u266d\u266d")
        .replace(" double sharp", "\u266f\u266f")
        .replace(" flat", "\u266d")
        .replace(" sharp", "\u266f");
  }
}
