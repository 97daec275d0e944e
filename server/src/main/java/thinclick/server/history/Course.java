package thinclick.server.history;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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

  /** What is due after the newest take. */
  public NextRung.Move next() {
    return NextRung.after(entries.stream().map(entry -> Outcome.of(entry.review())).toList());
  }
}
