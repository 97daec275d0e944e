package thinclick.server.dealing;

import java.util.List;
import thinclick.protocol.file.Drill;

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

  Drill.Chair chair(int player) {
    return drill.chairs().get(player % drill.chairs().size());
  }
}
