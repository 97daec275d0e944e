package thinclick.client.window.session;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FreeBars;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;

/**
 * A horn cannot tap while it is blown: the line is played first, under a full click, and tapped
 * after. So all chairs' entries are moved behind the bars in which it is played; what is tapped and
 * judged is the drill as it was.
 */
public final class PlayThenTap {
  private static final int FEWEST_BARS = 4;
  private static final int MOST_BARS = 64;

  private PlayThenTap() {}

  /** How many bars are played first: whole periods, so that the same line comes round. */
  public static int bars(Drill drill) {
    for (int bars = drill.periodBars(); bars <= MOST_BARS; bars += drill.periodBars()) {
      int steps = bars * drill.stepsPerBar();
      boolean whole = drill.chairs().stream().allMatch(one -> steps % one.cell().steps() == 0);
      if (bars >= FEWEST_BARS && whole) {
        return bars;
      }
    }
    return drill.periodBars();
  }

  /** The drill with the bars before it. */
  public static Drill of(Drill drill) {
    int bars = bars(drill);
    int steps = bars * drill.stepsPerBar();
    List<Drill.Chair> chairs =
        drill.chairs().stream()
            .map(
                one ->
                    one.edited()
                        .entryStep(one.entryStep() + steps)
                        .free(later(one, bars, new ClickPlan(drill.stages()).bars()))
                        .chair())
            .toList();
    List<Stage> stages = new ArrayList<>();
    Integer[] all =
        IntStream.rangeClosed(1, drill.meter().beatsPerBar()).boxed().toArray(Integer[]::new);
    stages.add(new Stage(bars, 1, List.of(all), null));
    stages.addAll(drill.stages());
    return new Drill(
        drill.format(),
        drill.version(),
        drill.title() + ", played, then tapped",
        drill.level(),
        drill.meter(),
        drill.stepsPerBeat(),
        drill.swing(),
        drill.tempo(),
        drill.toleranceMillis(),
        drill.periodBars(),
        drill.deal(),
        chairs,
        stages,
        drill.groups());
  }

  /** A chair's free bars moved behind the bars that are played first, each written out. */
  private static List<FreeBars> later(Drill.Chair chair, int by, int bars) {
    return chair.free().isEmpty()
        ? List.of()
        : IntStream.range(0, bars)
            .filter(chair::freeAt)
            .mapToObj(bar -> new FreeBars(by + bar, by + bar + 1, null))
            .toList();
  }
}
