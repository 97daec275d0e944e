package thinclick.server.room;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What of a review each may see: the leader all, a player the ensemble's figures and the own. */
public final class ReviewView {
  private ReviewView() {}

  /** The review with one player's own figures; with nobody's where the name is not in it. */
  public static JsonNode of(JsonNode whole, String player) {
    if (!whole.isObject()) {
      return whole;
    }
    ObjectNode view = (ObjectNode) whole.deepCopy();
    ArrayNode own = view.arrayNode();
    JsonNode players = whole.get("players");
    if (players != null && players.isArray()) {
      for (JsonNode line : players) {
        JsonNode name = line.get("player");
        if (name != null && name.isString() && name.stringValue().equals(player)) {
          own.add(line);
        }
      }
    }
    view.set("players", own);
    JsonNode words = view.get("words");
    if (words != null && words.isArray()) {
      ArrayNode heard = view.arrayNode();
      for (JsonNode sentence : words) {
        JsonNode about = sentence.get("player");
        if (about == null || (about.isString() && about.stringValue().equals(player))) {
          heard.add(sentence);
        }
      }
      view.set("words", heard);
    }
    JsonNode ensemble = view.get("ensemble");
    if (ensemble instanceof ObjectNode figures && figures.has("gains")) {
      figures.putNull("gains"); // by pairs of players, so not the receiver's own
      figures.putNull("gainsInterval");
    }
    return view;
  }
}
