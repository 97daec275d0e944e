package thinclick.client.window.wall;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What hangs on the wall at one moment: few words, no names.
 *
 * @param large what is read first; empty for nothing
 * @param above the line over it
 * @param below the line under it
 * @param ribbon the stages of the take that was played; empty where none is shown
 * @param held the thinnest stage that was held; -1 for none
 * @param clicks what clicked, one text a stage, in one way or several, the fullest first; empty
 *     where there are too many words for that
 * @param key what clicked in the held stage, for a wall without room for all; empty for nothing
 */
public record WallPage(
    String above,
    String large,
    String below,
    List<Stretch> ribbon,
    int held,
    List<List<String>> clicks,
    String key) {
  /** More words than these cannot be read in passing. A number is a mark of the ribbon, no word. */
  public static final int MOST_WORDS = 12;

  private static final Pattern WORD = Pattern.compile("\\p{L}[^\\s]*");

  /**
   * A stage as a stretch of the ribbon.
   *
   * @param bars its length
   * @param holdShare what was placed of what was written, 0 to 1; negative where it is not known
   * @param clicksPerBar how densely it is hatched
   * @param label how well it was held, a number with its sign; empty where it is not said
   */
  public record Stretch(int bars, double holdShare, double clicksPerBar, String label) {}

  public WallPage {
    ribbon = List.copyOf(ribbon);
    clicks = clicks.stream().map(List::copyOf).toList();
  }

  /** A page of words alone. */
  static WallPage saying(String above, String large, String below) {
    return new WallPage(above, large, below, List.of(), -1, List.of(), "");
  }

  /** All its words, for those who hear them. */
  String spoken() {
    List<String> said = clicks.isEmpty() ? List.of() : clicks.get(0);
    Stream<String> stages =
        IntStream.range(0, ribbon.size())
            .boxed()
            .flatMap(i -> Stream.of(ribbon.get(i).label(), said.isEmpty() ? "" : said.get(i)));
    return Stream.of(Stream.of(above, large), stages, Stream.of(said.isEmpty() ? key : "", below))
        .flatMap(words -> words)
        .filter(words -> !words.isEmpty())
        .collect(Collectors.joining(", "));
  }

  /** How many words it has where as much is said as may be. */
  public int words() {
    int stages = clicks.stream().mapToInt(WallPage::words).max().orElse(0);
    return words(List.of(above, large, below)) + Math.max(stages, words(key));
  }

  /**
   * The same with as much said as may be. That all stages say what clicked comes first; for that,
   * what comes next is said in fewer words. Where it is too much even then, the held one alone is
   * said, and where that is, none.
   *
   * @param nexts the same said below, the longest first; one at least
   * @param keys the same said of the held stage, likewise; none where none was held
   */
  WallPage within(List<String> nexts, List<String> keys) {
    for (String next : nexts) {
      int room = MOST_WORDS - words(List.of(above, large, next));
      List<List<String>> few = clicks.stream().filter(texts -> words(texts) <= room).toList();
      if (!few.isEmpty()) {
        return saying(next, few, first(keys, room));
      }
    }
    for (String next : nexts) {
      String said = first(keys, MOST_WORDS - words(List.of(above, large, next)));
      if (!said.isEmpty()) {
        return saying(next, List.of(), said);
      }
    }
    return saying(nexts.get(nexts.size() - 1), List.of(), "");
  }

  private static String first(List<String> keys, int room) {
    return keys.stream().filter(text -> words(text) <= room).findFirst().orElse("");
  }

  private WallPage saying(String next, List<List<String>> few, String inKey) {
    return new WallPage(above, large, next, ribbon, held, few, inKey);
  }

  private static int words(List<String> texts) {
    return texts.stream().mapToInt(WallPage::words).sum();
  }

  private static int words(String text) {
    return (int) WORD.matcher(text).results().count();
  }
}
