package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The search for English in a German window finds it, blanks filled or not. */
class EnglishLeftTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "Lectern",
        "3 of 4 placed",
        "Held together: 91 % on two and four.",
        "expected whole numbers, found \"x\"",
        "Clap it once without the click."
      })
  void findsEnglish(String shown) {
    assertThat(EnglishLeft.isEnglish(shown)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Pult",
        "3 von 4 sitzen",
        "Ana",
        "Short threes",
        "Tempo",
        "12",
        "Ride, Bass",
        "Spielen, was da steht."
      })
  void leavesTheRest(String shown) {
    assertThat(EnglishLeft.isEnglish(shown)).isFalse();
  }
}
