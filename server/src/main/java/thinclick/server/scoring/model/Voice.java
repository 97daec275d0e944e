package thinclick.server.scoring.model;

import java.util.List;

/**
 * One player as the model takes them.
 *
 * @param player the player's name
 * @param written how many attacks were written for the player while there
 * @param attacks those matched at displacement 0, steps ascending; what was displaced is left out
 * @param hearsOthers false where nothing of the others' own attacks reached the player
 * @param heardLateMillis how late the others' attacks reached the player's ear, one way, buffers
 *     included; 0 in one room
 * @param ahead thinner clicks to forecast
 */
public record Voice(
    String player,
    int written,
    List<GridAttack> attacks,
    boolean hearsOthers,
    double heardLateMillis,
    List<ThinnerClick> ahead) {
  public Voice {
    ahead = List.copyOf(ahead);
    attacks = List.copyOf(attacks);
    for (int i = 1; i < attacks.size(); i++) {
      if (attacks.get(i).step() <= attacks.get(i - 1).step()) {
        throw new IllegalArgumentException(
            "expected ascending steps, found "
                + attacks.get(i).step()
                + " after "
                + attacks.get(i - 1).step());
      }
    }
  }

  /** A player in the room with the others, every written attack matched. */
  public static Voice inTheRoom(String player, List<GridAttack> attacks) {
    return new Voice(player, attacks.size(), attacks, true, 0, List.of());
  }

  /** True where so much is missing that others may have followed what is not in the take. */
  boolean missing() {
    return 2 * attacks.size() < written;
  }
}
