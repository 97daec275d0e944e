package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class OwnReviewTest {
  private static final JsonNode WHOLE =
      JsonMapper.builder()
          .build()
          .readTree(
              """
              {"players": [{"player": "Ana", "written": 8}, {"player": "Ben", "written": 9}],
               "stages": [], "ensemble": {"hold": 90.0, "gains": [[null, 0.3], [0.1, null]],
                            "gainsInterval": [[null, [0.1, 0.5]], [[0, 0.2], null]],
                            "pairs": [{"first": "Ana", "second": "Ben", "leader": "Ben"}]},
               "responses": [{"player": "Ana", "of": "Cleo"}, {"player": "Ben", "of": "Cleo"}],
               "free": [{"player": "Ana", "fromBar": 3}, {"player": "Ben", "fromBar": 5}],
               "words": [{"says": "Held together: 90 %."}, {"says": "Ana dropped 3 of 8.", "player": "Ana"},
                         {"says": "Ben is uneven.", "player": "Ben"}],
               "next": "the same again"}
              """);

  @Test
  void aPlayerSeesTheBandsFiguresAndWordsAndTheirOwn() {
    JsonNode view = OwnReview.of(WHOLE, "Ana");

    assertThat(view.get("players").toString()).isEqualTo("[{\"player\":\"Ana\",\"written\":8}]");
    assertThat(view.get("words").toString())
        .contains("Held together", "Ana dropped")
        .doesNotContain("Ben");
    assertThat(view.at("/ensemble/gains").isNull()).isTrue();
    assertThat(view.at("/ensemble/gainsInterval").isNull()).isTrue();
    assertThat(view.at("/ensemble/pairs").isEmpty()).isTrue();
    assertThat(view.get("responses").toString())
        .isEqualTo("[{\"player\":\"Ana\",\"of\":\"Cleo\"}]");
    assertThat(view.get("free").toString()).isEqualTo("[{\"player\":\"Ana\",\"fromBar\":3}]");
    assertThat(view.at("/ensemble/hold").doubleValue()).isEqualTo(90);
  }

  @Test
  void aListenerSeesNobodysOwn() {
    assertThat(OwnReview.of(WHOLE, "").toString()).doesNotContain("Ana", "Ben");
  }

  @Test
  void theWholeIsLeftAsItIs() {
    OwnReview.of(WHOLE, "Ana");

    assertThat(WHOLE.get("players")).hasSize(2);
    assertThat(WHOLE.get("words")).hasSize(3);
  }

  @Test
  void figuresAreCutByTheSameRule() {
    Review whole = Scorer.review(Ensembles.of(3).take());

    Review own = whole.forPlayer("P2");

    JsonMapper json = JsonMapper.builder().build();
    assertThat(json.<JsonNode>valueToTree(own))
        .isEqualTo(OwnReview.of(json.valueToTree(whole), "P2"));
    assertThat(own.players()).containsExactly(whole.player("P2"));
    assertThat(own.ensemble().pairs()).isEmpty();
  }
}
