package thinclick.server.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.server.engraving.Face;
import thinclick.server.engraving.Paper;
import thinclick.server.export.DrawingPdf;
import thinclick.server.picture.PlayerSheet.Content;
import thinclick.server.picture.PlayerSheet.Section;
import thinclick.server.picture.PlayerSheet.Table;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.HardTakes;
import thinclick.server.words.Speaker;

/** A review on paper: what belongs together stays on one page, and nothing lies in the margin. */
class PlayerSheetTest {
  private static final double MARGIN = 72;

  private static Content content(int stages, int players) {
    Drawing attacks =
        PlayerPicture.of(Scorer.analyse(HardTakes.turnedAround()), "Ilse", Speaker.english());
    return new Content(
        "Turned around",
        "Ilse: 4/4",
        List.of(
            Section.words("slip", null, lines("A sentence of what was played", 4)),
            Section.words("next-steps", "What next", List.of("Count aloud.")),
            Section.picture("attacks", null, attacks),
            Section.words("prose", "The band", lines("A sentence of the band", 5)),
            Section.table("stages", "Stages", table(stages)),
            Section.table("players", "Players", table(players)),
            Section.picture("course", "The last takes", attacks)));
  }

  private static List<String> lines(String says, int count) {
    return IntStream.range(0, count).mapToObj(i -> says + ", number " + i + ".").toList();
  }

  private static Table table(int lines) {
    return new Table(
        List.of("Who", "Placed"),
        IntStream.range(0, lines).mapToObj(i -> List.of("Line " + i, i + " of 96")).toList(),
        Set.of(0));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 4, 8, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 24, 40, 60})
  void onPagesOfPaperNothingIsCutAndNoHeadingStandsAlone(int lines) {
    Content content = content(3, lines);
    for (Paper paper : Paper.values()) {
      nothingIsCut(content, paper);
    }
  }

  private static void nothingIsCut(Content content, Paper paper) {
    List<Drawing> pages = PlayerSheet.pages(content, paper);
    for (Drawing page : pages) {
      assertThat(page.height() / page.width())
          .isEqualTo(paper.height() / paper.width(), within(1e-9));
      for (Drawing.Words words : words(page)) {
        double right = words.left() + words.face().width(words.text(), words.size());
        assertThat(words.left()).as(words.text()).isGreaterThanOrEqualTo(MARGIN - 1e-6);
        assertThat(right).as(words.text()).isLessThanOrEqualTo(page.width() - MARGIN + 1e-6);
        assertThat(words.y()).as(words.text()).isBetween(MARGIN, page.height() - MARGIN);
      }
      List<Drawing.Words> words = words(page);
      Drawing.Words last = words.get(words.size() - 1);
      assertThat(last.face()).as("at the foot: " + last.text()).isNotEqualTo(Face.SEMIBOLD);
      assertThat(last.text()).as("the heads of a table").isNotEqualTo("Placed");
    }
    // All of it, in one order, and as on the one sheet that is no page.
    List<String> said = new ArrayList<>();
    pages.forEach(page -> words(page).forEach(words -> said.add(words.text())));
    assertThat(said)
        .isEqualTo(words(PlayerSheet.of(content)).stream().map(Drawing.Words::text).toList());
  }

  @ParameterizedTest
  @EnumSource
  void thePdfHasThePagesAndTheirWords(Paper paper) throws Exception {
    List<Drawing> pages = PlayerSheet.pages(content(3, 40), paper);
    byte[] pdf = DrawingPdf.pdf(pages, paper, Locale.ENGLISH);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDRectangle wanted = paper == Paper.A4 ? PDRectangle.A4 : PDRectangle.LETTER;
      PDRectangle found = document.getPage(0).getMediaBox();
      assertThat(document.getNumberOfPages()).isEqualTo(pages.size());
      assertThat(found.getWidth()).isEqualTo(wanted.getWidth(), within(.01f));
      assertThat(found.getHeight()).isEqualTo(wanted.getHeight(), within(.01f));
      assertThat(new PDFTextStripper().getText(document))
          .contains("What next", "The band", "Line 39", "The last takes");
    }
  }

  private static List<Drawing.Words> words(Drawing drawing) {
    return drawing.items().stream()
        .flatMap(item -> item instanceof Drawing.Words words ? Stream.of(words) : Stream.of())
        .toList();
  }
}
