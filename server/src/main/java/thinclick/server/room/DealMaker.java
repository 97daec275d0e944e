package thinclick.server.room;

import java.util.List;
import java.util.Map;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.Stage;

/** From a drill and its players to their parts; pure, the same for the same seed. */
@FunctionalInterface
public interface DealMaker {
  /**
   * Deals.
   *
   * @param players names in the order of chairs, at least one
   * @param levels at which some of them play, 1 to 10, by name: their figures are fitted to it
   * @throws BadInput where the drill cannot be dealt so
   */
  Hand deal(
      Drill drill,
      List<String> players,
      long seed,
      double tempo,
      List<Stage> stages,
      Map<String, Integer> levels);

  /**
   * What was dealt.
   *
   * @param parts one a player, in the same order
   * @param says who comes in where, a sentence each
   * @param saysToEach the same, said to the player
   * @param toleranceMillis how far from the ensemble pulse an attack is still placed
   * @param dealt the drill as it was dealt, a chair for each part
   */
  record Hand(
      List<Part> parts,
      List<String> says,
      List<String> saysToEach,
      double toleranceMillis,
      Drill dealt) {}
}
