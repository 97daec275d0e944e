package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import thinclick.client.window.session.BarMark;
import thinclick.server.engraving.Engraver;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Place;
import thinclick.server.engraving.Reading;
import thinclick.server.engraving.StaffSystem;
import thinclick.server.material.WrittenPart;
import thinclick.server.words.SheetWords;

/** A line of music and the marks under it as a screen reader says them. */
public final class SpokenLine {
  private SpokenLine() {}

  /** A whole part, a paragraph a bar, after what its first line begins with: that stays. */
  static String of(WrittenPart part) {
    SheetWords said = SheetWords.in(part.heading().language());
    Reading reading = DealtPart.reading(part, Reading.MOST_BARS);
    List<String> paragraphs = new ArrayList<>();
    for (StaffSystem system : Engraver.systems(reading.part(), reading.plans(), 1)) {
      if (paragraphs.isEmpty()) {
        paragraphs.addAll(beginning(system));
      }
      paragraphs.addAll(bars(system, said));
    }
    return String.join("\n", paragraphs);
  }

  /** The signs of a line from left to right, a paragraph for those before the bars and each bar. */
  public static String of(StaffSystem system, SheetWords words) {
    List<String> paragraphs = new ArrayList<>(beginning(system));
    paragraphs.addAll(bars(system, words));
    return String.join("\n", paragraphs);
  }

  /** Clef, key and meter. */
  private static List<String> beginning(StaffSystem system) {
    String before =
        places(system)
            .filter(place -> place.bar() < 0)
            .map(Place::spoken)
            .collect(Collectors.joining(", "));
    return before.isEmpty() ? List.of() : List.of(sentence(before));
  }

  private static List<String> bars(StaffSystem system, SheetWords words) {
    List<String> bars = new ArrayList<>();
    for (int bar = system.firstBar(); bar < system.firstBar() + system.bars(); bar++) {
      bars.add(bar(system, bar, words));
    }
    return bars;
  }

  /** What is written in a bar in one sentence, and what the click does in another. */
  private static String bar(StaffSystem system, int bar, SheetWords said) {
    String number = said.bar(bar + 1);
    String click = said.click();
    String clicked = click + ", ";
    List<String> signs =
        places(system)
            .filter(place -> place.bar() == bar && !place.spoken().equals(number))
            .sorted(Comparator.comparingInt(Place::step))
            .map(Place::spoken)
            .toList();
    String written =
        signs.stream().filter(sign -> !sign.startsWith(clicked)).collect(Collectors.joining("; "));
    String clicks =
        signs.stream()
            .filter(sign -> sign.startsWith(clicked))
            .map(sign -> sign.substring(clicked.length()))
            .collect(Collectors.joining("; "));
    String music = sentence(number + ": " + written);
    return clicks.isEmpty() ? music : music + " " + sentence(click + ": " + clicks);
  }

  private static Stream<Place> places(StaffSystem system) {
    return system.marks().stream().map(Mark::place).filter(place -> !place.spoken().isEmpty());
  }

  private static String sentence(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + ".";
  }

  /** The marks of a bar. */
  static String of(int bar, List<BarMark> marks, SheetWords words) {
    StringBuilder said = new StringBuilder(words.bar(bar + 1));
    for (BarMark mark : marks) {
      String kind = mark.kind().name().toLowerCase(Locale.ROOT);
      said.append(", ").append(words.mark(kind, Math.round(Math.abs(mark.offMillis()))));
    }
    return said.toString();
  }
}
