package thinclick.server.dealing;

import java.util.List;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;

/**
 * What a deal came to.
 *
 * @param parts one for each player, in the players' order
 * @param sentences who comes in where, one for each part
 * @param toleranceMillis how far from the pulse an attack may lie and be placed, milliseconds
 * @param dealt the drill with a chair for each player as it was dealt, named by the player; it
 *     deals itself the same, whatever the seed
 */
public record Dealing(
    List<Part> parts, List<String> sentences, double toleranceMillis, Drill dealt) {
  public Dealing {
    parts = List.copyOf(parts);
    sentences = List.copyOf(sentences);
  }
}
