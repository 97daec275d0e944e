package thinclick.client.window.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import thinclick.client.window.words.Words;
import thinclick.server.picture.PlayerSheet.Section;
import thinclick.server.picture.PlayerSheet.Table;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Review;
import thinclick.server.scoring.StageReview;
import thinclick.server.words.DriftWords;
import thinclick.server.words.Quantity;
import thinclick.server.words.Spoken;
import thinclick.server.words.Tally;

/** The two tables that all read: stage by stage, and player by player. */
final class BandTables {
  private final Words words;
  private final FigureCells cells;

  BandTables(Words words) {
    this.words = words;
    this.cells = new FigureCells(words);
  }

  /** Both, as they stand below the words. */
  List<Section> of(Spoken spoken) {
    Review review = spoken.review();
    List<Section> both = new ArrayList<>();
    both.add(
        Section.table(
            "stages",
            words.say("review.stages"),
            new Table(stageHeads(), stages(spoken), Set.of(0, 1, 4))));
    String counts = spoken.counts();
    both.add(
        Section.table(
            "players",
            words.say("review.players"),
            new Table(playerHeads(review), players(review), Set.of(0)),
            counts == null || review.players().size() == 1 ? List.of() : List.of(counts)));
    return both;
  }

  /** The heads of the stages table. */
  private List<String> stageHeads() {
    return List.of(
        words.say("review.bars"),
        words.say("review.click"),
        words.say("review.held"),
        words.say("review.spread"),
        words.say("review.drift"));
  }

  /** A line for each stage. */
  private List<List<String>> stages(Spoken spoken) {
    List<List<String>> lines = new ArrayList<>();
    Review review = spoken.review();
    List<StageReview> stages = review.stages();
    for (int i = 0; i < stages.size(); i++) {
      StageReview stage = stages.get(i);
      lines.add(
          List.of(
              words.say("review.barsFromTo", stage.fromBar() + 1, stage.toBar()),
              spoken.clicks().get(i),
              cells.percent(stage.hold()),
              cells.millis(stage.spreadMillis()),
              cells.drift(DriftWords.of(stage, review.meter()))));
    }
    return lines;
  }

  /** The heads of the players table. */
  private List<String> playerHeads(Review review) {
    List<String> heads =
        new ArrayList<>(List.of(words.say("review.player"), words.say("review.placed")));
    if (outside(review)) {
      heads.add(words.say("review.outside"));
    }
    if (displaced(review)) {
      heads.add(words.say("review.off"));
    }
    heads.addAll(
        List.of(
            words.say("review.dropped"),
            words.say("review.added"),
            words.say("review.lean"),
            words.say("review.spread")));
    if (lengths(review)) {
      heads.add(words.say("review.length"));
    }
    return heads;
  }

  /**
   * Whether anybody played at home and was not placed; with what follows it makes the sum whole.
   */
  private static boolean outside(Review review) {
    return review.players().stream().anyMatch(player -> Tally.outside(player) > 0);
  }

  /** Whether anybody was whole steps off the part. */
  private static boolean displaced(Review review) {
    return review.players().stream().anyMatch(player -> player.displaced() > 0);
  }

  /** Whether it is known of anybody how long notes were held; most parts write no lengths. */
  private static boolean lengths(Review review) {
    return review.players().stream().anyMatch(player -> player.noteLength().known());
  }

  /** A line for each player whose figures were sent. */
  private List<List<String>> players(Review review) {
    List<List<String>> lines = new ArrayList<>();
    for (PlayerReview player : review.players()) {
      List<String> line = new ArrayList<>();
      lines.add(line);
      line.add(player.standIn() ? words.say("review.standIn", player.player()) : player.player());
      line.add(words.say("review.of", player.placed(), player.written()));
      if (outside(review)) {
        line.add(Integer.toString(Tally.outside(player)));
      }
      if (displaced(review)) {
        line.add(Integer.toString(player.displaced()));
      }
      line.add(Integer.toString(player.dropped()));
      line.add(Integer.toString(player.added()));
      line.add(cells.lean(player.leanMillis()));
      line.add(cells.millis(player.spreadMillis()));
      if (lengths(review)) {
        line.add(
            player.noteLength().known()
                ? words.say(
                    "review.ofWritten",
                    Quantity.share(player.noteLength().get(), player.noteLength().interval())
                        .shown(words.locale()))
                : cells.unknown());
      }
    }
    return lines;
  }
}
