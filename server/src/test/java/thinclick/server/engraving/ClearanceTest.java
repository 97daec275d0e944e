package thinclick.server.engraving;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Group;
import thinclick.server.material.PartWriter;
import thinclick.server.material.Stock;
import thinclick.server.material.WrittenPart;

/** How far apart a copyist keeps what stands side by side, in staff spaces, on seeded parts. */
class ClearanceTest {
  private static final double HAIR = 1e-9;

  @Test
  void barLineStandsAboutAHeadAwayFromTheHeadsAndRestsBesideIt() {
    for (StaffSystem system : systems(7, 80)) {
      for (Mark mark : system.marks()) {
        Place place = mark.place();
        if (!covers(mark) || place.bar() < 0) {
          continue;
        }
        int bar = place.bar() - system.firstBar();
        double before = system.barLines().get(bar) + Measure.THIN_BAR / 2;
        double after = system.barLines().get(bar + 1) - Measure.THIN_BAR / 2;
        boolean downbeat = place.step() == system.firstStep() + bar * stepsPerBar(system);
        if (downbeat && bar > 0) {
          holds(mark, mark.box().left() - before, belongsToHead(mark) ? 0.6 : 0.8);
        }
        holds(mark, after - mark.box().right(), belongsToHead(mark) ? 0.6 : 1);
      }
    }
  }

  private static void holds(Mark mark, double found, double least) {
    if (found < least - HAIR) {
      throw new AssertionError("expected " + least + " spaces, found " + found + " at " + mark);
    }
  }

  /** Heads, rests, dots, accidentals, flags, ledger lines, of the part and of its click. */
  private static boolean covers(Mark mark) {
    return ledger(mark)
        || mark instanceof Mark.Sign sign
            && sign.place().step() >= 0
            && (named(sign, "NOTEHEAD") || named(sign, "REST_") || belongsToHead(sign))
            && !wholeBar(sign);
  }

  private static boolean wholeBar(Mark.Sign sign) {
    return sign.glyph() == Glyph.REST_WHOLE;
  }

  private static boolean belongsToHead(Mark mark) {
    return ledger(mark) || mark instanceof Mark.Sign sign && named(sign, "ACCIDENTAL");
  }

  private static boolean ledger(Mark mark) {
    return mark instanceof Mark.Line line
        && line.thickness() == Measure.LEDGER_LINE
        && line.y1() == line.y2()
        && line.place().step() >= 0
        && Math.abs(line.x2() - line.x1()) < 5
        && line.ink() == Ink.FULL;
  }

  private static boolean named(Mark.Sign sign, String start) {
    return sign.glyph().name().startsWith(start) && sign.glyph() != Glyph.REPEAT_DOT;
  }

  private static int stepsPerBar(StaffSystem system) {
    return system.steps() / system.bars();
  }

  @Test
  void barLinesAreWhereTheSystemSaysTheyAre() {
    for (StaffSystem system : systems(8, 40)) {
      List<Double> drawn =
          lines(system, line -> line.x1() == line.x2() && throughStaff(system, line)).stream()
              .map(Mark.Line::x1)
              .filter(x -> x > system.firstX())
              .sorted()
              .toList();
      for (double inner : system.barLines().subList(1, system.bars())) {
        assertThat(drawn).anyMatch(x -> Math.abs(x - inner) < HAIR);
      }
      double end = system.barLines().get(system.bars());
      assertThat(drawn).anyMatch(x -> Math.abs(x + Measure.THICK_BAR / 2 - end) < HAIR || x == end);
      assertThat(system.barLines()).isSortedAccordingTo(Comparator.naturalOrder());
    }
  }

  private static boolean throughStaff(StaffSystem system, Mark.Line line) {
    return line.ink() == Ink.FULL
        && line.place().bar() >= 0
        && Math.abs((line.y1() + line.y2()) / 2 - system.staffY()) < HAIR
        && line.thickness() >= Measure.THIN_BAR;
  }

  @Test
  void accidentalKeepsOffTheLedgerLinesOfItsHead() {
    int seen = 0;
    for (StaffSystem system : systems(9, 120)) {
      List<Mark> ledgers = system.marks().stream().filter(ClearanceTest::ledger).toList();
      for (Mark mark : system.marks()) {
        if (mark instanceof Mark.Sign sign && named(sign, "ACCIDENTAL")) {
          for (Mark ledger : ledgers) {
            if (ledger.place().step() == sign.place().step()) {
              seen++;
              assertThat(ledger.box().left() - sign.box().right()).isGreaterThanOrEqualTo(0.1);
            }
          }
        }
      }
    }
    assertThat(seen).isPositive();
  }

  @Test
  void wordsOverABracketAndItsEndsKeepClear() {
    int words = 0;
    for (StaffSystem system : systems(10, 60)) {
      List<Mark.Line> brackets =
          lines(
              system,
              line ->
                  line.ink() == Ink.RULE && !line.dotted() && line.y1() < system.staffY() - 2.5);
      for (Mark.Line bracket : brackets) {
        assertThat(bracket.thickness()).isGreaterThanOrEqualTo(Measure.STAFF_LINE);
        assertThat(bracket.box().right())
            .isLessThanOrEqualTo(system.barLines().get(system.bars()) + Measure.THIN_BAR / 2);
        for (Mark mark : system.marks()) {
          if (mark instanceof Mark.Text text
              && text.place().step() >= 0
              && text.size() == BearingMarks.LABEL_SIZE
              && text.y() < bracket.box().top()
              && bracket.box().top() - text.y() < 2) {
            words++;
            holds(text, bracket.box().top() - text.box().bottom(), 0.4);
          }
        }
      }
    }
    assertThat(words).isPositive();
  }

  @Test
  void turnThatEndsWithABarEndsBeforeItsLine() {
    WrittenPart part = Samples.longThrees("tenor saxophone", "Bb");
    Group four = part.groupings().get(8);
    assertThat(four.fromStep() % 8).as("bar 4 begins a turn").isZero();
    StaffSystem system = first(Reading.once(part, 4, Cut.BEATS));
    double line = system.barLines().get(3);
    assertThat(lines(system, ClearanceTest::hook).stream().map(Mark.Line::x1))
        .anyMatch(x -> x < line && x > line - 0.6)
        .noneMatch(x -> x > line - 0.2 && x < line + 0.8);
  }

  /** As far before the lines that end a system as inside it, and not where the next bar's would. */
  @Test
  void turnThatEndsWithASystemEndsBeforeTheLineThatEndsIt() {
    WrittenPart part = Samples.longThrees("tenor saxophone", "Bb");
    assertThat(part.groupings().get(7).toStep()).as("bar 3 ends a turn").isEqualTo(24);
    Reading reading = Reading.wholeTake(part, 3, Cut.BEATS);
    for (StaffSystem system : Engraver.systems(reading.part(), reading.plans(), 104)) {
      if (system.firstBar() == 0) {
        double line = system.barLines().get(3) - Measure.THIN_BAR / 2;
        assertThat(lines(system, ClearanceTest::hook).stream().map(Mark.Line::x1))
            .anyMatch(x -> x < line - 0.2 && x > line - 0.6);
      }
    }
  }

  private static boolean hook(Mark.Line line) {
    return line.ink() == Ink.RULE && line.x1() == line.x2() && !line.dotted();
  }

  @Test
  void meterOfASingleLineStandsAboveAndBelowIt() {
    StaffSystem system = first(Reading.once(Samples.andsAlone(), 4, Cut.BEATS));
    List<Box> figures =
        signs(system, sign -> named(sign, "TIME_SIG")).stream().map(Mark::box).toList();
    assertThat(figures).hasSize(2);
    assertThat(system.staffY() - figures.get(0).bottom()).isBetween(0.15, 0.25);
    assertThat(figures.get(1).top() - system.staffY()).isBetween(0.15, 0.25);
  }

  @Test
  void firstClickAndTheWordBeforeItKeepOffTheClicksLines() {
    for (String drill : List.of("Ands alone", "Hocket in sixteenths", "Sparse comp")) {
      Reading reading = Reading.wholeTake(written(drill), 4, Cut.BEATS);
      for (StaffSystem system : Engraver.systems(reading.part(), reading.plans(), 104)) {
        double word =
            system.marks().stream()
                .filter(mark -> mark instanceof Mark.Text text && text.text().equals("click"))
                .mapToDouble(mark -> mark.box().right())
                .findFirst()
                .orElseThrow();
        double line =
            lines(system, one -> one.y1() == system.clickY() && one.y2() == system.clickY())
                .get(0)
                .x1();
        assertThat(line - word).as(drill).isGreaterThan(0.7);
        double lines =
            system.marks().stream()
                .filter(mark -> onClick(system, mark) && mark.box().right() < system.firstX())
                .filter(mark -> mark.box().bottom() - mark.box().top() > 0.2)
                .filter(mark -> mark.place().bar() >= 0)
                .filter(mark -> !clicks(mark))
                .mapToDouble(mark -> mark.box().right())
                .max()
                .orElse(0);
        double first =
            system.marks().stream()
                .filter(ClearanceTest::clicks)
                .mapToDouble(mark -> mark.box().left())
                .min()
                .orElseThrow();
        assertThat(first - lines).as(drill).isGreaterThanOrEqualTo(1);
      }
    }
  }

  private static boolean onClick(StaffSystem system, Mark mark) {
    double middle = (mark.box().top() + mark.box().bottom()) / 2;
    return Math.abs(middle - system.clickY()) < 0.6;
  }

  private static boolean clicks(Mark mark) {
    return mark.place().spoken().startsWith("click, ");
  }

  @Test
  void noteHeldIntoASystemIsRemindedOfItsAccidentalInBrackets() {
    List<StaffSystem> systems = heldOver("Ab4");
    StaffSystem next = systems.get(1);
    List<Mark.Sign> reminder =
        signs(next, sign -> named(sign, "ACCIDENTAL")).stream()
            .sorted(Comparator.comparing(sign -> sign.box().left()))
            .toList();
    assertThat(reminder.stream().map(Mark.Sign::glyph))
        .containsExactly(
            Glyph.ACCIDENTAL_PARENS_LEFT, Glyph.ACCIDENTAL_FLAT, Glyph.ACCIDENTAL_PARENS_RIGHT);
    Box head = signs(next, sign -> named(sign, "NOTEHEAD")).get(0).box();
    assertThat(head.left() - reminder.get(2).box().right()).isCloseTo(0.2, within(1e-6));
    assertThat(ties(systems.get(0)).get(0).right())
        .as("the other half")
        .isCloseTo(systems.get(0).barLines().get(1), within(0.6));
    assertThat(signs(systems.get(0), sign -> named(sign, "ACCIDENTAL")))
        .extracting(Mark.Sign::glyph)
        .containsExactly(Glyph.ACCIDENTAL_FLAT);
  }

  /** A note held from bar 1 into bar 2 against the key of C; a bar in each system. */
  private static List<StaffSystem> heldOver(String note) {
    StaffPart part = Samples.staff(0, "6 " + note + " 4", "12 G4 1");
    List<SystemPlan> plans =
        IntStream.range(0, 2)
            .mapToObj(bar -> new SystemPlan(bar, 1, false, 1, "", bar == 1))
            .toList();
    return Engraver.systems(part, plans, 60);
  }

  /** From head to head, as a copyist ties (common practice, from memory); stems up and down. */
  @ParameterizedTest
  @ValueSource(strings = {"Ab4", "F#4", "Eb5", "C#5", "Bb5", "Gb5", "C#4", "Db6"})
  void tieToARemindedNoteEndsAtItsHeadAndPassesTheBrackets(String note) {
    StaffSystem next = heldOver(note).get(1);
    List<Box> reminder =
        signs(next, sign -> named(sign, "ACCIDENTAL")).stream().map(Mark::box).toList();
    assertThat(reminder).hasSize(3);
    Box head = signs(next, sign -> named(sign, "NOTEHEAD")).get(0).box();
    Mark.Shape tie =
        next.marks().stream()
            .filter(Mark.Shape.class::isInstance)
            .map(Mark.Shape.class::cast)
            .min(Comparator.comparing(one -> one.box().left()))
            .orElseThrow();
    double end = tie.curves().get(0).x();
    assertThat(end).isBetween(head.left(), (head.left() + head.right()) / 2);
    double off = Math.abs(tie.y() - (head.top() + head.bottom()) / 2);
    assertThat(off).as("beside its head").isBetween(0.6, 1.4);
    double first = reminder.stream().mapToDouble(Box::left).min().orElseThrow();
    assertThat(first - tie.x()).as("begins before them").isGreaterThanOrEqualTo(1);
    Mark.Curve inner = tie.curves().get(2);
    boolean below = tie.y() > (head.top() + head.bottom()) / 2;
    for (double t = 0; t <= 1; t += 0.01) {
      double x = cubic(t, end, inner.x1(), inner.x2(), inner.x());
      double y = cubic(t, tie.curves().get(1).y(), inner.y1(), inner.y2(), inner.y());
      for (Box sign : reminder) {
        if (x > sign.left() && x < sign.right()) {
          holds(tie, below ? y - sign.bottom() : sign.top() - y, 0.05);
        }
      }
    }
  }

  private static double cubic(double t, double a, double b, double c, double d) {
    double u = 1 - t;
    return u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
  }

  @Test
  void thickestPlaceOfATieLiesOnNoStaffLine() {
    int ties = 0;
    for (StaffSystem system : systems(11, 80)) {
      List<Double> levels =
          lines(system, line -> line.y1() == line.y2() && line.place().bar() < 0).stream()
              .map(Mark.Line::y1)
              .filter(y -> Math.abs(y - system.staffY()) < 2.1)
              .toList();
      for (Mark mark : system.marks()) {
        if (mark instanceof Mark.Shape tie && levels.size() == 5) {
          ties++;
          double outer = middle(tie.y(), tie.curves().get(0));
          double inner = middle(tie.curves().get(1).y(), tie.curves().get(2));
          for (double level : levels) {
            double off = Math.abs((outer + inner) / 2 - level);
            holds(mark, off - Math.abs(outer - inner) / 2 - Measure.STAFF_LINE / 2, 0.08);
          }
        }
      }
    }
    assertThat(ties).isGreaterThan(50);
  }

  private static double middle(double from, Mark.Curve curve) {
    return (from + 3 * curve.y1() + 3 * curve.y2() + curve.y()) / 8;
  }

  @Test
  void withinASystemAndInTheKeyNothingIsReminded() {
    StaffPart held = Samples.staff(0, "6 Ab4 4");
    StaffSystem one =
        Engraver.systems(held, List.of(new SystemPlan(0, 2, false, 1, "", true)), 60).get(0);
    assertThat(signs(one, sign -> named(sign, "ACCIDENTAL"))).hasSize(1);
    StaffPart inKey = Samples.staff(-4, "6 Ab4 4");
    StaffSystem second =
        Engraver.systems(inKey, List.of(new SystemPlan(1, 1, false, 1, "", true)), 60).get(0);
    assertThat(signs(second, sign -> sign.place().step() >= 0 && named(sign, "ACCIDENTAL")))
        .isEmpty();
  }

  private static List<Box> ties(StaffSystem system) {
    return system.marks().stream()
        .filter(Mark.Shape.class::isInstance)
        .map(Mark::box)
        .sorted(Comparator.comparing(Box::left))
        .toList();
  }

  @Test
  void partThatGoesRoundStandsBetweenRepeatSignsAndSaysSo() {
    WrittenPart part = written("Long threes");
    assertThat(part.stages().stream().mapToInt(Stage::bars).sum()).isGreaterThan(part.bars());
    StaffSystem system = first(Reading.once(part, 4, Cut.BEATS));
    List<Box> dots =
        signs(system, sign -> sign.glyph() == Glyph.REPEAT_DOT).stream().map(Mark::box).toList();
    assertThat(dots).as("two at each end, on the staff and on the click").hasSize(8);
    assertThat(dots.stream().filter(box -> box.right() < system.firstX())).hasSize(4);
    assertThat(system.marks().stream().map(mark -> mark.place().spoken()))
        .contains("repeat from here", "repeat, round and round")
        .doesNotContain("end");
    assertThat(
            system.marks().stream()
                .filter(mark -> mark instanceof Mark.Text)
                .map(mark -> ((Mark.Text) mark).text()))
        .contains("round and round");
  }

  @Test
  void theLineThatEndsARepeatIsSaidAfterTheBar() {
    StaffSystem system = first(Reading.once(written("Long threes"), 4, Cut.BEATS));
    Place end =
        system.marks().stream()
            .map(Mark::place)
            .filter(place -> place.spoken().equals("repeat, round and round"))
            .findFirst()
            .orElseThrow();
    assertThat(end).isEqualTo(new Place(3, 32, "repeat, round and round"));
  }

  @Test
  void smallStaffIsMadeLargerWithFewerBarsWhereThatCostsNoPage() {
    List<Page> pages = Pages.part(written("Middle triplet"), Paper.A4, Cut.BEATS);
    assertThat(pages).hasSize(1);
    assertThat(pages.get(0).spaceMm()).isGreaterThan(1.6);
  }

  @Test
  void partThatIsPlayedOnceEndsWithTheEnd() {
    WrittenPart part =
        PartWriter.write(
            Stock.find("Long threes").withStages(List.of(Stage.ofBeats(4, 1, 1))),
            Stock.find("Long threes").chairs().get(0),
            100,
            "");
    StaffSystem system = first(Reading.once(part, 4, Cut.BEATS));
    assertThat(signs(system, sign -> sign.glyph() == Glyph.REPEAT_DOT)).isEmpty();
    assertThat(system.marks().stream().map(mark -> mark.place().spoken())).contains("end");
  }

  private static WrittenPart written(String drill) {
    return PartWriter.write(
        Stock.find(drill).withStages(Samples.LADDER), Stock.find(drill).chairs().get(0), 100, "");
  }

  private static StaffSystem first(Reading reading) {
    return Engraver.systems(reading.part(), reading.plans(), 104).get(0);
  }

  private static List<Mark.Sign> signs(StaffSystem system, Predicate<Mark.Sign> which) {
    return system.marks().stream()
        .filter(Mark.Sign.class::isInstance)
        .map(Mark.Sign.class::cast)
        .filter(which)
        .toList();
  }

  private static List<Mark.Line> lines(StaffSystem system, Predicate<Mark.Line> which) {
    return system.marks().stream()
        .filter(Mark.Line.class::isInstance)
        .map(Mark.Line.class::cast)
        .filter(which)
        .toList();
  }

  private static List<StaffSystem> systems(long seed, int parts) {
    Random random = new Random(seed);
    List<StaffSystem> systems = new ArrayList<>();
    for (int i = 0; i < parts; i++) {
      Reading reading = Reading.wholeTake(Samples.random(random), 1 + random.nextInt(4), Cut.BEATS);
      systems.addAll(Engraver.systems(reading.part(), reading.plans(), 60 + random.nextInt(100)));
    }
    return systems;
  }
}
