package thinclick.server.history;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.server.scoring.Figure;
import thinclick.server.words.TakeFigures;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The newest take before another one of the same drill, tempo and click plan, as far as the two are
 * compared.
 *
 * @param id of the take
 * @param begunAt when it was played
 * @param figures of it
 */
public record LastLike(String id, Instant begunAt, TakeFigures figures) {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  /** For a program: hold and spread of the band, of each stage and of each player. */
  public ObjectNode toJson() {
    ObjectNode json = MAPPER.createObjectNode();
    json.put("id", id).put("begunAt", begunAt.toString());
    put(json, figures.band());
    ArrayNode stages = json.putArray("stages");
    figures.stages().forEach(stage -> put(stages.addObject(), stage));
    ArrayNode players = json.putArray("players");
    figures.players().forEach((name, own) -> put(players.addObject().put("player", name), own));
    return json;
  }

  private static void put(ObjectNode json, TakeFigures.Pair pair) {
    HistoryJson.figure(json, "hold", pair.hold());
    HistoryJson.figure(json, "spreadMillis", pair.spread());
  }

  /**
   * Reads what {@link #toJson} has written.
   *
   * @throws BadInput where it is something else
   */
  public static LastLike read(JsonNode json) {
    try {
      List<TakeFigures.Pair> stages = new ArrayList<>();
      for (JsonNode stage : json.path("stages")) {
        stages.add(pair(stage));
      }
      Map<String, TakeFigures.Pair> players = new LinkedHashMap<>();
      for (JsonNode player : json.path("players")) {
        players.put(player.path("player").stringValue(), pair(player));
      }
      return new LastLike(
          json.path("id").stringValue(),
          Instant.parse(json.path("begunAt").stringValue()),
          new TakeFigures(pair(json), stages, players));
    } catch (JacksonException | IllegalArgumentException | DateTimeParseException wrong) {
      throw new BadInput("last", "expected the figures of a take, found " + wrong.getMessage());
    }
  }

  private static TakeFigures.Pair pair(JsonNode json) {
    return new TakeFigures.Pair(figure(json, "hold"), figure(json, "spreadMillis"));
  }

  private static Figure figure(JsonNode json, String name) {
    @Nullable Figure figure = HistoryJson.figure(json, name);
    if (figure == null) {
      throw new IllegalArgumentException("none under " + name);
    }
    return figure;
  }
}
