package thinclick.server.room;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.json.BadInput;

class NicknameTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "   ",
        "Mi\u0000na", // a control character
        "Mi\u202Ena", // turns the direction of what follows
        "Mi\u200Bna", // zero width
        "Mi\u2060na", // zero width
        "Mi\uFEFFna", // zero width
        "Mi\nna",
        "Mi\u2028na", // a line separator
        "Mi\uE000na", // private use
        "Mi\uD800na", // half a surrogate pair
        "\u3164", // a Hangul filler, blank
        "abcdefghijklmnopqrstuvwxyzabcdefg" // 33
      })
  void invisibleEmptyOrTooLongIsRefused(String written) {
    assertThatThrownBy(() -> Nickname.of(written)).isInstanceOf(BadInput.class);
  }

  @ParameterizedTest
  @CsvSource({
    "Mina, MINA",
    "Mina, ' Mina '",
    "Zo\u00EB, Zoe\u0308", // composed and decomposed
    "Mina, \uFF2D\uFF49\uFF4E\uFF41", // full width
    "Stra\u00DFe, STRASSE",
    "fi, \uFB01" // a ligature
  })
  void namesThatLookTheSameHaveTheSameKey(String one, String other) {
    assertThat(Nickname.of(one).key()).isEqualTo(Nickname.of(other).key());
  }

  @Test
  void nameIsShownComposed() {
    assertThat(Nickname.of("Zoe\u0308").shown()).isEqualTo("Zo\u00EB");
  }
}
