package thinclick.client.window.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.message.AnswerMessage.DrillLine;
import thinclick.protocol.message.AnswerMessage.LibraryList;
import thinclick.server.material.Stock;

/**
 * What there is to rehearse in this room: the host's own material, as far as it has come, before
 * the stock.
 *
 * @param own the host's own drills, whole
 * @param lessons the host's own first
 * @param missing titles of own drills that have not come yet
 */
public record Shelf(List<Drill> own, List<Lesson> lessons, List<String> missing) {
  /** The stock alone. */
  public static final Shelf STOCK = new Shelf(List.of(), Stock.lessons(), List.of());

  public Shelf {
    own = List.copyOf(own);
    lessons = List.copyOf(lessons);
    missing = List.copyOf(missing);
  }

  /** What a host says it has. */
  static Shelf of(LibraryList list) {
    List<String> own =
        list.drills().stream()
            .filter(line -> Boolean.TRUE.equals(line.own()))
            .map(DrillLine::title)
            .toList();
    return new Shelf(List.of(), list.lessons(), own);
  }

  /** With one more of the own drills. */
  Shelf with(Drill drill) {
    List<Drill> more = new ArrayList<>(own);
    more.removeIf(one -> one.title().equals(drill.title()));
    more.add(drill);
    return new Shelf(
        more, lessons, missing.stream().filter(title -> !title.equals(drill.title())).toList());
  }

  /** All drills that can be chosen; an own one takes the place of the stock's. */
  public List<Drill> drills() {
    Set<String> titles = own.stream().map(Drill::title).collect(Collectors.toSet());
    List<Drill> all = new ArrayList<>(own);
    Stock.drills().stream().filter(drill -> !titles.contains(drill.title())).forEach(all::add);
    return all;
  }

  /** True where a drill of this title can be chosen. */
  public boolean has(String title) {
    return own.stream().anyMatch(drill -> drill.title().equals(title)) || Stock.has(title);
  }

  /** The drill of a title. */
  public Drill find(String title) {
    return own.stream()
        .filter(drill -> drill.title().equals(title))
        .findFirst()
        .orElseGet(() -> Stock.find(title));
  }

  /** The lessons that can be run: all of their drills are here. */
  public List<Lesson> ready() {
    return lessons.stream()
        .filter(lesson -> lesson.drills().stream().allMatch(item -> has(item.drill())))
        .toList();
  }
}
