package thinclick.server.dealing;

import java.util.List;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;
import thinclick.server.words.ToOneself;

/**
 * What a deal came to.
 *
 * @param parts one for each player, in the players' order
 * @param says who comes in where, a sentence for each part
 * @param toleranceMillis how far from the pulse an attack may lie and be placed, milliseconds
 * @param dealt the drill with a chair for each player as it was dealt, named by the player; it
 *     deals itself the same, whatever the seed
 */
public record Dealing(List<Part> parts, List<Said> says, double toleranceMillis, Drill dealt) {
  public Dealing {
    parts = List.copyOf(parts);
    says = List.copyOf(says);
  }

  /** Who comes in where, in one language. */
  public List<String> sentences(Speaker speaker) {
    return says.stream().map(speaker::say).toList();
  }

  /** The same, said to the player of each part. */
  public List<String> toEach(Speaker speaker) {
    return says.stream().map(ToOneself::of).map(speaker::say).toList();
  }

  /** Who comes in where, in English. */
  public List<String> sentences() {
    return sentences(Speaker.english());
  }
}
