package thinclick.client.window.review;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;
import thinclick.server.scoring.FreeReview;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.PositionReview;
import thinclick.server.scoring.Review;
import thinclick.server.words.Quantity;
import thinclick.server.words.Spoken;

/** Role by role, and where in the bar each player held: on the beat, off it, at the edges. */
final class RoleLines {
  /** Where nothing is written; a sentence below the table says so. */
  static final String NOTHING = "\u2013";

  private final Words words;
  private final FigureCells cells;

  RoleLines(Words words) {
    this.words = words;
    this.cells = new FigureCells(words);
  }

  /** Role by role; empty where no roles were dealt. */
  Lines roles(Review review) {
    Map<String, List<PlayerReview>> byRole = new LinkedHashMap<>();
    for (PlayerReview player : review.players()) {
      if (player.role() != null) {
        byRole.computeIfAbsent(player.role(), role -> new ArrayList<>()).add(player);
      }
    }
    List<List<String>> lines = new ArrayList<>();
    byRole.forEach(
        (role, players) -> {
          int written = players.stream().mapToInt(PlayerReview::written).sum();
          int placed = players.stream().mapToInt(PlayerReview::placed).sum();
          lines.add(
              List.of(
                  words.role(role),
                  written == 0 ? NOTHING : words.say("review.of", placed, written),
                  written == 0 ? NOTHING : share(placed, written),
                  String.join(", ", players.stream().map(PlayerReview::player).toList())));
        });
    return new Lines(
        List.of(
            words.say("leader.role"),
            words.say("review.placed"),
            words.say("review.held"),
            words.say("leader.rolePlayers")),
        lines);
  }

  private String share(int placed, int written) {
    Quantity percent = Quantity.percent(100.0 * placed / written);
    return words.say("figure.percent", percent.shown(words.locale()));
  }

  /** On the beat against off it, entries and endings, for each player. */
  Lines places(Spoken spoken) {
    List<List<String>> lines = new ArrayList<>();
    for (PlayerReview player : spoken.review().players()) {
      Spoken.Slip slip = spoken.slip(player.player());
      lines.add(
          List.of(
              player.player(),
              placed(player.onbeat()),
              placed(player.offbeat()),
              difference(player),
              words.say(entry(spoken.review(), player, slip)),
              words.say(ending(spoken.review(), player, slip))));
    }
    return new Lines(
        List.of(
            words.say("review.player"),
            words.say("leader.onbeat"),
            words.say("leader.offbeat"),
            words.say("leader.difference"),
            words.say("leader.entry"),
            words.say("leader.ending")),
        lines);
  }

  /** Where one of the two is not written, there is nothing that could be known. */
  private String difference(PlayerReview player) {
    boolean both = player.onbeat().written() > 0 && player.offbeat().written() > 0;
    return both ? cells.difference(player.offbeatMinusOnbeatMillis()) : NOTHING;
  }

  private static String entry(Review review, PlayerReview player, Spoken.@Nullable Slip slip) {
    if (slip != null && slip.notHeard()) {
      return "leader.notHeard";
    }
    if (isFree(review, player, free -> free.fromBar() == 0)) {
      return "leader.edge.free";
    }
    return slip != null && slip.cameInLate() ? "leader.entry.late" : "leader.entry.inTime";
  }

  private static String ending(Review review, PlayerReview player, Spoken.@Nullable Slip slip) {
    if (slip != null && slip.notHeard()) {
      return "leader.notHeard";
    }
    if (isFree(review, player, free -> free.toBar() >= review.bars())) {
      return "leader.edge.free";
    }
    return slip != null && slip.lostTheEnding() ? "leader.ending.lost" : "leader.ending.played";
  }

  /** True where a player's bars at an edge of the take are free: nothing is written to keep. */
  private static boolean isFree(Review review, PlayerReview player, Predicate<FreeReview> edge) {
    return review.free().stream()
        .anyMatch(free -> free.player().equals(player.player()) && edge.test(free));
  }

  private String placed(PositionReview position) {
    return position.written() == 0
        ? NOTHING
        : words.say("review.of", position.placed(), position.written());
  }
}
