package thinclick.server.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import thinclick.server.engraving.Cut;
import thinclick.server.engraving.Golden;
import thinclick.server.engraving.Ink;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Page;
import thinclick.server.engraving.Pages;
import thinclick.server.engraving.Paper;
import thinclick.server.engraving.Place;
import thinclick.server.engraving.Samples;

class SvgAndPdfTest {
  @Test
  void svgIsWrittenAsBefore() throws Exception {
    List<Page> pages = Pages.part(Samples.andsAlone(), Paper.A4, Cut.BEATS);
    Golden.check("ands-alone.svg", new String(svg(pages), StandardCharsets.UTF_8));
  }

  @Test
  void everyMarkOfAPageStandsInTheSvgAndEveryUseHasItsOutline() throws Exception {
    List<Page> pages = Pages.part(Samples.longThrees("trombone", "Eb"), Paper.LETTER, Cut.BEATS);
    Element root =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(svg(pages)))
            .getDocumentElement();
    assertThat(root.getAttribute("width")).isEqualTo("215.9mm");
    NodeList uses = root.getElementsByTagName("use");
    long signs = pages.get(0).marks().stream().filter(Mark.Sign.class::isInstance).count();
    long letters =
        pages.get(0).marks().stream()
            .filter(Mark.Text.class::isInstance)
            .mapToLong(mark -> ((Mark.Text) mark).text().codePoints().count())
            .sum();
    assertThat(uses.getLength()).isEqualTo((int) (signs + letters));
    NodeList paths =
        ((Element) root.getElementsByTagName("defs").item(0)).getElementsByTagName("path");
    List<String> outlines =
        java.util.stream.IntStream.range(0, paths.getLength())
            .mapToObj(i -> "#" + ((Element) paths.item(i)).getAttribute("id"))
            .toList();
    assertThat(outlines).doesNotHaveDuplicates();
    for (int i = 0; i < uses.getLength(); i++) {
      assertThat(outlines).contains(((Element) uses.item(i)).getAttribute("href"));
    }
  }

  @ParameterizedTest
  @EnumSource(Paper.class)
  void pdfHasThePapersSizeAndTextThatCanBeSearched(Paper paper) throws Exception {
    List<Page> pages = Pages.part(Samples.longThrees("tenor saxophone", "Bb"), paper, Cut.BEATS);
    try (PDDocument read = Loader.loadPDF(pdf(pages))) {
      assertThat(read.getNumberOfPages()).isEqualTo(pages.size());
      assertThat(read.getPage(0).getMediaBox().getWidth() / 72 * 25.4)
          .isCloseTo(paper.width(), within(.01));
      assertThat(read.getPage(0).getMediaBox().getHeight() / 72 * 25.4)
          .isCloseTo(paper.height(), within(.01));
      assertThat(new PDFTextStripper().getText(read))
          .contains("Long threes", "Tenor saxophone in", "132", "swing 2 : 1", "meets the one");
      assertThat(read.getDocumentInformation().getTitle()).isEqualTo("Long threes");
    }
  }

  @Test
  void letterThatTheFaceDoesNotHaveIsShownAsAQuestionMark() throws Exception {
    Mark text =
        new Mark.Text(
            Place.NOWHERE,
            Ink.FULL,
            "Zo\u00eb \u4e2d",
            thinclick.server.engraving.Face.REGULAR,
            2,
            10,
            10);
    Page page = new Page(210, 297, 1.75, "a page", List.of(text));
    try (PDDocument read = Loader.loadPDF(pdf(List.of(page)))) {
      assertThat(new PDFTextStripper().getText(read).strip()).isEqualTo("Zo\u00eb ?");
    }
    assertThat(new String(svg(List.of(page)), StandardCharsets.UTF_8)).contains("Zo\u00eb \u4e2d");
  }

  /** Who has a page read out hears it in its own language. */
  @Test
  void theDocumentSaysWhichLanguageItIsIn() throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PdfFiles.write(List.of(), "Dreier", Locale.GERMAN, out);
    try (PDDocument document = Loader.loadPDF(out.toByteArray())) {
      assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("de");
    }
  }

  private static byte[] svg(List<Page> pages) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    SvgFiles.write(pages, "Long threes", Locale.ENGLISH, out);
    return out.toByteArray();
  }

  private static byte[] pdf(List<Page> pages) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PdfFiles.write(pages, "Long threes", out);
    return out.toByteArray();
  }
}
