package thinclick.server.store;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import thinclick.protocol.file.SeasonFile;
import thinclick.protocol.file.SeasonFile.Member;
import thinclick.server.season.NameKey;
import thinclick.server.season.SeatConflict;
import tools.jackson.databind.JsonNode;

/** A season from another computer, taken into the database. */
public final class SeasonRows {
  private SeasonRows() {}

  /**
   * What opening came to.
   *
   * @param classNumber of the class
   * @param takes taken in
   * @param there takes that were here already, and stay as they are
   * @param elsewhere takes that are here in another class, and stay there
   * @param members written into the list
   * @param conflicts those who are in both lists but sit elsewhere; what is here stays
   */
  public record Opened(
      long classNumber,
      int takes,
      int there,
      List<String> elsewhere,
      int members,
      List<SeatConflict> conflicts) {}

  static Opened open(Handle handle, SeasonFile season, Instant now) {
    long number = ClassRows.make(handle, season.title(), now);
    if (season.keepMonths() != null) {
      handle
          .createUpdate(
              "UPDATE class SET keep_months = coalesce(keep_months, :months) WHERE number = :class")
          .bind("months", season.keepMonths())
          .bind("class", number)
          .execute();
    }
    List<SeatConflict> conflicts = new ArrayList<>();
    int written = 0;
    List<Member> here = ClassRows.members(handle, number);
    for (Member member : season.members()) {
      String key = NameKey.of(member.name());
      Optional<Member> same =
          here.stream().filter(one -> NameKey.of(one.name()).equals(key)).findFirst();
      if (same.isEmpty()) {
        ClassRows.write(handle, number, member, now);
        written++;
      } else if (!same.get().equals(member)) {
        conflicts.add(new SeatConflict(same.get(), member));
      }
    }
    int taken = 0;
    int there = 0;
    List<String> elsewhere = new ArrayList<>();
    for (SeasonFile.KeptTake take : season.takes()) {
      Optional<Long> owner = owner(handle, take.id());
      if (owner.isEmpty()) {
        JsonNode review = take.review();
        StoredTakes.insert(
            handle,
            take.id(),
            take.take(),
            take.begun(),
            take.ended(),
            review == null ? null : review.toString(),
            number);
        taken++;
      } else if (owner.get() == number) {
        there++;
      } else {
        elsewhere.add(take.id());
      }
    }
    return new Opened(number, taken, there, elsewhere, written, conflicts);
  }

  /** The class of a take, -1 for none; empty where there is no such take. */
  private static Optional<Long> owner(Handle handle, String takeId) {
    return handle
        .createQuery("SELECT coalesce(class, -1) FROM take WHERE id = :id")
        .bind("id", takeId)
        .mapTo(Long.class)
        .findOne();
  }
}
