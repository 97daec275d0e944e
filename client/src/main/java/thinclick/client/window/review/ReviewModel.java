package thinclick.client.window.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.words.Words;
import thinclick.protocol.json.BadInput;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Review;
import thinclick.server.scoring.StageReview;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;
import tools.jackson.core.JacksonException;

/** A review as it is read: sentences, then the stages, then the players. */
public final class ReviewModel {
  private static final Logger LOG = LoggerFactory.getLogger(ReviewModel.class);

  private final Words words;

  public ReviewModel(Words words) {
    this.words = words;
  }

  /** The review of the last take, or null where there is none that can be read. */
  public @Nullable Spoken read(RoomState room) {
    if (room.review() == null) {
      return null;
    }
    try {
      return Spoken.fromJson(room.review().review());
    } catch (JacksonException | BadInput unreadable) {
      LOG.warn("a review that cannot be read: {}", unreadable.getMessage());
      return null;
    }
  }

  /** What a bandleader would say, as the host said it. */
  public List<String> sentences(Spoken spoken) {
    return spoken.prose(Speaker.of(words.locale()));
  }

  /** The heads of the stages table. */
  public List<String> stageHeads() {
    return List.of(
        words.say("review.bars"),
        words.say("review.click"),
        words.say("review.held"),
        words.say("review.spread"),
        words.say("review.drift"));
  }

  /** A line for each stage. */
  public List<List<String>> stages(Spoken spoken) {
    List<List<String>> lines = new ArrayList<>();
    List<StageReview> stages = spoken.review().stages();
    for (int i = 0; i < stages.size(); i++) {
      StageReview stage = stages.get(i);
      lines.add(
          List.of(
              words.say("review.barsFromTo", stage.fromBar() + 1, stage.toBar()),
              spoken.clicks().get(i),
              figure(stage.hold(), "%.0f %%"),
              figure(stage.spreadMillis(), "%.0f ms"),
              figure(stage.driftPercent(), "%+.1f %%")));
    }
    return lines;
  }

  /** The heads of the players table. */
  public List<String> playerHeads() {
    return List.of(
        words.say("review.player"),
        words.say("review.placed"),
        words.say("review.dropped"),
        words.say("review.added"),
        words.say("review.lean"),
        words.say("review.spread"));
  }

  /** A line for each player whose figures were sent. */
  public List<List<String>> players(Review review) {
    List<List<String>> lines = new ArrayList<>();
    for (PlayerReview player : review.players()) {
      lines.add(
          List.of(
              player.standIn() ? words.say("review.standIn", player.player()) : player.player(),
              words.say("review.of", player.placed(), player.written()),
              Integer.toString(player.dropped()),
              Integer.toString(player.added()),
              lean(player.leanMillis()),
              figure(player.spreadMillis(), "%.0f ms")));
    }
    return lines;
  }

  /** A lean in words: early, late, or on it. */
  private String lean(Figure lean) {
    if (!lean.known()) {
      return words.say("review.unknown");
    }
    long millis = Math.round(lean.get());
    if (millis == 0) {
      return words.say("review.lean.none");
    }
    return words.say(millis < 0 ? "review.lean.early" : "review.lean.late", Math.abs(millis));
  }

  private String figure(Figure figure, String pattern) {
    return figure.known()
        ? String.format(Locale.ROOT, pattern, figure.get())
        : words.say("review.unknown");
  }
}
