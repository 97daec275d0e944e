package thinclick.server.words;

import java.text.Format;
import java.text.MessageFormat;
import java.time.chrono.IsoChronology;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.Interval;

/**
 * Says things in one language. Messages stand in the bundles {@code review*.properties} beside this
 * class, as {@link MessageFormat} patterns; a whole number chooses its plural by {@code
 * {0,choice,...}}.
 */
public final class Speaker {
  private static final String BUNDLE = "thinclick.server.words.review";

  /** The languages that there are bundles of, as language tags. */
  public static final List<String> LANGUAGES = List.of("en", "de");

  private final Locale locale;
  private final ResourceBundle messages;
  private final @Nullable Locale place;

  /** A speaker of messages that stand in no file. */
  Speaker(Locale locale, ResourceBundle messages) {
    this(locale, messages, null);
  }

  private Speaker(Locale locale, ResourceBundle messages, @Nullable Locale place) {
    this.locale = locale;
    this.messages = messages;
    this.place = place;
  }

  /** The speaker of a language; English where there is no bundle of it. */
  public static Speaker of(Locale locale) {
    ResourceBundle messages =
        ResourceBundle.getBundle(
            BUNDLE,
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    boolean english = messages.getLocale().equals(Locale.ROOT);
    return new Speaker(english ? Locale.ENGLISH : locale, messages);
  }

  /** The speaker of English, the language that every bundle falls back to. */
  public static Speaker english() {
    return of(Locale.ENGLISH);
  }

  /** The same speaker, who writes days as they are written at some place: "Sep 22, 2026". */
  public Speaker withDaysAsIn(Locale wanted) {
    return new Speaker(locale, messages, wanted);
  }

  /** What is spoken, as a language tag. */
  public String language() {
    return locale.getLanguage();
  }

  /** The message with its values said. */
  public String say(Said said) {
    return format(said.key(), said.values());
  }

  /** A message without values. */
  public String say(String key) {
    return format(key, List.of());
  }

  /** Days as the language writes them; English says no country, and writes them as files do. */
  public DateTimeFormatter days() {
    return place == null
        ? DateTimeFormatter.ofPattern(say("date.day"), locale)
        : DateTimeFormatter.ofPattern(dayAt(place), place);
  }

  /** Days with the hour and minute. */
  public DateTimeFormatter minutes() {
    return DateTimeFormatter.ofPattern(say("date.minute"), locale);
  }

  /** Days within a year, short enough to stand below a picture. */
  public DateTimeFormatter daysOfTheYear() {
    return place == null
        ? DateTimeFormatter.ofPattern(say("date.short"), locale)
        : DateTimeFormatter.ofPattern(dayAt(place).replaceFirst("[,\\h]*y+$|^y+\\W*", ""), place);
  }

  private static String dayAt(Locale place) {
    return DateTimeFormatterBuilder.getLocalizedDateTimePattern(
            FormatStyle.MEDIUM, null, IsoChronology.INSTANCE, place)
        .replace(' ', '\u00a0'); // never broken at the end of a line
  }

  /** True where there is such a message. */
  boolean has(String key) {
    return messages.containsKey(key);
  }

  private String format(String key, List<Object> values) {
    MessageFormat message = new MessageFormat(messages.getString(key), locale);
    Format[] formats = message.getFormatsByArgumentIndex();
    Object[] shown = new Object[values.size()];
    for (int i = 0; i < shown.length; i++) {
      Object value = shown(values.get(i));
      // Only a choice needs the number itself; a bar is 1200, not 1,200.
      boolean plain = value instanceof Integer && (i >= formats.length || formats[i] == null);
      shown[i] = plain ? value.toString() : value;
    }
    return message.format(shown);
  }

  /** A figure as the language writes it. */
  public String shown(Quantity quantity) {
    return quantity.shown(locale);
  }

  /** A figure and the ends of its interval in the same digits: "20 (15–25)", "−2 (−6 to 2)". */
  public String shown(Quantity quantity, @Nullable Interval interval) {
    if (interval == null) {
      return shown(quantity);
    }
    Quantity low = quantity.at(interval.low());
    String between = low.side() < 0 ? say("range.to") : "\u2013";
    return shown(quantity)
        + " ("
        + shown(low)
        + between
        + shown(quantity.at(interval.high()))
        + ")";
  }

  private Object shown(Object value) {
    if (value instanceof Said said) {
      return say(said);
    }
    if (value instanceof Quantity quantity) {
      return shown(quantity);
    }
    if (value instanceof Said.Row row) {
      return list(row);
    }
    return value;
  }

  /** Several in a row, the last joined by an "and". */
  public String list(List<String> values) {
    return list(new Said.Row(values, true));
  }

  private String list(Said.Row row) {
    StringBuilder said = new StringBuilder();
    for (int i = 0; i < row.values().size(); i++) {
      boolean last = row.and() && i == row.values().size() - 1;
      said.append(i == 0 ? "" : last ? say("list.and") : say("list.comma"));
      said.append(shown(row.values().get(i)));
    }
    return said.toString();
  }

  /** Small whole numbers as words, as prose wants them. */
  public static Said number(int value) {
    return value >= 0 && value <= 12
        ? Said.of("number." + value)
        : Said.of("number.other", Integer.toString(value));
  }
}
