package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import thinclick.client.window.session.BarMark;
import thinclick.server.engraving.Engraver;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Reading;
import thinclick.server.engraving.StaffSystem;
import thinclick.server.material.WrittenPart;
import thinclick.server.words.SheetWords;

/** A line of music and the marks under it as a screen reader says them. */
public final class SpokenLine {
  private SpokenLine() {}

  /** A whole part, its stages and bars. */
  static String of(WrittenPart part) {
    SheetWords said = SheetWords.in(part.heading().language());
    Reading reading = DealtPart.reading(part, Reading.MOST_BARS);
    return Engraver.systems(reading.part(), reading.plans(), 1).stream()
        .map(system -> of(system, said))
        .collect(Collectors.joining("\n"));
  }

  /** The signs of a line from left to right, a paragraph for those before the bars and each bar. */
  public static String of(StaffSystem system, SheetWords words) {
    List<String> said = new ArrayList<>();
    String before =
        system.marks().stream()
            .map(mark -> mark.place())
            .filter(place -> place.bar() < 0 && !place.spoken().isEmpty())
            .map(place -> place.spoken())
            .collect(Collectors.joining(", "));
    if (!before.isEmpty()) {
      said.add(sentence(before));
    }
    for (int bar = system.firstBar(); bar < system.firstBar() + system.bars(); bar++) {
      int now = bar;
      List<String> signs =
          system.marks().stream()
              .map(Mark::place)
              .filter(place -> place.bar() == now && !place.spoken().isEmpty())
              .sorted((one, other) -> Integer.compare(one.step(), other.step()))
              .map(place -> place.spoken())
              .toList();
      said.add(sentence(words.bar(bar + 1) + ": " + String.join("; ", signs)));
    }
    return String.join("\n", said);
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
