package thinclick.client.window.stand;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import javafx.scene.layout.Region;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.window.look.Faces;
import thinclick.client.window.look.Palette;
import thinclick.client.window.words.Words;
import thinclick.protocol.music.Stage;
import thinclick.server.engraving.Engraver;
import thinclick.server.engraving.Mark;
import thinclick.server.material.PartWriter;
import thinclick.server.material.Stock;
import thinclick.server.material.WrittenPart;

/** A page that is turned is still: what stands above the staff stands where it did before. */
class StillPagesTest {
  private static final Words WORDS = Words.in(Locale.ENGLISH);

  private static final List<Stage> STAGES =
      List.of(
          Stage.ofBeats(12, 1, 1, 2, 3, 4),
          Stage.ofBeats(12, 1, 2, 4),
          Stage.ofBeats(12, 2, 1),
          Stage.ofBeats(12, 1));

  @BeforeAll
  static void toolkit() throws Exception {
    FxToolkit.registerPrimaryStage();
    WaitForAsyncUtils.waitForAsyncFx(10_000, Faces::load);
  }

  /** At the sizes of the music in usual windows, read by one or by four together. */
  @ParameterizedTest
  @CsvSource({
    "Threes over a blues, 927, 440, 4",
    "Threes over a blues, 1272, 470, 4",
    "Threes over a blues, 927, 471, 1",
    "Threes over a blues, 1272, 500, 1",
    "Threes over a blues, 1812, 800, 1",
    "Threes over a blues, 1040, 130, 1",
    "Threes over a blues, 905, 460, 1",
    "Threes over a blues, 905, 472, 1",
    "Threes over a blues, 1258, 472, 1",
    "Even eighths, 927, 440, 4"
  })
  void theClickItsWordsAndTheRulerStandWhereTheyStoodOnThePageBefore(
      String drill, double width, double height, int readers) {
    ScoreSheet sheet = sheet(part(drill), width, height, readers);
    Map<Integer, Set<Long>> clicks = new TreeMap<>();
    Set<Long> words = new TreeSet<>();
    Set<Long> rulers = new TreeSet<>();
    for (int bar = 0; bar < 48; bar++) {
      int now = bar;
      WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.bar(now));
      look(sheet, clicks, words, rulers);
    }
    WaitForAsyncUtils.waitForAsyncFx(10_000, sheet::rest);
    for (int page = 0; page < sheet.leafProperty().get().pages(); page++) {
      WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.leaf(-1));
      look(sheet, clicks, words, rulers);
    }
    assertThat(sheet.leafProperty().get().pages()).isGreaterThan(1);
    assertThat(clicks)
        .hasSize(sheet.shown().size())
        .allSatisfy((place, at) -> assertThat(at).as("place %d", place).hasSize(1));
    assertThat(words).as("the words above the first line").hasSize(1);
    assertThat(rulers).as("from a staff down to its ruler").hasSize(1);
  }

  private static void look(
      ScoreSheet sheet, Map<Integer, Set<Long>> clicks, Set<Long> words, Set<Long> rulers) {
    for (int place = 0; place < sheet.shown().size(); place++) {
      ScoreLine line = sheet.shown().get(place);
      SystemView staff = line.staves().get(0);
      double top = line.root().getLayoutY() + line.head();
      clicks
          .computeIfAbsent(place, any -> new TreeSet<>())
          .add(Math.round(top + staff.system().clickY() * staff.space()));
      rulers.add(Math.round(100 * (staff.system().rulerY() - staff.system().staffY())));
      OptionalLong said = place > 0 ? OptionalLong.empty() : words(staff, top);
      said.ifPresent(words::add);
    }
  }

  /** Where the feet of the words over the click stand. */
  private static OptionalLong words(SystemView staff, double top) {
    return staff.system().marks().stream()
        .filter(mark -> mark instanceof Mark.Text text && text.size() == Engraver.DIRECTION_SIZE)
        .mapToLong(mark -> Math.round(top + ((Mark.Text) mark).y() * staff.space()))
        .findFirst();
  }

  private static WrittenPart part(String title) {
    var drill = Stock.find(title).withStages(STAGES);
    return PartWriter.write(drill, drill.chairs().get(0), 100, "");
  }

  private static ScoreSheet sheet(WrittenPart part, double width, double height, int readers) {
    List<String> names = List.of("Ana", "Ben", "Cleo", "Dara").subList(0, readers);
    return WaitForAsyncUtils.waitForAsyncFx(
        10_000,
        () -> {
          ScoreSheet sheet = new ScoreSheet(List.of(names), new FittedPages(), WORDS);
          sheet.dress(Palette.LIGHT, 1);
          ((Region) sheet.root()).resize(width, height);
          sheet.show(0, part, List.of());
          return sheet;
        });
  }
}
