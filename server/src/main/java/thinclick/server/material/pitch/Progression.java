package thinclick.server.material.pitch;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import thinclick.protocol.json.BadInput;

/**
 * Chords by bar.
 *
 * @param bars the chords of each bar, at least one in each
 */
public record Progression(List<List<Chord>> bars) {
  /** The longest progression, bars. */
  public static final int MOST_BARS = 64;

  public Progression {
    bars = bars.stream().map(List::copyOf).toList();
  }

  /**
   * Reads {@code "Dm7 | G7 | Cmaj7 | % |"}: bars between lines, {@code %} for the bar before again,
   * several chords of a bar with spaces between. A complaint names the bar and the symbol.
   */
  public static Progression parse(String where, String written) {
    String text = written.strip();
    text = text.startsWith("|") ? text.substring(1) : text;
    text = text.endsWith("|") ? text.substring(0, text.length() - 1) : text;
    String[] cells = text.split("\\|", -1);
    if (cells.length > MOST_BARS) {
      throw new BadInput(where, "expected at most " + MOST_BARS + " bars, found " + cells.length);
    }
    List<List<Chord>> bars = new ArrayList<>();
    for (int i = 0; i < cells.length; i++) {
      bars.add(bar(where + ", bar " + (i + 1), cells[i].strip(), bars));
    }
    return new Progression(bars);
  }

  private static List<Chord> bar(String where, String cell, List<List<Chord>> before) {
    if (cell.isEmpty()) {
      throw new BadInput(where, "expected a chord such as Dm7, found an empty bar");
    }
    if ("%".equals(cell)) {
      if (before.isEmpty()) {
        throw new BadInput(where, "expected a chord, found \"%\" with no bar before it");
      }
      return before.get(before.size() - 1);
    }
    return Arrays.stream(cell.split("\\s+", -1)).map(symbol -> Chord.parse(where, symbol)).toList();
  }

  /** This progression with every chord moved. */
  public Progression up(int letters, int semitones) {
    return new Progression(
        bars.stream()
            .map(bar -> bar.stream().map(chord -> chord.up(letters, semitones)).toList())
            .toList());
  }

  /**
   * The key it comes home to: of its last chord that is neither dominant nor half diminished, else
   * of its first chord.
   */
  public Key home() {
    Chord home = bars.get(0).get(0);
    for (List<Chord> bar : bars) {
      for (Chord chord : bar) {
        if (restful(chord)) {
          home = chord;
        }
      }
    }
    boolean minor =
        home.quality().symbol().startsWith("m") && !home.quality().symbol().startsWith("maj");
    return Key.readable(home.root(), minor);
  }

  private static boolean restful(Chord chord) {
    return switch (chord.quality().symbol()) {
      case "", "maj7", "6", "6/9", "maj9", "add9", "m", "m6", "mMaj7" -> true;
      default -> false;
    };
  }

  /** {@code "Dm7 | G7 | Cmaj7 | Cmaj7"}. */
  @Override
  public String toString() {
    return bars.stream()
        .map(bar -> bar.stream().map(Chord::toString).collect(Collectors.joining(" ")))
        .collect(Collectors.joining(" | "));
  }
}
