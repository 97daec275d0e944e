package thinclick.client.window.wall;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What hangs on the wall at one moment: few words, no names.
 *
 * @param large what is read first; empty for nothing
 * @param above the line over it
 * @param below the line under it
 * @param ribbon the stages of the take that was played; empty where none is shown
 * @param held under which stage the words of {@code heldSays} stand; -1 for none
 * @param heldSays what clicked in the thinnest stage that was held
 */
public record WallPage(
    String above, String large, String below, List<Stretch> ribbon, int held, String heldSays) {
  /** More words than these cannot be read in passing. */
  public static final int MOST_WORDS = 12;

  private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}][^\\s]*");

  /**
   * A stage as a stretch of the ribbon.
   *
   * @param bars its length
   * @param holdShare what was placed of what was written, 0 to 1; negative where it is not known
   * @param clicksPerBar how densely it is hatched
   * @param label how well it was held, a number with its sign; empty where it is not said
   */
  public record Stretch(int bars, double holdShare, double clicksPerBar, String label) {
    Stretch unlabelled() {
      return new Stretch(bars, holdShare, clicksPerBar, "");
    }
  }

  public WallPage {
    ribbon = List.copyOf(ribbon);
  }

  /** A page of words alone. */
  static WallPage saying(String above, String large, String below) {
    return new WallPage(above, large, below, List.of(), -1, "");
  }

  /** All its words, for those who hear them. */
  String spoken() {
    Stream<String> labels = ribbon.stream().map(Stretch::label);
    return Stream.of(Stream.of(above, large), labels, Stream.of(heldSays, below))
        .flatMap(words -> words)
        .filter(words -> !words.isEmpty())
        .collect(Collectors.joining(", "));
  }

  /** How many words it has, numbers among them. */
  public int words() {
    int labels = ribbon.stream().mapToInt(stretch -> words(stretch.label())).sum();
    return words(above) + words(large) + words(below) + words(heldSays) + labels;
  }

  /**
   * The same with as much said as there is room for. The numbers of the stages stay: before one of
   * them goes, what comes next and what was held are said in fewer words, then not at all.
   *
   * @param nexts the same said below, the longest first; one at least
   * @param helds the same said of the held stage, likewise
   */
  WallPage within(List<String> nexts, List<String> helds) {
    for (String next : nexts) {
      for (String says : helds) {
        WallPage page = new WallPage(above, large, next, ribbon, held, says);
        if (page.words() <= MOST_WORDS) {
          return page;
        }
      }
    }
    String shortest = nexts.get(nexts.size() - 1);
    for (String next : List.of(shortest, "")) {
      WallPage page = new WallPage(above, large, next, ribbon, held, "");
      if (page.words() <= MOST_WORDS) {
        return page;
      }
    }
    List<Stretch> bare = ribbon.stream().map(Stretch::unlabelled).toList();
    return new WallPage(above, large, shortest, bare, held, "");
  }

  private static int words(String text) {
    return (int) WORD.matcher(text).results().count();
  }
}
