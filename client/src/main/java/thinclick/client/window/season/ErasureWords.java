package thinclick.client.window.season;

import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;
import thinclick.server.season.ClassTake;
import thinclick.server.season.Erased;
import thinclick.server.season.ErasedPlace;
import thinclick.server.season.Season;

/**
 * What goes, and what has gone, as a leader knows it: by evenings and titles, never by the number
 * of a take, and of files only those that somebody has saved.
 *
 * @param before the class as it was, whose takes are named; null where that is not known
 */
record ErasureWords(Words words, @Nullable Season before, DateTimeFormatter days, ZoneId zone) {
  /** What would go, a sentence a place, and below it a line an evening. */
  List<String> goes(List<ErasedPlace> places) {
    return said("season.goes.", places);
  }

  /** What has gone, in the same way. */
  List<String> gone(List<ErasedPlace> places) {
    return said("season.gone.", places);
  }

  /** What is left of a class without somebody, for the foot of the window. */
  String left(String name, Season after) {
    return words.say(
        "season.left",
        name,
        after.list().title(),
        words.count("season.count.members", after.pupils().size()),
        words.count("season.count.takes", after.takes().size()));
  }

  /** How many classes are left without one, for the foot of the window. */
  String left(String title, int classes) {
    return words.say("season.left.classes", title, classes, words.count(classes));
  }

  private List<String> said(String time, List<ErasedPlace> places) {
    List<String> says = new ArrayList<>();
    for (ErasedPlace place : places) {
      Erased erased = place.erased();
      if (place.done() != null) {
        says.add(words.say(time + place.done(), place.file()));
      } else if (erased != null) {
        says.addAll(kept(time, erased));
      }
    }
    return says;
  }

  private List<String> kept(String time, Erased erased) {
    List<String> says = new ArrayList<>();
    if (erased.nothing()) {
      says.add(words.say("season.goes.nothing"));
    }
    if (!erased.takes().isEmpty()) {
      says.add(counted(time + "takes", erased.takes().size()));
      says.addAll(evenings(erased.takes()));
    }
    if (!erased.deleted().isEmpty()) {
      says.add(counted(time + "deleted", erased.deleted().size()));
      says.addAll(evenings(erased.deleted()));
    }
    if (erased.reviews() > 0) {
      says.add(counted(time + "reviews", erased.reviews()));
    }
    if (erased.members() > 0) {
      says.add(counted(time + "members", erased.members()));
    }
    if (erased.rooms() > 0) {
      says.add(counted(time + "rooms", erased.rooms()));
    }
    return says;
  }

  private String counted(String key, int count) {
    return Words.sentence(words.say(key, count, words.count(count)));
  }

  /** The takes, a line an evening, the newest first, as the list of takes has them. */
  private List<String> evenings(List<String> ids) {
    DateTimeFormatter hours =
        DateTimeFormatter.ofLocalizedTime(FormatStyle.SHORT).withLocale(words.locale());
    Map<String, List<String>> byDay = new LinkedHashMap<>();
    List<ClassTake> known = new ArrayList<>(before == null ? List.of() : before.takes());
    known.removeIf(take -> !ids.contains(take.entry().id()));
    for (int i = known.size() - 1; i >= 0; i--) {
      ClassTake take = known.get(i);
      ZonedDateTime begun = take.entry().begunAt().atZone(zone);
      byDay
          .computeIfAbsent(days.format(begun).replace(' ', '\u00a0'), day -> new ArrayList<>())
          .add(
              words.say(
                  "season.goes.take",
                  take.entry().key().title(),
                  hours.format(begun).replace(' ', '\u00a0')));
    }
    return byDay.entrySet().stream()
        .map(day -> words.say("season.goes.day", day.getKey(), String.join(", ", day.getValue())))
        .toList();
  }
}
