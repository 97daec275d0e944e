package thinclick.server.store;

import java.util.List;
import thinclick.protocol.json.StrictJson;
import tools.jackson.databind.json.JsonMapper;

/** A list of names out of one column. */
final class Names {
  private static final JsonMapper JSON = StrictJson.mapper(true, 1L << 20);

  private Names() {}

  static List<String> fromJson(String json) {
    return List.of(JSON.readValue(json, String[].class));
  }
}
