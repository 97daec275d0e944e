package thinclick.server.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import thinclick.protocol.file.Take;
import thinclick.server.engraving.Face;
import thinclick.server.export.DrawingFiles;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Analysis.Fate;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.HardTakes;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

class ReviewPictureTest {
  private static final Analysis TURNED = Scorer.analyse(HardTakes.turnedAround());
  private static final Analysis ENDING = Scorer.analyse(HardTakes.droppedEnding());

  @Test
  void everyMarkAndWordLiesOnTheSheet() {
    for (Analysis analysis : List.of(TURNED, ENDING)) {
      Drawing drawing = draw(analysis);
      for (Drawing.Item item : drawing.items()) {
        if (item instanceof Drawing.Line line) {
          assertInside(drawing, line.x1(), line.y1(), item);
          assertInside(drawing, line.x2(), line.y2(), item);
        } else if (item instanceof Drawing.Words words) {
          assertInside(drawing, words.left(), words.y(), item);
          double right = words.left() + words.face().width(words.text(), words.size());
          assertInside(drawing, right, words.y(), item);
        }
      }
    }
  }

  /**
   * One disc for each attack that answered at home, and one in the key for each of three shapes.
   */
  @Test
  void everyAttackAtHomeIsADot() {
    long home =
        TURNED.players().stream()
            .flatMap(player -> player.written().stream())
            .filter(one -> one.fate() == Fate.PLACED || one.fate() == Fate.OUTSIDE)
            .count();

    assertThat(draw(TURNED).items().stream().filter(Drawing.Disc.class::isInstance))
        .hasSize((int) home + 3);
  }

  @Test
  void anEpisodeSpansItsBarsAndSaysWhatItWas() {
    Drawing drawing = draw(TURNED);
    Drawing.Line bar =
        drawing.items().stream()
            .filter(Drawing.Line.class::isInstance)
            .map(Drawing.Line.class::cast)
            .filter(line -> line.thickness() == 5)
            .findFirst()
            .orElseThrow();
    Drawing.Box first = (Drawing.Box) drawing.items().get(0);
    // Bars 10 to 13 of 24, late: above its line.
    double barWidth = (bar.x2() - bar.x1()) / 4;
    assertThat(first.width()).isEqualTo(900);
    assertThat(bar.tint()).isEqualTo(Tint.LATE);
    assertThat(24 * barWidth).isCloseTo(900 - 72 - 104, within(1e-6));
    assertThat(bar.x1() - 9 * barWidth).isCloseTo(36 + 104, within(1e-6));
    assertThat(words(drawing)).contains("turned around (an eighth late)");
  }

  @Test
  void whatWasDroppedIsCountedUnderItsPlace() {
    // Jonas lost three bars of 0, 3, 4, 7.
    assertThat(words(draw(ENDING)).stream().filter("3"::equals)).hasSizeGreaterThanOrEqualTo(4);
  }

  @Test
  void earlyAndLateDifferInShapeAsWellAsInColour() {
    Easel easel = new Easel();
    easel.attack(10, 0, Tint.EARLY);
    easel.attack(10, 0, Tint.LATE);
    easel.attack(10, 0, Tint.INK);

    assertThat(easel.items().stream().filter(Drawing.Line.class::isInstance))
        .containsExactly(
            new Drawing.Line(3, 0, 10, 0, 1.2, false, Tint.EARLY),
            new Drawing.Line(10, 0, 17, 0, 1.2, false, Tint.LATE));
  }

  @Test
  void theSvgIsXmlWithTheReviewAsItsDescriptionAndAlwaysTheSame() throws Exception {
    byte[] svg = DrawingFiles.svg(draw(TURNED));
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
    Document document = factory.newDocumentBuilder().parse(new ByteArrayInputStream(svg));

    assertThat(document.getDocumentElement().getTagName()).isEqualTo("svg");
    assertThat(document.getElementsByTagName("title").item(0).getTextContent())
        .isEqualTo("Turned around");
    assertThat(document.getElementsByTagName("desc").item(0).getTextContent())
        .contains("Ilse turned around (an eighth late) from bar 10, home at 14.");
    assertThat(DrawingFiles.svg(draw(TURNED))).isEqualTo(svg);
    assertThat(new String(svg, StandardCharsets.UTF_8)).doesNotContain("NaN", "Infinity");
  }

  @Test
  void thePngHasTheSheetsSizeAndColours() throws IOException {
    Drawing drawing = draw(TURNED);
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(DrawingFiles.png(drawing, 1)));

    assertThat(image.getWidth()).isEqualTo(900);
    assertThat(image.getHeight()).isEqualTo((int) Math.ceil(drawing.height()));
    assertThat(image.getRGB(2, 2) & 0xffffff).isEqualTo(Tint.PAPER.rgb());
  }

  @Test
  void aTakeOfNothingIsDrawnAsWell() {
    Take empty = HardTakes.away().withAttacks(List.of());

    assertThat(words(draw(Scorer.analyse(empty)))).anyMatch(words -> words.contains("not known"));
  }

  @Test
  void aLongNameIsCutAndDoesNotRunIntoItsFigures() {
    String cut = Easel.cut("Maximiliane of the second row, third chair", Easel.BODY, 120);

    assertThat(cut).endsWith("…").startsWith("Maxim");
    assertThat(Face.REGULAR.width(cut, Easel.BODY)).isLessThanOrEqualTo(120);
  }

  private static Drawing draw(Analysis analysis) {
    Speaker english = Speaker.english();
    return ReviewPicture.of(analysis, Spoken.of(analysis, english), english);
  }

  private static List<String> words(Drawing drawing) {
    return drawing.items().stream()
        .filter(Drawing.Words.class::isInstance)
        .map(item -> ((Drawing.Words) item).text())
        .toList();
  }

  private static void assertInside(Drawing drawing, double x, double y, Drawing.Item item) {
    assertThat(x).as("%s", item).isBetween(0.0, drawing.width());
    assertThat(y).as("%s", item).isBetween(0.0, drawing.height());
  }
}
