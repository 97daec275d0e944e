package thinclick.server.material;

import static thinclick.server.material.StockDrill.Row.row;

import java.util.List;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Line;

/** A school band room with invented people, to show the tool with; never a reference for a test. */
public final class Demo {
  /** The Room 12 rhythm section in the order of its chairs: ride, bass, comping, answers. */
  public static final List<String> RHYTHM_SECTION = List.of("Mina", "Jonas", "Ilse", "Tariq");

  /** The Tuesday class, the rhythm section first. */
  public static final List<String> TUESDAY_CLASS =
      List.of(
          "Mina", "Jonas", "Ilse", "Tariq", "Noor", "Emil", "Sanna", "Luca", "Yara", "Piet",
          "Amina", "Oskar", "Leila", "Bruno", "Kaya", "Matteo", "Freya", "Idris", "Lotte", "Rafi",
          "Vera", "Hugo", "Zoe", "Anton");

  /** The title of the rhythm section's drill. */
  public static final String TITLE = "Room 12 rhythm section";

  private Demo() {}

  static List<StockDrill> drills() {
    return List.of(
        StockDrill.Grid.of("4/4", 2)
            .rows(
                TITLE,
                2,
                DealKind.AS_WRITTEN,
                row("0,2,3,4,6,7").bars(1).chair("ride", "ride", "ride"),
                row("0,2,4,6")
                    .bars(1)
                    .chair("bass", "bass", "bass")
                    .line(Line.ofProgression("Bb", "Cm7 | F7 | Bbmaj7 | %")),
                row("3,7,10,15").chair("comping", "comping", "piano"),
                row("9,11,13").chair("answers", "answer", "tenor saxophone"))
            .tempo(80, 200)
            .level(4)
            .to(Rung.EVERY_SECOND_BAR));
  }
}
