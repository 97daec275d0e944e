package thinclick.server.engraving;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.server.material.WrittenPart;

/** What must hold of every page, on seeded random parts. */
class LayoutInvariantsTest {
  private static final int ROUNDS = 50;

  @ParameterizedTest
  @ValueSource(longs = {41, 42, 43, 44})
  void nothingTouchesAnythingElse(long seed) {
    each(seed, ROUNDS, LayoutInvariantsTest::keepsClear);
  }

  private static void keepsClear(String what, Reading reading, StaffSystem system) {
    List<Mark> solid =
        system.marks().stream()
            .filter(mark -> mark instanceof Mark.Sign || mark instanceof Mark.Text)
            .toList();
    for (int i = 0; i < solid.size(); i++) {
      for (int j = i + 1; j < solid.size(); j++) {
        Mark a = solid.get(i);
        Mark b = solid.get(j);
        if (a.box().overlaps(b.box()) && !meantToTouch(a, b)) {
          throw new AssertionError(what + "\n" + a + "\n" + b);
        }
      }
    }
  }

  /**
   * The numbers of a meter stand on each other, a flag on its note; the pieces of one chord symbol
   * stand close.
   */
  private static boolean meantToTouch(Mark a, Mark b) {
    if (a instanceof Mark.Sign first && b instanceof Mark.Sign second) {
      return meter(first) && meter(second) || ownFlag(first, second);
    }
    return a.place().step() >= 0 && a.place().step() == b.place().step();
  }

  /** A flag hangs from the stem at its head's right end. */
  private static boolean ownFlag(Mark.Sign head, Mark.Sign flag) {
    return head.glyph().name().startsWith("NOTEHEAD")
        && flag.glyph().name().startsWith("FLAG")
        && head.place().step() == flag.place().step();
  }

  private static boolean meter(Mark.Sign sign) {
    return sign.glyph().name().startsWith("TIME_SIG");
  }

  @ParameterizedTest
  @ValueSource(longs = {51, 52})
  void stepsStandLinearlyInTimeAtLeastTwoAndAHalfHeadsApart(long seed) {
    each(seed, ROUNDS, LayoutInvariantsTest::isLinear);
  }

  private static void isLinear(String what, Reading reading, StaffSystem system) {
    assertThat(system.stepWidth()).as(what).isGreaterThanOrEqualTo(2.6);
    for (Mark mark : system.marks()) {
      if (mark instanceof Mark.Sign sign && sign.glyph().name().startsWith("NOTEHEAD")) {
        double middle = (sign.box().left() + sign.box().right()) / 2;
        int step = sign.place().step();
        assertThat(middle)
            .as("step %d, %s", step, what)
            .isCloseTo(
                system.firstX() + (step - system.firstStep()) * system.stepWidth(), within(1e-9))
            .isCloseTo(system.xOf(step), within(1e-9));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {61, 62})
  void everySystemKeepsInsideItsOwnRectangle(long seed) {
    each(seed, ROUNDS, LayoutInvariantsTest::keepsInside);
  }

  private static void keepsInside(String what, Reading reading, StaffSystem system) {
    for (Mark mark : system.marks()) {
      Box box = mark.box();
      assertThat(box.left()).as("left of %s, %s", mark, what).isGreaterThan(-0.2);
      assertThat(box.top()).as("top of %s, %s", mark, what).isGreaterThan(-0.2);
      assertThat(box.right()).as("right of %s, %s", mark, what).isLessThan(system.width() + 0.2);
      assertThat(box.bottom()).as("bottom of %s, %s", mark, what).isLessThan(system.height() + 0.2);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {65, 66})
  void aDottedLineIsLongEnoughToBeSeenAsOne(long seed) {
    each(
        seed,
        ROUNDS,
        (what, reading, system) ->
            assertThat(system.marks())
                .as(what)
                .noneMatch(
                    mark ->
                        mark instanceof Mark.Line line
                            && line.dotted()
                            && line.y2() - line.y1() < 1.49));
  }

  @ParameterizedTest
  @ValueSource(longs = {67, 68})
  void everyBarThatBeginsInsideAGroupingHasItsWordsAndItsDottedLine(long seed) {
    each(
        seed,
        ROUNDS,
        (what, reading, system) -> {
          int bar = reading.part().stepsPerBar();
          List<Double> cut =
              reading.part().groupings().stream()
                  .flatMapToInt(turn -> IntStream.range(turn.start() + 1, turn.end()))
                  .filter(step -> step % bar == 0)
                  .filter(step -> step >= system.firstStep())
                  .filter(step -> step < system.firstStep() + system.steps())
                  .mapToObj(system::xOf)
                  .sorted()
                  .toList();
          List<Double> dotted =
              system.marks().stream()
                  .filter(mark -> mark instanceof Mark.Line line && line.dotted())
                  .map(mark -> ((Mark.Line) mark).x1())
                  .sorted()
                  .toList();
          assertThat(dotted).as(what).isEqualTo(cut);
        });
  }

  @ParameterizedTest
  @ValueSource(longs = {71, 72})
  void everyAttackHasOneHeadThatSpeaksAndEveryBeamStaysInItsBeat(long seed) {
    each(seed, ROUNDS, LayoutInvariantsTest::speaks);
  }

  private static void speaks(String what, Reading reading, StaffSystem system) {
    StaffPart part = reading.part();
    int end = system.firstStep() + system.steps();
    List<Integer> attacks =
        part.notes().stream()
            .map(note -> note.span().start())
            .filter(step -> step >= system.firstStep() && step < end)
            .toList();
    List<Integer> spoken =
        system.marks().stream()
            .filter(mark -> speaksOfAttack(mark.place().spoken()))
            .map(mark -> mark.place().step())
            .toList();
    assertThat(spoken).as(what).isEqualTo(attacks);
    for (Mark mark : system.marks()) {
      if (mark instanceof Mark.Line line && line.thickness() == Measure.BEAM && beam(line)) {
        int from = mark.place().step() / part.stepsPerBeat();
        double beatEnd = system.xOf((from + 1) * part.stepsPerBeat() - 0.4);
        assertThat(line.x2()).as("beam over a beat, %s", what).isLessThan(beatEnd);
      }
    }
  }

  private static boolean beam(Mark.Line line) {
    return line.y1() == line.y2();
  }

  private static boolean speaksOfAttack(String spoken) {
    return spoken.contains(" on ")
        && !spoken.startsWith("click")
        && !spoken.contains("rest")
        && !spoken.contains("held over")
        && !spoken.contains(", click on ");
  }

  @Test
  void allOfItHoldsOfTwoThousandParts() {
    for (long seed = 100; seed < 140; seed++) {
      each(
          seed,
          50,
          (what, reading, system) -> {
            keepsClear(what, reading, system);
            isLinear(what, reading, system);
            keepsInside(what, reading, system);
            speaks(what, reading, system);
          });
    }
  }

  private interface Check {
    void of(String what, Reading reading, StaffSystem system);
  }

  private static void each(long seed, int rounds, Check check) {
    Random random = new Random(seed);
    for (int round = 0; round < rounds; round++) {
      WrittenPart written = Samples.random(random);
      Cut cut = random.nextBoolean() ? Cut.BEATS : Cut.HALF_BARS;
      int bars = 1 + random.nextInt(4);
      Reading reading =
          random.nextBoolean()
              ? Reading.once(written, bars, cut)
              : Reading.wholeTake(written, bars, cut);
      double width = 60 + random.nextInt(100);
      for (StaffSystem system : Engraver.systems(reading.part(), reading.plans(), width)) {
        String what =
            "seed " + seed + " round " + round + ", bar " + system.firstBar() + ", " + written;
        check.of(what, reading, system);
      }
    }
  }
}
