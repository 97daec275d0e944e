package thinclick.server.load;

import java.util.List;

/** Texts that are no first message. */
final class Hostile {
  static final List<String> TEXTS =
      List.of(
          "",
          "{",
          "null",
          "[]",
          "{\"type\":7}",
          "{}",
          "{\"type\":\"join\"",
          "\"join\"",
          "{\"type\":\"attacks\",\"takeId\":\"x\",\"epoch\":1,\"firstSeq\":1,\"attacks\":[{\"micros\":1}]}",
          "[".repeat(2_000),
          "{\"a\":".repeat(500) + "1" + "}".repeat(500),
          "{\"type\":\"join\",\"type\":\"join\"}",
          "\u0000\u0001\u202e");

  private Hostile() {}
}
