package thinclick.server.lesson;

import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.words.ClickWords;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;

/**
 * What is said and done round one take, in the order it comes: enough for somebody who has never
 * seen the lesson. The words stand in {@code lesson*.properties}, one file a language.
 *
 * @param lines in order
 */
public record LessonScript(List<Line> lines) {
  private static final String BUNDLE = "thinclick.server.lesson.lesson";

  public LessonScript {
    lines = List.copyOf(lines);
  }

  /** What a line is for. */
  public enum Kind {
    /** Read aloud. */
    SAY,
    /** Done, not said. */
    DO,
    /** Counted aloud before the take. */
    COUNT,
    /** While the take runs. */
    DURING,
    /** When it is over. */
    AFTER
  }

  /** One line. */
  public record Line(Kind kind, String text) {}

  /** Where a take stands, as its script sees it. */
  public enum Moment {
    /** Nothing is counted yet. */
    BEFORE,
    /** It is announced, or the count-in sounds. */
    COUNT_IN,
    /** It is played. */
    DURING,
    /** It is over. */
    AFTER
  }

  /** What is still to be said and done at a moment; the first line is the one whose turn it is. */
  public List<Line> from(Moment moment) {
    Kind first =
        switch (moment) {
          case BEFORE -> lines.get(0).kind();
          case COUNT_IN -> Kind.COUNT;
          case DURING -> Kind.DURING;
          case AFTER -> Kind.AFTER;
        };
    int at = 0;
    while (at < lines.size() && lines.get(at).kind() != first) {
      at++;
    }
    return lines.subList(at, lines.size());
  }

  /**
   * The script of a take.
   *
   * @param item the lesson's own words and takes
   * @param drill as it is dealt, with the click plan that will sound
   * @param take which take of the drill it is, from 1
   * @param last true in the lesson's last drill
   */
  public static LessonScript of(
      Lesson.Item item, Drill drill, int take, boolean last, Locale locale) {
    return new Writer(locale).write(item, drill, take, last);
  }

  /** What the lesson itself says before a drill; the stock's sentences in every language. */
  public static String says(Lesson.Item item, Locale locale) {
    return new Writer(locale).own(item.say().strip());
  }

  /** The lines as text, each with what it is for. */
  public List<String> text(Locale locale) {
    return lines.stream().map(line -> text(line, locale)).toList();
  }

  /** A line with what it is for: "Say: the same again." */
  public static String text(Line line, Locale locale) {
    return new Writer(locale).cue(line.kind(), line.text());
  }

  /** What lines of a kind are for, as it stands before them: "Say:". */
  public static String cue(Kind kind, Locale locale) {
    return new Writer(locale).cue(kind, "").strip();
  }

  static ResourceBundle messages(Locale locale) {
    return ResourceBundle.getBundle(
        BUNDLE,
        locale,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  /** Writes in one language. */
  private static final class Writer {
    private final ResourceBundle messages;
    private final Speaker speaker;
    private final Locale locale;

    Writer(Locale locale) {
      this.locale = locale;
      this.speaker = Speaker.of(locale);
      this.messages = LessonScript.messages(locale);
    }

    String say(String key, Object... values) {
      return new MessageFormat(messages.getString(key), locale).format(values);
    }

    String cue(Kind kind, String text) {
      return say("kind." + kind.name().toLowerCase(Locale.ROOT), text);
    }

    LessonScript write(Lesson.Item item, Drill drill, int take, boolean last) {
      List<Line> lines = new ArrayList<>();
      boolean first = take == 1;
      if (first) {
        if (!item.say().isBlank()) {
          lines.add(new Line(Kind.SAY, own(item.say().strip())));
        }
        lines.add(new Line(Kind.SAY, way(drill)));
        lines.add(new Line(Kind.DO, say("do.slowly")));
        lines.add(new Line(Kind.DO, say("do.rest")));
      } else {
        lines.add(new Line(Kind.SAY, say(take == 2 ? "say.second" : "say.again")));
      }
      lines.add(new Line(Kind.SAY, clicks(drill)));
      lines.add(new Line(Kind.COUNT, count(drill.meter())));
      lines.add(new Line(Kind.DURING, say("during")));
      lines.add(
          new Line(
              Kind.DURING, say(clicksThroughout(drill) ? "during.lost.clicked" : "during.lost")));
      lines.add(new Line(Kind.AFTER, say(first ? "after.first" : "after")));
      lines.add(new Line(Kind.DO, next(item.takes() - take, last)));
      return new LessonScript(lines);
    }

    private String next(int more, boolean last) {
      return more > 0 ? say("do.more", more) : say(last ? "do.end" : "do.next");
    }

    /** What the lesson itself says; the stock's sentences are there in every language. */
    private String own(String says) {
      String key =
          "stock."
              + says.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("-$", "");
      return messages.containsKey(key) ? say(key) : says;
    }

    private String way(Drill drill) {
      DealKind kind = drill.deal().kind();
      int rows = drill.chairs().size();
      String key =
          switch (kind) {
            case AS_WRITTEN -> rows == 1 ? "way.unison" : "way.rows";
            case UNISON -> "way.unison";
            case CANON -> "way.canon";
            case HOCKET -> "way.hocket";
            case LAYERS -> "way.layers";
            case CALL_AND_ANSWER -> "way.callAndAnswer";
            case TRADING -> "way.trading";
            case ROLES -> "way.roles";
          };
      return say(key, rows);
    }

    private String clicks(Drill drill) {
      List<String> stages = new ArrayList<>();
      for (Stage stage : drill.stages()) {
        String click = speaker.say(ClickWords.on(stage, drill.meter(), drill.stepsPerBeat()));
        stages.add(say("click.stage", stage.bars(), click));
      }
      if (stages.size() == 1) {
        return stays(drill, drill.stages().get(0));
      }
      return say("click", String.join(say("click.then"), stages));
    }

    private String stays(Drill drill, Stage only) {
      if (only.clickedSteps(drill.meter(), drill.stepsPerBeat()).isEmpty()) {
        return say("click.no", only.bars());
      }
      Said click = ClickWords.on(only, drill.meter(), drill.stepsPerBeat());
      return say("click.one", speaker.say(click), only.bars());
    }

    /** Where every beat clicks, two clicked bars would give nobody more than there is. */
    private static boolean clicksThroughout(Drill drill) {
      int beats = drill.meter().beatsPerBar();
      return drill.stages().stream()
          .allMatch(
              stage ->
                  stage.clickedSteps(drill.meter(), drill.stepsPerBeat()).size()
                      >= beats * stage.bars());
    }

    private String count(Meter meter) {
      String bar =
          IntStream.rangeClosed(1, meter.beatsPerBar())
              .mapToObj(beat -> speaker.say(Speaker.number(beat)))
              .collect(Collectors.joining(" "));
      String capital = bar.substring(0, 1).toUpperCase(locale) + bar.substring(1);
      return say("count", capital, bar);
    }
  }
}
