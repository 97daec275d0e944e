package thinclick.server.material;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Which bars of a stage are silent, by seed. */
final class SilentBars {
  private SilentBars() {}

  /**
   * True for each silent bar. The first bar always clicks, so that the stage is felt to begin, and
   * never more than {@code longest} bars in a row are silent. As many as the share asks for are
   * silent where the limit leaves room, else as many as it leaves room for.
   */
  static List<Boolean> choose(int bars, double share, int longest, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int wanted = (int) Math.round(bars * share);
    int silentLeft = Math.min(wanted, most(bars, longest));
    List<Boolean> silent = new ArrayList<>(bars);
    int run = longest; // as if silence had just ended, so that the first bar clicks
    for (int bar = 0; bar < bars; bar++) {
      int barsLeft = bars - bar;
      boolean must = silentLeft > 0 && silentLeft > room(barsLeft - 1, 0, longest);
      boolean may = run < longest && silentLeft > 0;
      // A silent bar here must leave room for the silent bars that are still to come.
      boolean fits = may && silentLeft - 1 <= room(barsLeft - 1, run + 1, longest);
      boolean here = fits && (must || random.nextInt(barsLeft) < silentLeft);
      silent.add(here);
      silentLeft -= here ? 1 : 0;
      run = here ? run + 1 : 0;
    }
    return silent;
  }

  private static int most(int bars, int longest) {
    return room(bars, longest, longest);
  }

  /** How many of the next bars can be silent after a run of {@code run} silent ones. */
  private static int room(int bars, int run, int longest) {
    int possible = 0;
    int now = run;
    for (int bar = 0; bar < bars; bar++) {
      if (now < longest) {
        possible++;
        now++;
      } else {
        now = 0;
      }
    }
    return possible;
  }
}
