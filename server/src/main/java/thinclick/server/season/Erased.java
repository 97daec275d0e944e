package thinclick.server.season;

import java.util.List;
import java.util.regex.Pattern;

/**
 * What went of a database when somebody, or a class, was erased.
 *
 * @param takes those in which the name was replaced
 * @param deleted takes that went whole, with their class
 * @param reviews stored reviews that were deleted; they can be made again from the take
 * @param members entries in lists of classes
 * @param rooms open rooms that were closed, because their members were named
 */
public record Erased(
    List<String> takes, List<String> deleted, int reviews, int members, int rooms) {
  /** What stands for a name that was erased; where it is taken, with a number. */
  public static final String NAME = "Somebody";

  private static final Pattern IN_ITS_PLACE = Pattern.compile(NAME + "( \\d+)?");

  public Erased {
    takes = List.copyOf(takes);
    deleted = List.copyOf(deleted);
  }

  /** True for a name that stands where an erased one stood. */
  static boolean stands(String name) {
    return IN_ITS_PLACE.matcher(name).matches();
  }

  /** True where there was nothing to erase. */
  public boolean nothing() {
    return takes.isEmpty() && deleted.isEmpty() && members == 0 && rooms == 0;
  }
}
