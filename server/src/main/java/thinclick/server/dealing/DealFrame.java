package thinclick.server.dealing;

import java.util.List;
import thinclick.protocol.file.Drill;
import thinclick.server.material.Groupings;

/**
 * What every way of dealing works within.
 *
 * @param drill the drill
 * @param players the players' names, 1 to 24
 * @param seed settles every free choice
 * @param bars length of the take
 */
record DealFrame(Drill drill, List<String> players, long seed, int bars) {
  int stepsPerBar() {
    return drill.stepsPerBar();
  }

  int totalSteps() {
    return bars * stepsPerBar();
  }

  /** The chair of a player, the chairs taken in turn. */
  Drill.Chair chair(int player) {
    return drill.chairs().get(player % drill.chairs().size());
  }

  /** Steps of a period: the drill's, or more where a chair's figure needs more to come out even. */
  int periodSteps() {
    int steps = drill.periodBars() * stepsPerBar();
    for (Drill.Chair chair : drill.chairs()) {
      steps = Groupings.realignsAfter(chair.cell().steps(), steps);
    }
    return steps;
  }
}
