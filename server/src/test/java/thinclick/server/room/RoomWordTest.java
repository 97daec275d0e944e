package thinclick.server.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class RoomWordTest {
  @Test
  void wordIsSyllablesOfAConsonantAndAVowel() {
    long seed = 41;
    Random random = new Random(seed);
    for (int i = 0; i < 10_000; i++) {
      assertThat(RoomWord.pick(random, RoomWord.LOCAL))
          .as("seed %d, word %d", seed, i)
          .matches("([bdfghjklmnprstvz][aeiou]){4}")
          .doesNotContain("puta")
          .doesNotContain("niga");
    }
  }

  @Test
  void howItIsTypedDoesNotMatter() {
    assertThat(RoomWord.normal(" Balu-Midore ")).isEqualTo("balumidore");
  }
}
