package thinclick.server.season;

import java.time.Duration;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.server.history.Change;
import thinclick.server.history.Entry;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.words.ForecastWords;
import thinclick.server.words.Quantity;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;

/** A season in sentences: the class, and each of those in it. For the leader alone. */
public final class SeasonWords {
  private final Season season;
  private final ZoneId zone;
  private final Speaker speaker;
  private final List<Week> weeks;
  private final DateTimeFormatter day;

  /**
   * With days as the speaker writes them.
   *
   * @param zone where the days begin
   */
  public SeasonWords(Season season, ZoneId zone, Speaker speaker) {
    this.season = season;
    this.zone = zone;
    this.speaker = speaker;
    this.weeks = season.weeks(zone);
    this.day = speaker.days();
  }

  /** The heads of a table of members: chair, name, weeks, last seen, level, thinnest click held. */
  public static List<String> heads(Speaker speaker) {
    return List.of(
            "season.chair",
            "season.name",
            "season.weeks",
            "season.lastSeen",
            "season.level",
            "season.rung")
        .stream()
        .map(speaker::say)
        .toList();
  }

  /** "Tuesday class: four members, nine takes in three weeks." */
  public String head() {
    int members = season.pupils().size();
    int takes = season.takes().size();
    return speaker.say(
        takes == 0
            ? Said.of("season.notYet", season.list().title(), members, Speaker.number(members))
            : Said.of(
                "season.head",
                season.list().title(),
                members,
                Speaker.number(members),
                takes,
                Speaker.number(takes),
                weeks.size(),
                Speaker.number(weeks.size())));
  }

  /** "3 of 4 took part in the week of 2026-09-21.", "Missing: Ilse." Without a week: empty. */
  public List<String> lastWeek() {
    if (weeks.isEmpty()) {
      return List.of();
    }
    Week last = weeks.get(weeks.size() - 1);
    Set<String> present = last.present();
    List<Pupil> all = season.pupils();
    List<String> missing =
        all.stream().filter(one -> !present.contains(one.key())).map(Pupil::name).toList();
    int came = all.size() - missing.size();
    Said there = Said.of("season.week", day.format(last.monday()), came, all.size());
    return missing.isEmpty()
        ? List.of(speaker.say(there))
        : List.of(
            speaker.say(there),
            speaker.say(Said.of("season.missing", new Said.Row(missing, true))));
  }

  /**
   * All that can be said of one: when they were there, level, rung, course, what a thinner click
   * would do, or why that is not known.
   */
  public List<String> of(Pupil pupil) {
    List<String> says = new ArrayList<>(known(pupil));
    if (lacksForecast(pupil)) {
      says.add(speaker.say("season.noForecast"));
    }
    return says;
  }

  /** All that is known of one; why there is no forecast is said once for all of a page. */
  List<String> known(Pupil pupil) {
    List<String> says = new ArrayList<>();
    says.add(seen(pupil));
    pupil.standing().ifPresent(standing -> says.add(speaker.say(standing(pupil, standing))));
    pupil
        .rung()
        .ifPresent(
            rung ->
                says.add(
                    speaker.say(
                        Said.of(
                            "history.fewest",
                            rung.click(),
                            day.withZone(zone).format(rung.begunAt())))));
    String course = course(pupil);
    if (course != null) {
      says.add(course);
    }
    says.addAll(forecast(pupil));
    return says;
  }

  /** "3 of 4": in how many of the class's weeks they were there. */
  public String weeksOf(Pupil pupil) {
    return speaker.say(Said.of("season.weeksOf", there(pupil), weeks.size()));
  }

  private int there(Pupil pupil) {
    return (int) weeks.stream().filter(week -> week.takesOf(pupil.key()) > 0).count();
  }

  private String seen(Pupil pupil) {
    if (pupil.takes().isEmpty()) {
      return speaker.say(Said.of("season.notSeen", pupil.name()));
    }
    return speaker.say(
        Said.of(
            "season.seen",
            pupil.name(),
            there(pupil),
            weeks.size(),
            Integer.toString(weeks.size()),
            date(pupil)));
  }

  /** The day they were last there; a dash for never. */
  String date(Pupil pupil) {
    return pupil.lastSeen() == null ? "-" : day.withZone(zone).format(pupil.lastSeen());
  }

  private static Said standing(Pupil pupil, Standing standing) {
    return Said.of(
        "season.standing",
        pupil.name(),
        standing.level(),
        Quantity.percent(standing.holdPercent()),
        standing.played(),
        standing.takes(),
        Speaker.number(standing.takes()));
  }

  /**
   * "Ands alone at 100 ... Over three weeks the spread went from 31 to 22 ms." Null where there is
   * one take only.
   */
  private @Nullable String course(Pupil pupil) {
    List<ClassTake> like = pupil.course();
    if (like.size() < 2) {
      return null;
    }
    ClassTake first = like.get(0);
    ClassTake last = like.get(like.size() - 1);
    PlayerReview before = pupil.review(first);
    PlayerReview now = pupil.review(last);
    Entry.Key key = last.entry().key();
    Duration span = Duration.between(first.entry().begunAt(), last.entry().begunAt());
    return speaker.say(
        Said.of(
            "season.course",
            key.title(),
            Quantity.exact(key.tempo()),
            like.size(),
            Speaker.number(like.size()),
            Change.said(
                span,
                before == null ? null : before.hold(),
                now == null ? null : now.hold(),
                before == null ? null : before.spreadMillis(),
                now == null ? null : now.spreadMillis())));
  }

  /** Why nothing is foretold of those who played, all of them in one sentence; null for nobody. */
  @Nullable String withoutForecast() {
    List<Object> names =
        season.pupils().stream().filter(this::lacksForecast).<Object>map(Pupil::name).toList();
    return names.isEmpty()
        ? null
        : speaker.say(Said.of("season.noForecastOf", new Said.Row(names, true)));
  }

  private boolean lacksForecast(Pupil pupil) {
    return !pupil.takes().isEmpty() && forecast(pupil).isEmpty();
  }

  /**
   * What a thinner click would do, by the newest take that foretells it: one of the last in which
   * they played alone against the click. Nothing where none does.
   */
  private List<String> forecast(Pupil pupil) {
    for (int i = pupil.takes().size() - 1; i >= 0; i--) {
      List<String> says = forecast(pupil, pupil.takes().get(i));
      if (!says.isEmpty()) {
        return says;
      }
    }
    return List.of();
  }

  private List<String> forecast(Pupil pupil, ClassTake take) {
    PlayerReview review = pupil.review(take);
    if (review == null
        || !review.hold().known()
        || review.hold().get() < ForecastWords.READY_HOLD) {
      return List.of();
    }
    Entry.Key key = take.entry().key();
    List<Said> said = new ArrayList<>();
    Said thinner =
        ForecastWords.thinner(
            review, key.meter(), key.stepsPerBeat(), take.entry().review().toleranceMillis());
    if (thinner != null) {
      said.add(thinner);
    }
    said.addAll(ForecastWords.silence(review));
    if (said.isEmpty()) {
      return List.of();
    }
    List<String> says = new ArrayList<>();
    says.add(
        speaker.say(
            Said.of(
                "season.forecastOf",
                key.title(),
                Quantity.exact(key.tempo()),
                day.withZone(zone).format(take.entry().begunAt()))));
    said.forEach(one -> says.add(speaker.say(one)));
    return says;
  }
}
