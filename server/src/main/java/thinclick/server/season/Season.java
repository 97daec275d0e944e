package thinclick.server.season;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.SeasonFile.Member;
import thinclick.server.history.Course;

/**
 * A class and all it has played.
 *
 * @param list who was written down
 * @param takes the oldest first
 */
public record Season(ClassList list, List<ClassTake> takes) {
  public Season {
    takes =
        takes.stream()
            .sorted(Comparator.comparing((ClassTake take) -> take.entry().begunAt()))
            .toList();
  }

  /** The weeks in which it played, the oldest first. */
  public List<Week> weeks(ZoneId zone) {
    return Week.of(takes, zone);
  }

  /** The class as a band, drill by drill. */
  public List<Course> courses() {
    return Course.of(takes.stream().map(ClassTake::entry).toList());
  }

  /**
   * Everybody who was written down or has played, by chair and then by name; not those who were
   * erased.
   */
  public List<Pupil> pupils() {
    Map<String, String> names = new LinkedHashMap<>();
    Map<String, List<ClassTake>> played = new LinkedHashMap<>();
    list.members().forEach(member -> names.put(NameKey.of(member.name()), member.name()));
    for (ClassTake take : takes) {
      for (ClassTake.Seat seat : take.seats()) {
        Optional<Member> written = list.member(seat.player());
        boolean erased = written.isEmpty() && Erased.stands(seat.player());
        if (!seat.standIn() && !erased) {
          String key = NameKey.of(seat.player());
          names.put(key, written.map(Member::name).orElse(seat.player()));
          played.computeIfAbsent(key, somebody -> new ArrayList<>()).add(take);
        }
      }
    }
    List<Pupil> pupils = new ArrayList<>();
    names.forEach((key, name) -> pupils.add(pupil(key, name, played.getOrDefault(key, List.of()))));
    pupils.sort(
        Comparator.comparing(Pupil::chair, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(Pupil::key));
    return pupils;
  }

  private Pupil pupil(String key, String name, List<ClassTake> played) {
    Member member = list.member(name).orElse(null);
    ClassTake.Seat seat =
        played.isEmpty() ? null : played.get(played.size() - 1).seat(key).orElse(null);
    Integer chair = member == null ? null : member.chair();
    String instrument = member == null ? null : member.instrument();
    return new Pupil(
        name,
        key,
        chair != null ? chair : seat == null ? null : (Integer) seat.chair(),
        instrument != null ? instrument : seat == null ? null : seat.instrument(),
        played);
  }

  /** Somebody by name; empty where the class does not know them. */
  public Optional<Pupil> pupil(String name) {
    String key = NameKey.of(name);
    return pupils().stream().filter(pupil -> pupil.key().equals(key)).findFirst();
  }

  /**
   * Where those who are here sit down: on their usual chairs. Of two with the same one, whoever was
   * written down for it has it, else whoever was here last; the other is left out.
   *
   * @param here names, as they are in the room
   * @return chairs from 1 by those names
   */
  public Map<String, Integer> seats(List<String> here) {
    Set<String> present = new HashSet<>();
    here.forEach(name -> present.add(NameKey.of(name)));
    List<Pupil> wanting =
        pupils().stream()
            .filter(pupil -> pupil.chair() != null && present.contains(pupil.key()))
            .sorted(
                Comparator.comparing((Pupil pupil) -> !writtenDown(pupil))
                    .thenComparing(
                        Pupil::lastSeen, Comparator.nullsLast(Comparator.<Instant>reverseOrder())))
            .toList();
    Map<String, Integer> byKey = new LinkedHashMap<>();
    for (Pupil pupil : wanting) {
      if (!byKey.containsValue(pupil.chair())) {
        byKey.put(pupil.key(), pupil.chair());
      }
    }
    Map<String, Integer> seats = new LinkedHashMap<>();
    for (String name : here) {
      @Nullable Integer chair = byKey.get(NameKey.of(name));
      if (chair != null) {
        seats.put(name, chair);
      }
    }
    return seats;
  }

  private boolean writtenDown(Pupil pupil) {
    return list.member(pupil.name()).map(member -> member.chair() != null).orElse(false);
  }
}
