package thinclick.server.season;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * A week in which a class played.
 *
 * @param monday its first day
 * @param takes the oldest first, at least one
 */
public record Week(LocalDate monday, List<ClassTake> takes) {
  public Week {
    takes = List.copyOf(takes);
  }

  static List<Week> of(List<ClassTake> takes, ZoneId zone) {
    Map<LocalDate, List<ClassTake>> weeks = new TreeMap<>();
    for (ClassTake take : takes) {
      LocalDate day = take.entry().begunAt().atZone(zone).toLocalDate();
      LocalDate monday = day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
      weeks.computeIfAbsent(monday, first -> new ArrayList<>()).add(take);
    }
    return weeks.entrySet().stream().map(one -> new Week(one.getKey(), one.getValue())).toList();
  }

  /** Who took part, as keys of names; no stand-ins. */
  public Set<String> present() {
    Set<String> present = new LinkedHashSet<>();
    for (ClassTake take : takes) {
      take.seats().stream()
          .filter(seat -> !seat.standIn())
          .forEach(seat -> present.add(NameKey.of(seat.player())));
    }
    return present;
  }

  /** In how many of its takes somebody played. */
  public int takesOf(String key) {
    return (int) takes.stream().filter(take -> take.seat(key).isPresent()).count();
  }
}
