package thinclick.server.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.server.engraving.Face;
import thinclick.server.export.DrawingFiles;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Analysis.Fate;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.HardTakes;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;
import thinclick.server.words.Tally;

class ReviewPictureTest {
  private static final Analysis TURNED = Scorer.analyse(HardTakes.turnedAround());
  private static final Analysis ENDING = Scorer.analyse(HardTakes.droppedEnding());
  private static final Pattern BEYOND = Pattern.compile("; (\\d+) beyond the scale");
  private static final Set<Fate> HOME = EnumSet.of(Fate.PLACED, Fate.EARLY, Fate.LATE);
  private static final Analysis OUTLIERS = Scorer.analyse(outliers());

  /** Mina plays one note nobody wrote on the and of one; the tolerance is narrow. */
  private static Take outliers() {
    Take take = HardTakes.turnedAround();
    double step = take.grid().stepMicros();
    List<Attack> attacks = new ArrayList<>(take.attacks());
    long bar = Math.round(8 * step);
    attacks.add(Attack.tap("Mina", take.startMicros() + 2 * bar + Math.round(step)));
    attacks.sort(Comparator.comparingLong(Attack::micros));
    return take.withAttacks(attacks).edited().toleranceMillis(5.0).take();
  }

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
            .filter(one -> HOME.contains(one.fate()))
            .count();

    assertThat(draw(TURNED).items().stream().filter(Drawing.Disc.class::isInstance))
        .hasSize((int) home + 1); // one in the key: all were placed
  }

  @Test
  void theKeyAndTheRowsNameOnlyWhatThereIs() {
    assertThat(words(draw(TURNED))).contains("placed").doesNotContain("too early", "too late");
    assertThat(words(draw(Scorer.analyse(minaLate())))).contains("placed", "too early", "too late");
    for (Analysis analysis : List.of(TURNED, ENDING, OUTLIERS, Scorer.analyse(HardTakes.away()))) {
      boolean dropped = analysis.review().players().stream().anyMatch(one -> one.dropped() > 0);
      boolean added = analysis.review().players().stream().anyMatch(one -> one.added() > 0);
      List<String> words = words(draw(analysis));
      assertThat(words.contains("Dropped")).isEqualTo(dropped);
      assertThat(words.contains("Added")).isEqualTo(added);
    }
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

  /** Bars run from left to right over each place, so that dots side by side say when they came. */
  @Test
  void theDotsOfAPlaceStandInTheOrderOfTheirBars() {
    List<Drawing.Disc> dots =
        PlayerPicture.of(TURNED, "Mina", Speaker.english()).items().stream()
            .flatMap(one -> one instanceof Drawing.Disc disc ? Stream.of(disc) : Stream.of())
            .toList();
    List<Drawing.Disc> drawn = dots.subList(0, dots.size() - 1); // the last is the key's
    List<Integer> steps = TURNED.take().parts().get(indexOf(TURNED, "Mina")).attackSteps();
    double column = (PlayerPicture.WIDTH - 52) / 8;

    assertThat(drawn).hasSameSizeAs(steps);
    for (int i = 0; i < steps.size(); i++) {
      int place = steps.get(i) % 8;
      double middle = 52 + (place + 0.5) * column;
      // 24 bars over half of the column, the first at its left.
      double bar = (steps.get(i) / 8) / 23.0 - 0.5;
      assertThat(drawn.get(i).x()).isCloseTo(middle + bar * column / 2, within(1e-6));
    }
    assertThat(words(PlayerPicture.of(TURNED, "Mina", Speaker.english())))
        .contains("Within a column, the dots stand in the order of the bars.");
  }

  /** What is drawn of the bars says which they are: a word, and a number in the middle of each. */
  @Test
  void theBarsOfEpisodesAreNumbered() {
    Drawing drawing = PlayerPicture.of(TURNED, "Ilse", Speaker.english());
    List<Drawing.Words> said =
        drawing.items().stream()
            .flatMap(one -> one instanceof Drawing.Words words ? Stream.of(words) : Stream.of())
            .toList();
    Drawing.Words bar =
        said.stream().filter(one -> one.text().equals("Bar")).findFirst().orElseThrow();
    List<Drawing.Words> numbers = said.stream().filter(one -> one.y() == bar.y()).skip(1).toList();
    double wide = (PlayerPicture.WIDTH - 104) / 24;

    assertThat(numbers)
        .extracting(Drawing.Words::text)
        .containsExactlyElementsOf(
            IntStream.rangeClosed(1, 24).mapToObj(Integer::toString).toList());
    assertThat(numbers.get(9).x()).isCloseTo(104 + 9.5 * wide, within(1e-6));
  }

  @Test
  void whatWasDroppedIsCountedUnderItsPlace() {
    // Jonas lost three bars of 0, 3, 4, 7.
    assertThat(words(draw(ENDING)).stream().filter("3"::equals)).hasSizeGreaterThanOrEqualTo(4);
  }

  /** Whatever became of a written attack, it is in the sum that stands above its columns. */
  @Test
  void theSumAboveTheColumnsIsAllThatIsWritten() {
    for (Analysis analysis : List.of(TURNED, ENDING, OUTLIERS, Scorer.analyse(HardTakes.away()))) {
      List<String> words = words(draw(analysis));
      for (Analysis.PlayerAnalysis player : analysis.players()) {
        PlayerReview review = analysis.review().player(player.player());
        Tally tally = Tally.of(player);
        assertThat(tally.written()).isEqualTo(review.written());
        assertThat(tally.placed()).isEqualTo(review.placed());
        assertThat(tally.dropped()).isEqualTo(review.dropped());
        assertThat(tally.added()).isEqualTo(review.added());
        assertThat(tally.displaced()).isEqualTo(review.displaced());
        assertThat(tally.early() + tally.late() + tally.unjudged())
            .isEqualTo(Tally.outside(review));
        assertThat(String.join(" ", words)).contains(review.written() + " written: ");
      }
    }
    assertThat(words(draw(TURNED))).contains("96 written: 80 placed, 16 off the part");
  }

  /** A note nobody wrote: a 1 under the place that it was nearest to, beside the word for it. */
  @Test
  void whatWasAddedIsDrawnUnderItsPlace() {
    Drawing drawing = draw(OUTLIERS);
    List<Drawing.Words> said =
        drawing.items().stream()
            .flatMap(one -> one instanceof Drawing.Words words ? Stream.of(words) : Stream.of())
            .toList();
    Drawing.Words added =
        said.stream().filter(one -> one.text().equals("Added")).findFirst().orElseThrow();
    List<Drawing.Words> row = said.stream().filter(one -> one.y() == added.y()).toList();
    double place = 36 + 52 + (400 - 52) / 8.0 * 1.5;

    assertThat(String.join(" ", words(drawing))).contains("; 1 added");
    assertThat(row).extracting(Drawing.Words::text).containsExactly("Added", "1");
    assertThat(row.get(1).x()).isCloseTo(place, within(1e-6));
  }

  /** An attack beyond the scale lies on its edge and is counted as beyond. */
  @Test
  void whatLiesBeyondTheScaleIsSaid() {
    DotScale narrow = new DotScale(10, 4);
    assertThat(narrow.clamped(-90)).isEqualTo(-40);
    assertThat(narrow.beyond(-41)).isTrue();
    assertThat(DotScale.of(List.of(OUTLIERS)).tolerances()).isBetween(2, 4);
    String words = String.join(" ", words(draw(OUTLIERS)));
    long beyond =
        OUTLIERS.players().stream()
            .flatMap(player -> player.played().stream())
            .filter(one -> one.asynchronyMillis() != null && one.displacement() == 0)
            .filter(one -> DotScale.of(List.of(OUTLIERS)).beyond(one.asynchronyMillis()))
            .count();
    assertThat(beyond).isPositive();
    long said =
        BEYOND.matcher(words).results().mapToLong(one -> Long.parseLong(one.group(1))).sum();
    assertThat(said).isEqualTo(beyond);
  }

  /** Stopped inside a bar: what was dropped before the stop has its caret, the rest its reason. */
  @Test
  void theBarOfAStopIsShownAsWellAsTheBarsBeforeIt() {
    Take whole = HardTakes.turnedAround();
    List<Attack> others =
        whole.attacks().stream().filter(one -> !one.player().equals("Mina")).toList();
    long bar = Math.round(4 * whole.grid().beatMicros());
    Take stopped =
        whole
            .withAttacks(others)
            .edited()
            .endMicros(whole.startMicros() + 4 * bar + bar / 3)
            .take();
    Analysis analysis = Scorer.analyse(stopped);
    Drawing drawing = PlayerPicture.of(analysis, "Mina", Speaker.english());
    long carets =
        drawing.items().stream()
            .filter(one -> one instanceof Drawing.Line line && line.thickness() == 1.2)
            .count();

    assertThat(analysis.review().player("Mina").placed()).isZero();
    assertThat(words(drawing)).contains("stopped");
    assertThat(carets).as("two strokes for each of five bars and the key").isEqualTo(2 * (5 + 1));
  }

  /** The word of a stop stands inside its field, and the dashes begin after it. */
  @Test
  void theWordOfAStopIsNotStruckThrough() {
    Take whole = HardTakes.turnedAround();
    long bar = Math.round(4 * whole.grid().beatMicros());
    Take stopped = whole.edited().endMicros(whole.startMicros() + 4 * bar + bar / 3).take();
    Drawing drawing = PlayerPicture.of(Scorer.analyse(stopped), "Mina", Speaker.english());
    Drawing.Words word =
        drawing.items().stream()
            .flatMap(one -> one instanceof Drawing.Words words ? Stream.of(words) : Stream.of())
            .filter(one -> one.text().equals("stopped"))
            .findFirst()
            .orElseThrow();
    Drawing.Line dashes =
        drawing.items().stream()
            .flatMap(one -> one instanceof Drawing.Line line ? Stream.of(line) : Stream.of())
            .filter(Drawing.Line::dashed)
            .findFirst()
            .orElseThrow();
    double end = word.left() + word.face().width(word.text(), word.size());

    assertThat(dashes.x1()).isGreaterThan(end);
    assertThat(dashes.x2()).isGreaterThan(dashes.x1());
    assertThat(word.y() - 0.75 * word.size())
        .as("its letters in the field")
        .isGreaterThan(dashes.y1() - 8);
  }

  /**
   * A lean that the chair may owe to itself is not charged: the strip goes with it, so that its two
   * sides are what is early and late, and the key says so where the strip has moved.
   */
  @Test
  void earlyAndLateAreTheSidesOfTheStripWhereverALeanPutsIt() {
    String sentence = Speaker.english().say("picture.scale.lean");
    Analysis analysis = Scorer.analyse(minaLate());
    Analysis.PlayerAnalysis mina = analysis.players().get(indexOf(analysis, "Mina"));
    Drawing drawing = PlayerPicture.of(analysis, "Mina", Speaker.english());
    Drawing.Box strip =
        drawing.items().stream()
            .flatMap(one -> one instanceof Drawing.Box box ? Stream.of(box) : Stream.of())
            .filter(box -> box.tint() == Tint.BAND)
            .findFirst()
            .orElseThrow();
    List<Drawing.Disc> dots =
        drawing.items().stream()
            .flatMap(one -> one instanceof Drawing.Disc disc ? Stream.of(disc) : Stream.of())
            .toList();
    List<Drawing.Disc> drawn = dots.subList(0, dots.size() - 3); // the last three are the key's

    assertThat(mina.notChargedMillis()).isGreaterThan(20);
    assertThat(drawn).extracting(Drawing.Disc::tint).contains(Tint.EARLY, Tint.LATE, Tint.INK);
    for (Drawing.Disc dot : drawn) {
      Tint side =
          dot.y() > strip.y() + strip.height() + 1e-6
              ? Tint.EARLY
              : dot.y() < strip.y() - 1e-6 ? Tint.LATE : Tint.INK;
      assertThat(dot.tint()).isEqualTo(side);
    }
    long early = drawn.stream().filter(dot -> dot.tint() == Tint.EARLY).count();
    long late = drawn.stream().filter(dot -> dot.tint() == Tint.LATE).count();
    assertThat(Tally.of(mina).early()).isEqualTo((int) early);
    assertThat(Tally.of(mina).late()).isEqualTo((int) late);
    assertThat(words(drawing))
        .filteredOn(words -> words.matches("Your steady lean, \\d+ ms late, is allowed for: .*"))
        .hasSize(1);
    assertThat(words(draw(analysis))).contains(sentence);
    assertThat(words(PlayerPicture.of(analysis, "Jonas", Speaker.english())))
        .noneMatch(words -> words.startsWith("Your steady lean"));
    assertThat(words(draw(TURNED))).doesNotContain(sentence);
  }

  /** Who played nothing has no columns and no key to them, but a sentence. */
  @Test
  void whereNothingWasPlayedASentenceStandsForThePlot() {
    Take whole = HardTakes.turnedAround();
    Take without =
        whole.withAttacks(
            whole.attacks().stream().filter(one -> !one.player().equals("Mina")).toList());
    Drawing drawing = PlayerPicture.of(Scorer.analyse(without), "Mina", Speaker.english());

    assertThat(words(drawing)).contains("Nothing was played.", "dropped").doesNotContain("Added");
    assertThat(words(drawing)).noneMatch(words -> words.startsWith("Late is upward"));
    assertThat(drawing.items()).noneMatch(one -> one instanceof Drawing.Disc);
  }

  /** Mina is late by less than her chair is known to; the tolerance is narrow. */
  private static Take minaLate() {
    Take whole = HardTakes.turnedAround();
    List<Attack> attacks =
        whole.attacks().stream()
            .map(
                one ->
                    one.player().equals("Mina") ? Attack.tap("Mina", one.micros() + 70_000) : one)
            .sorted(Comparator.comparingLong(Attack::micros))
            .toList();
    List<Part> parts =
        whole.parts().stream()
            .map(
                part ->
                    part.player().equals("Mina")
                        ? part.edited().uncertaintyMillis(60).part()
                        : part)
            .toList();
    return whole.withParts(parts).withAttacks(attacks).edited().toleranceMillis(5.0).take();
  }

  private static int indexOf(Analysis analysis, String player) {
    return analysis.players().stream()
        .map(Analysis.PlayerAnalysis::player)
        .toList()
        .indexOf(player);
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
        .contains(
            "Ilse was turned around (an eighth late) from bar 10 and was home again in bar 14.");
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
