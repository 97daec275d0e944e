package thinclick.server.history;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage.HeldClick;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.Reason;
import thinclick.server.words.NextRung;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Courses for programs: what the takes of a course share, then each take with its figures, their
 * intervals, and where one is null its reason. Instants are ISO 8601 in UTC.
 */
public final class HistoryJson {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  private HistoryJson() {}

  /**
   * The courses.
   *
   * @param player whose; null for the band's
   */
  public static ObjectNode of(List<CourseSheet> courses, @Nullable String player) {
    ObjectNode json = MAPPER.createObjectNode();
    json.put("player", player);
    ArrayNode list = json.putArray("courses");
    courses.forEach(course -> list.add(course(course)));
    return json;
  }

  private static ObjectNode course(CourseSheet course) {
    ObjectNode json = MAPPER.valueToTree(course.key());
    NextRung.Move next = course.next();
    if (next != null) {
      json.put("next", camel(next));
    }
    FewestClicks fewest = course.fewest();
    if (fewest != null) {
      json.set("fewest", MAPPER.valueToTree(fewest.told()));
    }
    ArrayNode takes = json.putArray("takes");
    course.takes().forEach(line -> takes.add(take(line, course.player() == null)));
    return json;
  }

  private static ObjectNode take(CourseLine line, boolean ofBand) {
    ObjectNode json = MAPPER.createObjectNode();
    json.put("id", line.id()).put("begunAt", line.begunAt().toString());
    figure(json, "hold", line.hold());
    figure(json, "spreadMillis", line.spread());
    CourseLine.Own own = line.own();
    if (ofBand) {
      json.put("heldThrough", line.heldThrough());
    } else if (own != null) {
      figure(json, "leanMillis", own.leanMillis());
      json.put("written", own.written()).put("placed", own.placed());
      json.put("dropped", own.dropped()).put("added", own.added());
    }
    return json;
  }

  static void figure(ObjectNode json, String name, @Nullable Figure figure) {
    json.put(name, figure == null ? null : figure.value());
    if (figure != null && figure.interval() != null) {
      json.set(name + "Interval", MAPPER.valueToTree(figure.interval()));
    }
    if (figure != null && figure.reason() != null) {
      json.set(name + "Reason", MAPPER.valueToTree(figure.reason()));
    }
  }

  // ---------------------------------------------------------------- read again

  /**
   * Reads what {@link #of} has written.
   *
   * @throws BadInput where it is something else
   */
  public static List<CourseSheet> read(JsonNode json) {
    try {
      JsonNode who = json.path("player");
      String player = who.isString() ? who.stringValue() : null;
      List<CourseSheet> courses = new ArrayList<>();
      for (JsonNode course : json.path("courses")) {
        courses.add(sheet(course, player));
      }
      return courses;
    } catch (JacksonException | IllegalArgumentException | DateTimeParseException wrong) {
      throw new BadInput("courses", "expected a course, found " + wrong.getMessage());
    }
  }

  private static CourseSheet sheet(JsonNode json, @Nullable String player) {
    List<CourseLine> takes = new ArrayList<>();
    for (JsonNode take : json.path("takes")) {
      takes.add(line(take));
    }
    if (takes.isEmpty()) {
      throw new IllegalArgumentException("no takes");
    }
    JsonNode fewest = json.get("fewest");
    JsonNode next = json.get("next");
    return new CourseSheet(
        MAPPER.treeToValue(json, Entry.Key.class),
        player,
        takes,
        next == null ? null : move(next.stringValue()),
        fewest == null ? null : FewestClicks.of(MAPPER.treeToValue(fewest, HeldClick.class)));
  }

  private static CourseLine line(JsonNode json) {
    Figure lean = figure(json, "leanMillis");
    return new CourseLine(
        json.path("id").stringValue(),
        Instant.parse(json.path("begunAt").stringValue()),
        figure(json, "hold"),
        figure(json, "spreadMillis"),
        lean == null
            ? null
            : new CourseLine.Own(
                lean,
                json.path("written").intValue(),
                json.path("placed").intValue(),
                json.path("dropped").intValue(),
                json.path("added").intValue()),
        json.path("heldThrough").isInt() ? json.path("heldThrough").intValue() : -1);
  }

  static @Nullable Figure figure(JsonNode json, String name) {
    JsonNode value = json.get(name);
    JsonNode interval = json.get(name + "Interval");
    JsonNode reason = json.get(name + "Reason");
    if (value == null || (value.isNull() && reason == null)) {
      return null;
    }
    return new Figure(
        value.isNull() ? null : (Double) value.doubleValue(),
        interval == null ? null : MAPPER.treeToValue(interval, Interval.class),
        reason == null ? null : MAPPER.treeToValue(reason, Reason.class));
  }

  private static NextRung.Move move(String written) {
    for (NextRung.Move move : NextRung.Move.values()) {
      if (camel(move).equals(written)) {
        return move;
      }
    }
    throw new IllegalArgumentException("the next step \"" + written + "\"");
  }

  private static String camel(NextRung.Move move) {
    StringBuilder name = new StringBuilder();
    for (String word : move.name().toLowerCase(Locale.ROOT).split("_", -1)) {
      name.append(
          name.length() == 0
              ? word
              : word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1));
    }
    return name.toString();
  }
}
