package thinclick.client.window.review;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import thinclick.client.window.words.Words;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.PositionReview;
import thinclick.server.scoring.Review;
import thinclick.server.words.Quantity;
import thinclick.server.words.Spoken;

/** Role by role, and where in the bar each player held: on the beat, off it, at the edges. */
final class RoleLines {
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
                  String.join(", ", players.stream().map(PlayerReview::player).toList()),
                  words.say("review.of", placed, written),
                  written == 0
                      ? words.say("review.unknown")
                      : words.say(
                          "figure.percent",
                          Quantity.percent(100.0 * placed / written).shown(words.locale()))));
        });
    return new Lines(
        List.of(
            words.say("leader.role"),
            words.say("review.player"),
            words.say("review.placed"),
            words.say("review.held")),
        lines);
  }

  /** On the beat against off it, entries and endings, for each player. */
  Lines places(Spoken spoken) {
    List<List<String>> lines = new ArrayList<>();
    for (PlayerReview player : spoken.review().players()) {
      Spoken.Slip slip = spoken.slip(player.player());
      List<String> found = slip == null ? List.of() : slip.rules();
      lines.add(
          List.of(
              player.player(),
              placed(player.onbeat()),
              placed(player.offbeat()),
              cells.difference(player.offbeatMinusOnbeatMillis()),
              words.say(
                  found.contains("notHeard")
                      ? "leader.notHeard"
                      : found.contains("lateEntry") ? "leader.entry.late" : "leader.entry.inTime"),
              words.say(
                  found.contains("notHeard")
                      ? "leader.notHeard"
                      : found.contains("lostEnding")
                          ? "leader.ending.lost"
                          : "leader.ending.played")));
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

  private String placed(PositionReview position) {
    return position.written() == 0
        ? words.say("leader.nothing")
        : words.say("review.of", position.placed(), position.written());
  }
}
