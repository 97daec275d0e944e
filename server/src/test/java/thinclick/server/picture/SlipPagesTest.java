package thinclick.server.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;
import thinclick.server.dealing.Dealer;
import thinclick.server.dealing.Dealing;
import thinclick.server.engraving.Box;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Page;
import thinclick.server.engraving.Paper;
import thinclick.server.export.PdfFiles;
import thinclick.server.material.Demo;
import thinclick.server.material.Stock;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

/**
 * A page for each pupil of a band of four and of a class of 24, in both languages: everything on
 * the page, nothing over another word, nobody else's name. The PDF lies in {@code target/slips}.
 */
class SlipPagesTest {
  private static final Path FOLDER = Path.of("target", "slips");

  @ParameterizedTest
  @CsvSource({"4, en", "4, de", "24, en", "24, de"})
  void everyPupilHasAPageThatCanBeHandedOut(int players, String language) throws IOException {
    Speaker speaker = Speaker.of(Locale.forLanguageTag(language));
    Analysis analysis = Scorer.analyse(take(players));
    Spoken spoken = Spoken.of(analysis, speaker);
    List<Page> pages = SlipPages.of(spoken, speaker, Paper.A4);
    write(players + "-" + language, pages);

    assertThat(pages).hasSize(players);
    for (int i = 0; i < players; i++) {
      Page page = pages.get(i);
      List<Mark.Text> words =
          page.marks().stream()
              .filter(Mark.Text.class::isInstance)
              .map(Mark.Text.class::cast)
              .toList();
      String all = String.join(" ", words.stream().map(Mark.Text::text).toList());
      String own = analysis.take().parts().get(i).player();
      assertThat(all).contains(own);
      analysis.take().parts().stream()
          .map(Part::player)
          .filter(name -> !name.equals(own))
          .forEach(name -> assertThat(words).noneMatch(one -> one.text().contains(name)));
      insideAndApart(page, words, own);
    }
  }

  private static void insideAndApart(Page page, List<Mark.Text> words, String of) {
    double width = page.widthMm() / page.spaceMm();
    double height = page.heightMm() / page.spaceMm();
    for (int i = 0; i < words.size(); i++) {
      Box box = words.get(i).box();
      assertThat(box.left()).as(of).isGreaterThan(0);
      assertThat(box.right()).as(of + ": " + words.get(i).text()).isLessThan(width - 10);
      assertThat(box.bottom()).as(of).isLessThan(height);
      for (int k = i + 1; k < words.size(); k++) {
        assertThat(box.overlaps(words.get(k).box()))
            .as("%s: \"%s\" over \"%s\"", of, words.get(i).text(), words.get(k).text())
            .isFalse();
      }
    }
  }

  private static void write(String name, List<Page> pages) throws IOException {
    Files.createDirectories(FOLDER);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PdfFiles.write(pages, "Slips", bytes);
    Files.write(FOLDER.resolve(name + ".pdf"), bytes.toByteArray());
  }

  /** A class that plays as classes do: late, early, lost, absent-minded, and one who does not. */
  private static Take take(int players) {
    List<Stage> stages =
        List.of(
            Stage.ofBeats(4, 1, 1, 2, 3, 4),
            Stage.ofBeats(4, 1, 1, 3),
            Stage.ofBeats(4, 1, 1),
            Stage.ofBeats(4, 2, 1));
    List<String> names = Demo.TUESDAY_CLASS.subList(0, players);
    Dealing dealing = Dealer.deal(Stock.find(Demo.TITLE), names, 7, 112, stages);
    StepGrid grid = new StepGrid(Stock.find(Demo.TITLE).meter(), 2, 112, Swing.STRAIGHT, 5_000_000);
    List<Attack> attacks = new ArrayList<>();
    Random random = new Random(24);
    for (int i = 0; i < players; i++) {
      double lean = new double[] {0, -22, 25, 4, -6}[i % 5];
      double spread = new double[] {9, 14, 11, 32, 18}[(i * 3 + 1) % 5];
      for (int step : dealing.parts().get(i).attackSteps()) {
        boolean lost = i % 6 == 3 && step >= 80 && step < 112;
        boolean gone = i % 7 == 5 && step >= 96 || random.nextDouble() < (i % 4 == 1 ? .12 : .02);
        if (!gone) {
          double millis = lean + spread * random.nextGaussian();
          long micros = Math.round(grid.microsAt(step + (lost ? 1 : 0)) + 1_000 * millis);
          attacks.add(Attack.tap(names.get(i), micros));
        }
      }
    }
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        Demo.TITLE,
        grid.meter(),
        112,
        2,
        Swing.STRAIGHT,
        5_000_000,
        dealing.toleranceMillis(),
        stages,
        dealing.parts(),
        attacks,
        null,
        List.of());
  }
}
