package thinclick.client.window.stand;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Drill;
import thinclick.server.material.PartWriter;
import thinclick.server.material.Stock;
import thinclick.server.material.WrittenPart;

/** A part in words: what is said first stays, then a paragraph a bar. */
class SpokenLineTest {
  @Test
  void aBarSaysItsMusicInOneSentenceAndItsClickInAnother() {
    List<String> said = said("Threes over a blues", Locale.ENGLISH);
    assertThat(said.get(0)).isEqualTo("Treble clef, 2 flats, meter 4 4.");
    assertThat(said.get(2))
        .isEqualTo(
            "Bar 2: eighth F 4 on beat 1, held over; step 3 of 3; chord E flat 7; eighth G 4 on the"
                + " and of 1; group of 3 steps; quarter G 4 on beat 2, held over; quarter B flat 4"
                + " on beat 3; group of 3 steps; eighth B flat 4 on beat 4, held over; eighth A"
                + " flat 4 on the and of 4; group of 3 steps. Click: quarter on beat 1; quarter on"
                + " beat 2; quarter on beat 3; quarter on beat 4.");
  }

  @Test
  void everyBarIsSaidOnceAndItsNumberOnce() {
    List<String> said = said("Threes over a blues", Locale.GERMAN);
    assertThat(said.subList(1, said.size()))
        .hasSize(48)
        .allSatisfy(
            bar ->
                assertThat(bar).containsOnlyOnce("Klick: ").doesNotContain("Violinschl\u00fcssel"));
    IntStream.rangeClosed(1, 48)
        .forEach(
            bar ->
                assertThat(said.get(bar))
                    .startsWith("Takt " + bar + ": ")
                    .doesNotContain(": Takt " + bar + ";", "bar "));
  }

  @Test
  void aBarThatIsPlayedFreelyOrWithoutAClickSaysSo() {
    assertThat(said("Trading fours", Locale.ENGLISH).get(5)).startsWith("Bar 5: a free bar. Click");
    assertThat(said("Threes over a blues", Locale.ENGLISH).get(38))
        .endsWith("Click: a silent bar.");
  }

  private static List<String> said(String title, Locale language) {
    Drill drill = Stock.find(title);
    WrittenPart part = PartWriter.write(drill, drill.chairs().get(0), drill.tempo().start(), "");
    return SpokenLine.of(part.in(language)).lines().toList();
  }
}
