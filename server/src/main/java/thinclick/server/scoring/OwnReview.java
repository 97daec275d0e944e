package thinclick.server.scoring;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What of a review each may see: the leader all, a player the ensemble's figures and the own. The
 * one rule of it, on the review as it is written, whatever stands beside the figures.
 */
public final class OwnReview {
  private OwnReview() {}

  /** The review with one player's own figures; with nobody's where the name is not in it. */
  public static JsonNode of(JsonNode whole, String player) {
    if (!whole.isObject()) {
      return whole;
    }
    ObjectNode view = (ObjectNode) whole.deepCopy();
    keepOwn(view, "players", player, false);
    keepOwn(view, "responses", player, false);
    keepOwn(view, "free", player, false);
    keepOwn(view, "words", player, true);
    if (view.get("ensemble") instanceof ObjectNode figures && figures.has("gains")) {
      figures.putNull("gains"); // by pairs of players, so not the receiver's own
      figures.putNull("gainsInterval");
      figures.putArray("pairs");
    }
    return view;
  }

  /** Of the lines in a field, those about the player and, where wanted, about nobody. */
  private static void keepOwn(ObjectNode view, String field, String player, boolean nobodys) {
    JsonNode lines = view.get(field);
    if (lines == null) {
      return;
    }
    ArrayNode kept = view.arrayNode();
    for (JsonNode line : lines) {
      JsonNode about = line.get("player");
      if (about == null ? nobodys : about.isString() && about.stringValue().equals(player)) {
        kept.add(line);
      }
    }
    view.set(field, kept);
  }
}
