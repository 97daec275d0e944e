package thinclick.server.gathering;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.file.Part;
import thinclick.protocol.json.BadInput;

/** Who plays which part of a take that is played again. */
public final class Seating {
  private Seating() {}

  /**
   * A written part for each player, in the players' order: the own one where the take names the
   * player, else the first that nobody has.
   *
   * @throws BadInput where there are more players than parts
   */
  public static List<Part> seat(List<Part> parts, List<String> players) {
    if (players.size() > parts.size()) {
      throw new BadInput(
          "--part", "expected at most " + parts.size() + " of them, found " + players.size());
    }
    List<String> names = parts.stream().map(Part::player).toList();
    List<Part> free =
        new ArrayList<>(parts.stream().filter(part -> !players.contains(part.player())).toList());
    return players.stream()
        .map(
            player ->
                (names.contains(player) ? parts.get(names.indexOf(player)) : free.remove(0))
                    .writtenFor(player))
        .toList();
  }
}
