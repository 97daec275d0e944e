package thinclick.client.window.review;

import java.util.ArrayList;
import java.util.List;
import thinclick.client.window.words.Words;
import thinclick.server.scoring.Displacement;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Review;
import thinclick.server.words.ShiftWords;
import thinclick.server.words.Speaker;

/**
 * A stretch in which a player was off the part by whole steps of the grid.
 *
 * @param player whose it is
 * @param fromBar the first bar, from 0
 * @param toBar the first bar after it
 * @param steps by how many steps, positive late
 * @param called what it is called: "a beat late"
 * @param says as a sentence
 */
record Episode(String player, int fromBar, int toBar, int steps, String called, String says) {
  /** All of a review, in the order of its players. */
  static List<Episode> of(Review review, Words words) {
    Speaker speaker = Speaker.of(words.locale());
    int bars = bars(review);
    List<Episode> episodes = new ArrayList<>();
    for (PlayerReview player : review.players()) {
      for (Displacement one : player.displacements()) {
        episodes.add(
            new Episode(
                player.player(),
                one.fromBar(),
                one.toBar(),
                one.steps(),
                speaker.say(ShiftWords.of(one.steps(), review.meter(), review.stepsPerBeat())),
                speaker.say(
                    ShiftWords.stretch(
                        player.player(), one, bars, review.meter(), review.stepsPerBeat()))));
      }
    }
    return episodes;
  }

  /** What the steps of a review's grid are called: "eighths". */
  static String steps(Review review, Words words) {
    return Speaker.of(words.locale()).say(ShiftWords.steps(review.meter(), review.stepsPerBeat()));
  }

  /** How many bars the take was planned for; one where it had no stage. */
  static int bars(Review review) {
    return review.stages().isEmpty() ? 1 : review.stages().get(review.stages().size() - 1).toBar();
  }
}
