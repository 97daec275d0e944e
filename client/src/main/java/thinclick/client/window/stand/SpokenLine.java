package thinclick.client.window.stand;

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

  /** A whole part, a paragraph for each line of four bars at most. */
  static String of(WrittenPart part) {
    SheetWords said = SheetWords.in(part.heading().language());
    Reading reading = DealtPart.reading(part, Reading.MOST_BARS);
    return Engraver.systems(reading.part(), reading.plans(), 1).stream()
        .map(system -> of(system, said))
        .collect(Collectors.joining("\n"));
  }

  /** The signs of a line from left to right, bar by bar. */
  public static String of(StaffSystem system, SheetWords words) {
    StringBuilder said = new StringBuilder();
    system.marks().stream()
        .filter(mark -> mark.place().bar() < 0 && !mark.place().spoken().isEmpty())
        .forEach(mark -> said.append(mark.place().spoken()).append(", "));
    for (int bar = system.firstBar(); bar < system.firstBar() + system.bars(); bar++) {
      said.append(words.bar(bar + 1)).append(": ");
      int now = bar;
      List<String> signs =
          system.marks().stream()
              .map(Mark::place)
              .filter(place -> place.bar() == now && !place.spoken().isEmpty())
              .sorted((one, other) -> Integer.compare(one.step(), other.step()))
              .map(place -> place.spoken())
              .toList();
      said.append(String.join("; ", signs)).append(". ");
    }
    return said.toString().strip();
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
