package thinclick.server.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.DealtFigure;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.server.history.Entry;
import thinclick.server.scoring.PlayerReview;

/**
 * A take that a class has played.
 *
 * @param entry when it was, its drill, its review
 * @param seats who sat where, stand-ins included
 */
public record ClassTake(Entry entry, List<Seat> seats) {
  public ClassTake {
    seats = List.copyOf(seats);
  }

  /**
   * One chair of a take.
   *
   * @param player the name in this take
   * @param chair from 1, in the order of the parts
   * @param level of the part, 1 to 10; null where nobody knows it
   * @param figure that the deal gave instead of what is written, or null
   * @param instrument that the part was read on, or null
   * @param standIn true for a simulated player
   */
  public record Seat(
      String player,
      int chair,
      @Nullable Integer level,
      @Nullable DealtFigure figure,
      @Nullable String instrument,
      boolean standIn) {}

  /**
   * From a take as it is kept.
   *
   * @param levels of drills by their title, for takes older than the level in a part; empty where
   *     nobody knows the drill
   */
  public static ClassTake of(Entry entry, Take written, Function<String, OptionalInt> levels) {
    OptionalInt ofDrill = levels.apply(written.title());
    List<Seat> seats = new ArrayList<>();
    for (Part part : written.parts()) {
      Integer level = part.level();
      if (level == null && ofDrill.isPresent()) {
        level = ofDrill.getAsInt();
      }
      seats.add(
          new Seat(
              part.player(),
              seats.size() + 1,
              level,
              part.figure(),
              part.instrument(),
              part.standIn()));
    }
    return new ClassTake(entry, seats);
  }

  /** The seat of somebody; empty where they did not take part. */
  Optional<Seat> seat(String key) {
    return seats.stream()
        .filter(seat -> !seat.standIn() && NameKey.of(seat.player()).equals(key))
        .findFirst();
  }

  /** Somebody's figures; null where they have none. */
  @Nullable PlayerReview review(String key) {
    return seat(key).map(seat -> entry.review().player(seat.player())).orElse(null);
  }
}
