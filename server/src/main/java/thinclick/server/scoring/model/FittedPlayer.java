package thinclick.server.scoring.model;

import java.util.List;

/**
 * One fitted player: the track, who is heard in it, and the fit.
 *
 * @param followed the players heard, in the order of their gains
 */
record FittedPlayer(Track track, List<Integer> followed, Fit fit, Sweep sweep) {
  /** The index of the gain to another player; -1 where that player is not heard. */
  int gainTo(int other) {
    int place = followed.indexOf(other);
    return place < 0 ? -1 : place + (track.clickGain >= 0 ? 1 : 0);
  }

  /** How often this player heard the click while playing. */
  int clicks() {
    int clicks = 0;
    for (boolean click : track.click) {
      clicks += click ? 1 : 0;
    }
    return clicks;
  }
}
