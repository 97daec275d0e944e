package thinclick.client.window.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.client.window.session.Rooms;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Paper;
import thinclick.server.picture.Drawing;
import thinclick.server.picture.PlayerSheet;
import thinclick.server.picture.ReviewPicture;
import thinclick.server.picture.SlipPages;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.Comparison;
import thinclick.server.words.DriftWords;
import thinclick.server.words.Quantity;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

/**
 * A figure reads the same in the prose, the tables, the slip, the picture and beside another take.
 */
class OneNumberTest {
  private static final Words WORDS = Words.in(Locale.ENGLISH);
  private static final Speaker SPEAKER = Speaker.english();
  private static final Pattern SPREAD = Pattern.compile("spread (?:of|is) (\\d+) ms");

  /** Two who keep time as badly as the seed says, and drop some. */
  private static Take take(long seed) {
    Random random = new Random(seed);
    List<Stage> stages =
        List.of(new Stage(4, 1, List.of(1, 2, 3, 4), null), new Stage(4, 1, List.of(1), null));
    Take bare = Rooms.take(Meter.FOUR_FOUR, 2, stages);
    List<Attack> attacks = new ArrayList<>();
    for (Part part : bare.parts()) {
      double lean = 30 * random.nextGaussian();
      double spread = 4 + 30 * random.nextDouble();
      double drops = 0.3 * random.nextDouble();
      for (int step : part.attackSteps()) {
        if (random.nextDouble() >= drops) {
          double off = lean + spread * random.nextGaussian();
          attacks.add(
              Rooms.attack(part.player(), Math.round(bare.grid().microsAt(step) + 1_000 * off)));
        }
      }
    }
    return bare.withAttacks(attacks);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void ofAPlayer(long seed) {
    Analysis analysis = Scorer.analyse(take(seed));
    Spoken spoken = Spoken.of(analysis, SPEAKER);
    String page = thinclick.server.words.ReviewPage.of(spoken, SPEAKER);
    PlayerSheet.Table table = new BandTables(WORDS).of(spoken).get(1).table();
    Comparison comparison = Comparison.of(analysis, Scorer.analyse(take(seed + 100)));
    PlayerSheet.Content both = new LikeTakes(WORDS).sheet(comparison);
    List<List<String>> beside = both.section("figures").table().lines();
    List<String> slips =
        SlipPages.of(spoken, SPEAKER, Paper.A4).stream()
            .flatMap(one -> one.marks().stream())
            .flatMap(one -> one instanceof Mark.Text text ? Stream.of(text.text()) : Stream.of())
            .toList();
    for (int i = 0; i < spoken.review().players().size(); i++) {
      PlayerReview player = spoken.review().players().get(i);
      String spread = shown(player.spreadMillis());
      String lean = shown(player.leanMillis());
      List<String> line = table.lines().get(i);
      List<String> row = row(page, player.player());

      Matcher said = SPREAD.matcher(spoken.slip(player.player()).says().get(0));
      assertThat(said.find()).isTrue();
      assertThat(said.group(1)).isEqualTo(spread);
      assertThat(line.get(table.heads().indexOf("Spread"))).isEqualTo(spread + "\u00a0ms");
      assertThat(line.get(table.heads().indexOf("Lean")))
          .isEqualTo(
              lean.equals("0")
                  ? "centred"
                  : lean.replace("\u2212", "")
                      + (lean.startsWith("\u2212") ? "\u00a0ms early" : "\u00a0ms late"));
      assertThat(sum(table, line)).isEqualTo(player.written());
      assertThat(row.get(6)).isEqualTo(lean.replace('\u2212', '-'));
      assertThat(row.get(7)).isEqualTo(spread);
      assertThat(slips).contains(spread + " ms", lean + " ms");
      assertThat(beside)
          .filteredOn(one -> one.get(0).equals("spread: " + player.player() + ", ms"))
          .hasSize(1)
          .allSatisfy(one -> assertThat(one.get(1)).matches(spread + "( .*)?"));
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void ofAStage(long seed) {
    held(Scorer.analyse(take(seed)));
  }

  /** Five of eight are 62.5 %: a half is where two ways of rounding part. */
  @Test
  void ofAStageThatLiesOnAHalf() {
    Take bare = take(1);
    List<Attack> attacks = new ArrayList<>();
    for (Part part : bare.parts()) {
      for (int i = 0; i < part.attackSteps().size(); i++) {
        if (i % 8 < 5) {
          long micros = Math.round(bare.grid().microsAt(part.attackSteps().get(i)));
          attacks.add(Rooms.attack(part.player(), micros + 3_000 * (i % 3)));
        }
      }
    }
    Analysis analysis = Scorer.analyse(bare.withAttacks(attacks));
    assertThat(analysis.review().stages().get(0).hold().get()).isEqualTo(62.5);
    held(analysis);
  }

  private static void held(Analysis analysis) {
    Spoken spoken = Spoken.of(analysis, SPEAKER);
    String page = thinclick.server.words.ReviewPage.of(spoken, SPEAKER);
    PlayerSheet.Table table = new BandTables(WORDS).of(spoken).get(0).table();
    List<String> drawn =
        ReviewPicture.of(analysis, spoken, SPEAKER).items().stream()
            .flatMap(
                one -> one instanceof Drawing.Words text ? Stream.of(text.text()) : Stream.of())
            .toList();
    String prose = String.join(" ", spoken.prose(SPEAKER));
    List<String> bars = List.of("1-4", "5-8");
    for (int i = 0; i < 2; i++) {
      String hold = Quantity.percent(spoken.review().stages().get(i).hold()).shown(Locale.ENGLISH);
      Figure drift = spoken.review().stages().get(i).driftPercent();
      String slope = SPEAKER.say(DriftWords.of(drift));
      List<String> line = table.lines().get(i);
      assertThat(line.get(2)).isEqualTo(hold + "\u00a0%");
      assertThat(line.get(3))
          .isEqualTo(shown(spoken.review().stages().get(i).spreadMillis()) + "\u00a0ms");
      String cell = line.get(4);
      assertThat(cell).isEqualTo(i == 0 ? "held by the click" : slope);
      assertThat(row(page, bars.get(i)).get(4)).isEqualTo(cell.replace('\u2013', '-'));
      assertThat(row(page, bars.get(i)).get(2)).isEqualTo(hold);
      assertThat(drawn).contains(hold + " % held");
      assertThat(prose).contains(hold + " %");
    }
  }

  /** Placed and all that was not, whatever columns there are. */
  private static int sum(PlayerSheet.Table table, List<String> line) {
    int sum = Integer.parseInt(line.get(1).replaceAll(" of .*", ""));
    for (String head : List.of("Early or late", "Off the part", "Dropped")) {
      int column = table.heads().indexOf(head);
      sum += column < 0 ? 0 : Integer.parseInt(line.get(column));
    }
    return sum;
  }

  private static String shown(Figure millis) {
    return Quantity.millis(millis).shown(Locale.ENGLISH);
  }

  private static List<String> row(String page, String begins) {
    return page.lines()
        .filter(line -> line.startsWith(begins + " "))
        .map(line -> Arrays.asList(line.split(" {2,}")))
        .filter(cells -> cells.size() > 4)
        .findFirst()
        .orElseThrow();
  }
}
