package thinclick.client.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whose a key or a note is where several chairs share a computer. */
class SharesTest {
  private final Shares shares = new Shares();

  @Test
  void theOnlyChairHasTheLettersThatWereChosen() {
    assertThat(shares.ofKey('F')).isZero();
    shares.half(KeyHalf.RIGHT);
    assertThat(shares.ofKey('F')).isEqualTo(-1);
    assertThat(shares.ofKey('J')).isZero();
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 4})
  void eachOfSeveralHasLettersOfItsOwn(int chairs) {
    shares.chairs(List.of("", "Ben", "Cem", "Dora").subList(0, chairs));
    String all = "";
    for (int chair = 0; chair < chairs; chair++) {
      for (char letter : shares.letters(chair).toCharArray()) {
        assertThat(shares.ofKey(letter)).isEqualTo(chair);
        assertThat(all).doesNotContain("" + letter);
        all += letter;
      }
    }
    if (chairs > 2) {
      // On QWERTZ the Y lies at the lower left and the Z in the middle, on AZERTY the M far right.
      assertThat(all).doesNotContain("Y", "Z", "M");
      assertThat(shares.ofKey('Z')).isEqualTo(-1);
    }
  }

  @Test
  void aChannelIsThatOfTheChairOfItsNumberAndAPadThatWasShownStays() {
    shares.chairs(List.of("", "Ben", "Cem"));
    assertThat(shares.ofNote("pad", 1)).isEqualTo(1);
    assertThat(shares.ofNote("pad", 9)).as("no such chair").isZero();
    shares.show("pad two", 9, "Cem");
    assertThat(shares.ofNote("pad two", 9)).isEqualTo(2);
    assertThat(shares.ofNote("pad", 9)).isZero();
    shares.chairs(List.of("", "Cem"));
    assertThat(shares.ofNote("pad two", 9)).as("moved up").isEqualTo(1);
    shares.chairs(List.of(""));
    assertThat(shares.ofNote("pad two", 9)).as("any pad, of who is alone").isZero();
    shares.chairs(List.of("", "Ben", "Cem"));
    assertThat(shares.ofNote("pad two", 9)).as("back again").isEqualTo(2);
  }
}
