package thinclick.client.window.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import thinclick.client.window.look.PictureParts.Part;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;
import thinclick.server.picture.Drawing;
import thinclick.server.picture.PlayerPicture;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

/** Case 16: an eighth late from bar 5 on is called turned around, from the right bar. */
class OwnSlipTest {
  private static final List<Integer> THREES =
      IntStream.range(0, 42).map(i -> 3 * i).boxed().toList();

  @Test
  void anEighthLateIsTurnedAroundFromTheRightBarInWordsAndPicture() {
    Analysis analysis = Scorer.analyse(take());
    Speaker speaker = Speaker.english();
    String slip = String.join(" ", Spoken.of(analysis, speaker).slip("Ana").says());
    assertThat(slip).contains("turned around").contains("bar 5");
    Drawing drawing = PlayerPicture.of(analysis, "Ana", speaker);
    List<String> words =
        drawing.items().stream()
            .filter(Drawing.Words.class::isInstance)
            .map(item -> ((Drawing.Words) item).text())
            .toList();
    assertThat(words).contains("turned around (an eighth late)").doesNotContain("Ben", "Cleo");
  }

  @Test
  void theColumnsAreOnePartOfThePictureWithTheNumbersOfTheirTicks() {
    Drawing drawing = PlayerPicture.of(Scorer.analyse(take()), "Ana", Speaker.english());
    List<Part> parts = DrawnParts.of(drawing);

    Part columns = partAt(parts, wordsAt(drawing, "+50"));
    assertThat(partAt(parts, wordsAt(drawing, "Beat"))).isEqualTo(columns);
    assertThat(drawing.items())
        .filteredOn(Drawing.Disc.class::isInstance)
        .hasSizeGreaterThan(20)
        .extracting(item -> ((Drawing.Disc) item).y())
        .allMatch(y -> parts.stream().anyMatch(part -> part.top() < y && y < part.foot()));
    assertThat(partAt(parts, wordsAt(drawing, "Dropped"))).isEqualTo(columns);
    assertThat(columns.foot()).isLessThan(wordsAt(drawing, "Bar"));
  }

  @Test
  void whatIsSaidBelowTheColumnsIsOnePartWithItsKey() {
    Drawing drawing = PlayerPicture.of(Scorer.analyse(take()), "Ana", Speaker.english());
    List<Part> parts = DrawnParts.of(drawing);

    String bars = Speaker.english().say("picture.scale.bars");
    assertThat(partAt(parts, wordsAt(drawing, bars)))
        .isEqualTo(partAt(parts, wordsAt(drawing, Speaker.english().say("picture.scale.own"))))
        .isEqualTo(partAt(parts, wordsAt(drawing, Speaker.english().say("picture.key.placed"))));
  }

  private static double wordsAt(Drawing drawing, String says) {
    return drawing.items().stream()
        .filter(item -> item instanceof Drawing.Words words && words.text().equals(says))
        .mapToDouble(item -> ((Drawing.Words) item).y() - 2)
        .findFirst()
        .orElseThrow();
  }

  private static Part partAt(List<Part> parts, double y) {
    return parts.stream().filter(one -> one.top() < y && y < one.foot()).findFirst().orElseThrow();
  }

  private static Take take() {
    List<Attack> attacks = new ArrayList<>();
    for (String player : List.of("Ana", "Ben", "Cleo")) {
      for (int step : THREES) {
        int bar = step / 8;
        if (player.equals("Ana") && bar == 12) {
          continue; // dropped
        }
        int late = player.equals("Ana") && bar >= 4 && bar < 9 ? 1 : 0;
        long micros = 5_000_000L + (step + late) * 250_000L + (step * 7L % 9 - 4) * 1_000;
        attacks.add(Attack.tap(player, micros));
      }
    }
    attacks.sort(Comparator.comparingLong(Attack::micros));
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        "Threes",
        Meter.FOUR_FOUR,
        120,
        2,
        Swing.STRAIGHT,
        5_000_000,
        50.0,
        List.of(Stage.ofBeats(16, 1, 1, 2, 3, 4)),
        List.of(
            thinclick.protocol.file.Part.of("Ana", 0, THREES),
            thinclick.protocol.file.Part.of("Ben", 0, THREES),
            thinclick.protocol.file.Part.of("Cleo", 0, THREES)),
        attacks,
        null,
        List.of());
  }
}
