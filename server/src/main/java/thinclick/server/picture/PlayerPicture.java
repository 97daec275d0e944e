package thinclick.server.picture;

import java.util.ArrayList;
import java.util.List;
import thinclick.server.scoring.Analysis;
import thinclick.server.words.Speaker;
import thinclick.server.words.Tally;

/**
 * One player's own take, below what is said of it: attacks in upright columns by their place in the
 * bar, and a time line of the bars in which the player was off, away or silent, where there are
 * any.
 */
public final class PlayerPicture {
  /** How wide it is drawn, in units. */
  public static final double WIDTH = 828;

  private PlayerPicture() {}

  /** What stands above it. */
  public static String heading(Speaker speaker) {
    return speaker.say("picture.columns");
  }

  /** Draws it; nothing of anybody else's figures is in it. */
  public static Drawing of(Analysis whole, String player, Speaker speaker) {
    Analysis own =
        new Analysis(
            whole.take(),
            whole.review().forPlayer(player),
            whole.players().stream().filter(one -> one.player().equals(player)).toList(),
            whole.pulseMillis());
    Easel easel = new Easel();
    List<DotColumns> drawn = new ArrayList<>();
    double y = 0;
    for (Analysis.PlayerAnalysis one : own.players()) {
      DotColumns columns =
          new DotColumns(own, one, DotScale.of(List.of(own)), WIDTH, false, speaker);
      drawn.add(columns);
      columns.draw(easel, 0, y, columns.lines());
      y += columns.height(columns.lines());
      y = ReviewPicture.key(easel, 0, y, ReviewPicture.OWN_SCALE, own, drawn, speaker);
      if (Episodes.any(own)) {
        y += 22;
        easel.heading(0, y + 16, speaker.say("picture.episodes"));
        int bars = Math.max(1, own.take().plan().bars());
        Episodes.draw(
            easel,
            own,
            new BarScale(BarScale.NAMES, WIDTH - BarScale.NAMES, bars),
            y + 26,
            speaker);
        y += 26 + Episodes.height(own);
      }
    }
    return new Drawing(WIDTH, y + 6, whole.take().title(), says(own, speaker), easel.items());
  }

  private static String says(Analysis own, Speaker speaker) {
    StringBuilder says = new StringBuilder(heading(speaker)).append(". ");
    for (Analysis.PlayerAnalysis one : own.players()) {
      says.append(speaker.say(Tally.of(one).said())).append(". ");
      for (Analysis.Played played : one.played()) {
        Double off = played.asynchronyMillis();
        if (off != null) {
          says.append(Math.round(off)).append(", ");
        }
      }
    }
    return says.toString().strip();
  }
}
