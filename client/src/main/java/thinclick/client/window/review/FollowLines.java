package thinclick.client.window.review;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.PairReview;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Reason;
import thinclick.server.scoring.Review;
import thinclick.server.words.ForecastWords;
import thinclick.server.words.Quantity;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;

/** What the timing model tells the leader: who follows whom, and what a thinner click would do. */
final class FollowLines {
  private final Words words;
  private final Speaker speaker;

  FollowLines(Words words) {
    this.words = words;
    this.speaker = Speaker.of(words.locale());
  }

  /** Who follows whom, a sentence each; where that is not known, why. */
  List<String> follows(Review review) {
    List<List<@Nullable Double>> gains = review.ensemble().gains();
    if (gains == null) {
      Reason why = review.ensemble().gainsReason();
      boolean tooShort = why != null && why.code() == Reason.Code.TOO_FEW && allPlayed(review);
      return List.of(words.say(tooShort ? "leader.follows.tooShort" : "leader.follows.unknown"));
    }
    List<String> says = new ArrayList<>();
    List<String> open = new ArrayList<>();
    List<PlayerReview> players = review.players();
    List<List<@Nullable Interval>> intervals = review.ensemble().gainsInterval();
    for (int i = 0; i < gains.size() && i < players.size(); i++) {
      for (int j = 0; j < gains.get(i).size() && j < players.size(); j++) {
        Double gain = gains.get(i).get(j);
        if (i != j && gain != null) {
          Interval interval = intervals == null ? null : intervals.get(i).get(j);
          // Where the end that is shown is nothing, it is not said to follow.
          boolean told =
              interval != null
                  && Quantity.share(gain, interval).at(100 * interval.low()).side() > 0;
          (told ? says : open)
              .add(
                  words.say(
                      told ? "leader.follows" : "leader.follows.pair",
                      players.get(i).player(),
                      percent(gain, interval, gain),
                      players.get(j).player(),
                      between(gain, interval)));
        }
      }
    }
    for (PairReview pair : review.ensemble().pairs()) {
      if (pair.leader() != null) {
        String other = pair.leader().equals(pair.first()) ? pair.second() : pair.first();
        says.add(words.say("leader.leads", pair.leader(), other));
      }
    }
    if (!open.isEmpty()) {
      says.add(words.say("leader.follows.open", String.join("; ", open)));
    }
    return says.isEmpty() ? List.of(words.say("leader.follows.unknown")) : says;
  }

  /** True where nearly all that is written was played: more would have needed a longer take. */
  private static boolean allPlayed(Review review) {
    return review.players().stream().allMatch(player -> 10 * player.dropped() <= player.written());
  }

  private String between(double gain, @Nullable Interval interval) {
    return interval == null
        ? ""
        : words.say(
            "leader.range.percent",
            percent(gain, interval, interval.low()),
            percent(gain, interval, interval.high()));
  }

  /** One of a gain's numbers in percent, in the digits that the gain has. */
  private String percent(double gain, @Nullable Interval interval, double one) {
    Quantity share = Quantity.share(gain, interval);
    return share.at(100 * one).shown(words.locale()).replace('-', '\u2212');
  }

  /** What a thinner click would do, a sentence for each player of whom it is foretold. */
  List<String> ahead(Review review) {
    List<String> says = new ArrayList<>();
    for (PlayerReview player : review.players()) {
      List<Said> found = new ArrayList<>(ForecastWords.silence(player));
      Said thinner =
          ForecastWords.thinner(
              player, review.meter(), review.stepsPerBeat(), review.toleranceMillis());
      if (thinner != null) {
        found.add(0, thinner);
      }
      found.forEach(one -> says.add(speaker.say(one)));
    }
    return says;
  }
}
