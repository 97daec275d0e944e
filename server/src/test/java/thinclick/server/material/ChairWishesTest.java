package thinclick.server.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Feel;
import thinclick.protocol.file.FreeBars;
import thinclick.protocol.file.Part;
import thinclick.protocol.json.BadInput;
import thinclick.server.dealing.Dealer;
import thinclick.server.dealing.Dealing;
import thinclick.server.words.Speaker;

/** What is asked of single chairs, and how it is said to who is to do it. */
class ChairWishesTest {
  private static final Drill SECTION = Stock.find(Demo.TITLE);

  @Test
  void aFeelGoesToItsRoleAloneAndIsSaidWithThePart() {
    List<Drill.Chair> chairs = ChairWishes.feel("feel", SECTION.chairs(), "comping 25, ride 0 -10");
    Dealing dealing =
        Dealer.deal(
            SECTION.withChairs(chairs),
            List.of("Mina", "Jonas", "Ilse", "Tariq"),
            1,
            100,
            SECTION.stages());

    assertThat(dealing.parts())
        .extracting(Part::feelMillis)
        .containsExactly(new Feel(0, -10), null, new Feel(25, 25), null);
    assertThat(dealing.sentences(Speaker.of(Locale.ENGLISH)).get(2))
        .endsWith("25 ms behind the others.");
    assertThat(dealing.sentences(Speaker.of(Locale.GERMAN)).get(0))
        .endsWith("auf den Schlägen mit den anderen, offbeat 10 ms vor den anderen.");
  }

  @Test
  void barsCountFromOneAsTheyAreRead() {
    List<Drill.Chair> chairs =
        ChairWishes.free("free", SECTION.chairs(), "comping 5-8 of 8, answer 13\u201316, bass 2");

    assertThat(chairs)
        .extracting(Drill.Chair::free)
        .containsExactly(
            List.of(),
            List.of(new FreeBars(1, 2, null)),
            List.of(new FreeBars(4, 8, 8)),
            List.of(new FreeBars(12, 16, null)));
    assertThat(ChairWishes.free("free", SECTION.chairs(), "4 of 4"))
        .allMatch(chair -> chair.free().equals(List.of(new FreeBars(3, 4, 4))));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "violin 25    | expected a role or a chair of the drill, ride, bass, comping, answer, found",
        "comping late | expected a role and milliseconds",
        "comping 900  | expected -250 to 250, found 900 in \"comping 900\"",
      })
  void aFeelThatCannotBeIsRefusedInOneLine(String typed, String says) {
    assertThatThrownBy(() -> ChairWishes.feel("--feel", SECTION.chairs(), typed))
        .isInstanceOf(BadInput.class)
        .hasMessageStartingWith("--feel: ")
        .hasMessageContaining(says);
  }

  @ParameterizedTest
  @CsvSource({"comping 8-5, expected more than fromBar", "comping soon, expected a role and bars"})
  void barsThatCannotBeAreRefusedInOneLine(String typed, String says) {
    assertThatThrownBy(() -> ChairWishes.free("--free", SECTION.chairs(), typed))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining(says);
  }
}
