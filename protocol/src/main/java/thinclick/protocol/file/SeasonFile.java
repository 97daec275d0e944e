package thinclick.protocol.file;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import tools.jackson.databind.JsonNode;

/**
 * What is known of a class, to be carried to another computer.
 *
 * @param title of the class
 * @param keepMonths how long its takes are kept, 0 for ever; null: as the host does it
 * @param members who is in it; names differ
 * @param takes in any order; ids differ
 */
@JsonPropertyOrder({"format", "version"})
@JsonInclude(JsonInclude.Include.NON_NULL)
public record SeasonFile(
    String format,
    int version,
    String title,
    @Nullable Integer keepMonths,
    List<Member> members,
    List<KeptTake> takes) {
  /** What {@code format} says. */
  public static final String FORMAT = "thinclick.season";

  /** The version this code writes and the newest it reads. */
  public static final int VERSION = 1;

  /** The longest title of a class, characters. */
  public static final int LONGEST_TITLE = 64;

  /** The longest that can be asked for, months. */
  public static final int MOST_MONTHS = 1_200;

  private static final int MOST_MEMBERS = 200;
  private static final int MOST_TAKES = 20_000;

  public SeasonFile {
    Check.length("title", Check.present("title", title), 1, LONGEST_TITLE);
    Check.range("keepMonths", keepMonths, 0, MOST_MONTHS);
    members = Check.list("members", members);
    Check.size("members", members, 0, MOST_MEMBERS);
    Set<String> names = new HashSet<>();
    for (int i = 0; i < members.size(); i++) {
      if (!names.add(members.get(i).name())) {
        throw new BadInput(
            "members[" + i + "].name",
            "expected a name not used before, found \"" + members.get(i).name() + "\" again");
      }
    }
    takes = Check.list("takes", takes);
    Check.size("takes", takes, 0, MOST_TAKES);
    Set<String> ids = new HashSet<>();
    for (int i = 0; i < takes.size(); i++) {
      if (!ids.add(takes.get(i).id())) {
        throw new BadInput(
            "takes[" + i + "].id",
            "expected an id not used before, found \"" + takes.get(i).id() + "\" again");
      }
    }
  }

  /** A season of this version. */
  public static SeasonFile of(
      String title, @Nullable Integer keepMonths, List<Member> members, List<KeptTake> takes) {
    return new SeasonFile(FORMAT, VERSION, title, keepMonths, members, takes);
  }

  /**
   * Who is in a class.
   *
   * @param name the nickname
   * @param chair where they usually sit, from 1; null where nobody has said
   * @param instrument what they usually play, or null
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Member(String name, @Nullable Integer chair, @Nullable String instrument) {
    public Member {
      Check.length("name", Check.present("name", name), 1, 64);
      Check.range("chair", chair, 1, 24);
      if (instrument != null) {
        Check.length("instrument", instrument, 1, 64);
      }
    }
  }

  /**
   * A take of the class.
   *
   * @param id the same on every computer
   * @param begunAt when it was played, ISO 8601 in UTC
   * @param ended how it ended
   * @param take with all its attacks
   * @param review as {@code review --json} prints it; null where it is to be made anew
   */
  public record KeptTake(
      String id, String begunAt, String ended, Take take, @Nullable JsonNode review) {
    public KeptTake {
      Check.length("id", Check.present("id", id), 1, 64);
      instant(Check.present("begunAt", begunAt));
      Check.length("ended", Check.present("ended", ended), 1, 32);
      Check.present("take", take);
      review = review == null || review.isNull() ? null : review;
    }

    /** When it was played. */
    public Instant begun() {
      return instant(begunAt);
    }

    private static Instant instant(String text) {
      try {
        return Instant.parse(text);
      } catch (DateTimeException wrong) {
        throw new BadInput(
            "begunAt", "expected an instant such as 2026-09-01T10:00:00Z, found \"" + text + "\"");
      }
    }
  }
}
