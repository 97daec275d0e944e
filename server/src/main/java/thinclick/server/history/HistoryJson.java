package thinclick.server.history;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.words.NextRung;
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
  public static ObjectNode of(List<Course> courses, @Nullable String player) {
    ObjectNode json = MAPPER.createObjectNode();
    json.put("player", player);
    ArrayNode list = json.putArray("courses");
    courses.forEach(course -> list.add(course(course, player)));
    return json;
  }

  private static ObjectNode course(Course course, @Nullable String player) {
    ObjectNode json = MAPPER.valueToTree(course.key());
    if (player == null) {
      json.put("next", camel(course.next()));
    }
    ArrayNode takes = json.putArray("takes");
    course.entries().forEach(entry -> takes.add(take(entry, player)));
    return json;
  }

  private static ObjectNode take(Entry entry, @Nullable String player) {
    ObjectNode json = MAPPER.createObjectNode();
    json.put("id", entry.id()).put("begunAt", entry.begunAt().toString());
    figure(json, "hold", Course.hold(entry, player));
    figure(json, "spreadMillis", Course.spread(entry, player));
    PlayerReview own = player == null ? null : entry.review().player(player);
    if (own == null) {
      json.put("heldThrough", entry.review().ensemble().heldThrough());
    } else {
      figure(json, "leanMillis", own.leanMillis());
      json.put("written", own.written()).put("placed", own.placed());
      json.put("dropped", own.dropped()).put("added", own.added());
    }
    return json;
  }

  private static void figure(ObjectNode json, String name, @Nullable Figure figure) {
    json.put(name, figure == null ? null : figure.value());
    if (figure != null && figure.interval() != null) {
      json.set(name + "Interval", MAPPER.valueToTree(figure.interval()));
    }
    if (figure != null && figure.reason() != null) {
      json.set(name + "Reason", MAPPER.valueToTree(figure.reason()));
    }
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
