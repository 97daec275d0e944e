package thinclick.server.history;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.words.NextRung;
import thinclick.server.words.Outcome;

/**
 * The takes of one drill at one tempo under one click plan, the oldest first.
 *
 * @param key what they share
 * @param entries at least one
 */
public record Course(Entry.Key key, List<Entry> entries) {
  public Course {
    entries =
        entries.stream()
            .sorted(Comparator.comparing(Entry::begunAt).thenComparing(Entry::id))
            .toList();
  }

  /** Sorts takes into courses, the one with the newest take first. */
  public static List<Course> of(List<Entry> entries) {
    Map<Entry.Key, List<Entry>> byKey = new LinkedHashMap<>();
    for (Entry entry : entries) {
      byKey.computeIfAbsent(entry.key(), key -> new ArrayList<>()).add(entry);
    }
    return byKey.entrySet().stream()
        .map(one -> new Course(one.getKey(), one.getValue()))
        .sorted(Comparator.comparing((Course course) -> course.last().begunAt()).reversed())
        .toList();
  }

  /** The first take. */
  public Entry first() {
    return entries.get(0);
  }

  /** The newest take. */
  public Entry last() {
    return entries.get(entries.size() - 1);
  }

  /** From the first take to the newest. */
  Duration span() {
    return Duration.between(first().begunAt(), last().begunAt());
  }

  /** What is due after the newest take. */
  public NextRung.Move next() {
    return NextRung.after(entries.stream().map(entry -> Outcome.of(entry.review())).toList());
  }

  /** The hold of an entry: the band's, or one player's. */
  static @Nullable Figure hold(Entry entry, @Nullable String player) {
    PlayerReview own = player == null ? null : entry.review().player(player);
    return player == null ? entry.review().ensemble().hold() : own == null ? null : own.hold();
  }

  /** The spread of an entry: the band's, or one player's. */
  static @Nullable Figure spread(Entry entry, @Nullable String player) {
    PlayerReview own = player == null ? null : entry.review().player(player);
    return player == null
        ? entry.review().ensemble().spreadMillis()
        : own == null ? null : own.spreadMillis();
  }

  /** True where both are known with intervals that have nothing in common. */
  static boolean apart(@Nullable Figure one, @Nullable Figure other) {
    Interval a = one == null ? null : one.interval();
    Interval b = other == null ? null : other.interval();
    return a != null && b != null && a.partsFrom(b);
  }
}
