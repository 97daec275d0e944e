package thinclick.client.window.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.BiFunction;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.StepGrid;
import thinclick.server.dealing.Dealer;
import thinclick.server.dealing.Dealing;
import thinclick.server.material.Stock;

/** Takes of a drill of the stock at its usual tempo, as it is dealt to some players. */
public final class StockTakes {
  private static final long START = 3_000_000;

  private StockTakes() {}

  /**
   * One.
   *
   * @param playing the attacks of each part, in any order
   */
  public static Take played(
      String title, List<String> players, BiFunction<Part, StepGrid, List<Attack>> playing) {
    Drill drill = Stock.find(title);
    double tempo = drill.tempo().start();
    Dealing dealing = Dealer.deal(drill, players, 7, tempo, drill.stages());
    StepGrid grid = new StepGrid(drill.meter(), drill.stepsPerBeat(), tempo, drill.swing(), START);
    List<Attack> attacks = new ArrayList<>();
    dealing.parts().forEach(part -> attacks.addAll(playing.apply(part, grid)));
    attacks.sort(Comparator.comparingLong(Attack::micros));
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        drill.title(),
        drill.meter(),
        tempo,
        drill.stepsPerBeat(),
        drill.swing(),
        START,
        dealing.toleranceMillis(),
        drill.stages(),
        dealing.parts(),
        attacks,
        null,
        List.of());
  }
}
