package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Two players worked by hand: every figure of the design's review example, within .2 ms and .05
 * points.
 */
class TwoPlayersTest {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  static Take take() throws IOException {
    return FileCodec.readTake(resource("two_players.take.json"));
  }

  private static byte[] resource(String name) throws IOException {
    try (InputStream in = TwoPlayersTest.class.getResourceAsStream(name)) {
      return in.readAllBytes();
    }
  }

  @Test
  void everyFigureWorkedByHandIsFound() throws IOException {
    JsonNode expected = MAPPER.readTree(resource("two_players.review.json"));
    JsonNode found = MAPPER.valueToTree(Scorer.review(take()));
    compare("", expected, found);
  }

  @Test
  void aReviewReadBackFromItsJsonIsTheSame() throws IOException {
    Review review = Scorer.review(take());
    String json = MAPPER.writeValueAsString(review);
    assertThat(MAPPER.readValue(json, Review.class)).isEqualTo(review);
  }

  private static void compare(String where, JsonNode expected, JsonNode found) {
    if (expected.isObject()) {
      expected
          .properties()
          .forEach(
              field -> {
                String path = where + "." + field.getKey();
                assertThat(found.has(field.getKey())).as(path).isTrue();
                compare(path, field.getValue(), found.get(field.getKey()));
              });
    } else if (expected.isArray()) {
      assertThat(found.size()).as(where).isEqualTo(expected.size());
      for (int i = 0; i < expected.size(); i++) {
        compare(where + "[" + i + "]", expected.get(i), found.get(i));
      }
    } else if (expected.isNumber()) {
      double tolerance = where.endsWith("hold") ? 0.05 : where.endsWith("Millis") ? 0.2 : 0.005;
      assertThat(found.isNumber()).as("%s is a number: %s", where, found).isTrue();
      assertThat(found.doubleValue())
          .as(where)
          .isCloseTo(expected.doubleValue(), within(tolerance));
    } else {
      assertThat(found).as(where).isEqualTo(expected);
    }
  }
}
