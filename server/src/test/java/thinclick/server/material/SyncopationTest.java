package thinclick.server.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SyncopationTest {
  private static List<Integer> steps(String written) {
    return IntStream.range(0, written.length())
        .filter(i -> written.charAt(i) == 'x')
        .boxed()
        .toList();
  }

  private static double fraction(String written) {
    String[] parts = written.split("/", -1);
    return parts.length == 1
        ? Double.parseDouble(parts[0])
        : Double.parseDouble(parts[0]) / Double.parseDouble(parts[1]);
  }

  /**
   * Gomez, Melvin, Rappaport and Toussaint 2005 (BRIDGES), fig. 8, by way of the tests of the
   * library amads; the note-to-beat distance with a beat of 4 pulses. The last three columns: Keith
   * weighted and metric complexity as the toolkit SynPy has them, Keith's categories and
   * Longuet-Higgins and Lee (the heaviest rest of each note) recomputed; then Longuet-Higgins and
   * Lee over every rest, and Sioros and Guedes with its defaults, as SynPy alone has them.
   */
  @ParameterizedTest
  @CsvSource({
    "Shiko,   x...x.x...x.x..., 1, 0, 6/5,  3, --S--, 2, 2, 2, 1.0729",
    "Son,     x..x..x...x.x..., 2, 1, 14/5, 6, HAS--, 4, 4, 4, 1.6979",
    "Rumba,   x..x...x..x.x..., 2, 2, 18/5, 6, HSA--, 5, 5, 6, 1.8672",
    "Soukous, x..x..x...xx...., 3, 2, 18/5, 8, HAS-A, 6, 6, 7, 1.8316",
    "Gahu,    x..x..x...x...x., 3, 1, 18/5, 9, HASS-, 5, 5, 5, 1.9878",
    "Bossa,   x..x..x...x..x.., 3, 2, 4,    9, HASHA, 6, 6, 7, 2.3828"
  })
  void timelinesOfSixteenPulses(
      String name,
      String rhythm,
      int keith,
      int offBeat,
      String noteToBeat,
      int weighted,
      String labels,
      int complexity,
      int longuetHigginsLee,
      int everyRest,
      double siorosGuedes) {
    List<Integer> attacks = steps(rhythm);
    int[] weights = Syncopation.binaryWeights(16);

    assertThat(Syncopation.longuetHigginsLeeEveryRest(attacks, weights))
        .as(name)
        .isEqualTo(everyRest);
    assertThat(Syncopation.siorosGuedes(attacks, weights))
        .as(name)
        .isCloseTo(siorosGuedes, within(0.00005));

    assertThat(Syncopation.keithCount(attacks, 16)).as(name).isEqualTo(keith);
    assertThat(Syncopation.offBeatness(attacks, 16)).as(name).isEqualTo(offBeat);
    assertThat(Syncopation.noteToBeatDistance(attacks, 16, 4))
        .as(name)
        .isCloseTo(fraction(noteToBeat), within(1e-12));
    assertThat(Syncopation.keithWeighted(attacks, 16)).as(name).isEqualTo(weighted);
    assertThat(Syncopation.keithLabels(attacks, 16)).as(name).isEqualTo(labels);
    assertThat(Syncopation.metricComplexity(attacks, weights)).as(name).isEqualTo(complexity);
    assertThat(Syncopation.longuetHigginsLee(attacks, weights))
        .as(name)
        .isEqualTo(longuetHigginsLee);
  }

  /** The same paper, fig. 11, by way of amads; the note-to-beat distance with a beat of 3. */
  @ParameterizedTest
  @CsvSource({
    "Soli,     x.x.x.x.xx.x, 1, 15/7",
    "Tambu,    x.x.x.xx.x.x, 2, 15/7",
    "Bembe,    x.x.xx.x.x.x, 3, 3",
    "Bembe-2,  xx.x.xx.x.x., 2, 15/7",
    "Yoruba,   x.x.xx.x.xx., 2, 3",
    "Tonada,   x.xx.xx.x.x., 1, 15/7",
    "Asaadua,  x.x.x.xx.xx., 1, 15/7",
    "Sorsonet, xxx.x.x.x.x., 1, 3",
    "Bemba,    x.xx.x.x.xx., 2, 15/7",
    "Ashanti,  x.xx.x.xx.x., 2, 3"
  })
  void bellsOfTwelvePulses(String name, String rhythm, int offBeat, String noteToBeat) {
    List<Integer> attacks = steps(rhythm);

    assertThat(Syncopation.offBeatness(attacks, 12)).as(name).isEqualTo(offBeat);
    assertThat(Syncopation.noteToBeatDistance(attacks, 12, 3))
        .as(name)
        .isCloseTo(fraction(noteToBeat), within(1e-12));
  }

  /** Recomputed with a beat of 2 pulses; the second distance of the tresillo's rule is ours. */
  @ParameterizedTest
  @CsvSource({
    "tresillo,       x..x..x., 1, 3,  2, 2, 1, 2/3",
    "cinquillo,      x.xx.xx., 1, 3,  2, 2, 2, 6/5",
    "four beats,     x.x.x.x., 0, 0,  0, 0, 0, 0",
    "four off-beats, .x.x.x.x, 4, 12, 7, 7, 4, 4"
  })
  void cellsOfEightPulses(
      String name,
      String rhythm,
      int keith,
      int weighted,
      int complexity,
      int longuetHigginsLee,
      int offBeat,
      String noteToBeat) {
    List<Integer> attacks = steps(rhythm);
    int[] weights = Syncopation.binaryWeights(8);

    assertThat(Syncopation.keithCount(attacks, 8)).as(name).isEqualTo(keith);
    assertThat(Syncopation.keithWeighted(attacks, 8)).as(name).isEqualTo(weighted);
    assertThat(Syncopation.metricComplexity(attacks, weights)).as(name).isEqualTo(complexity);
    assertThat(Syncopation.longuetHigginsLee(attacks, weights))
        .as(name)
        .isEqualTo(longuetHigginsLee);
    assertThat(Syncopation.offBeatness(attacks, 8)).as(name).isEqualTo(offBeat);
    assertThat(Syncopation.noteToBeatDistance(attacks, 8, 2))
        .as(name)
        .isCloseTo(fraction(noteToBeat), within(1e-12));
  }

  /** Recomputed. */
  @Test
  void charlestonOfEightPulses() {
    List<Integer> attacks = List.of(0, 3);

    assertThat(Syncopation.keithCount(attacks, 8)).isEqualTo(1);
    assertThat(Syncopation.keithWeighted(attacks, 8)).isEqualTo(3);
    assertThat(Syncopation.metricComplexity(attacks, Syncopation.binaryWeights(8))).isEqualTo(2);
    assertThat(Syncopation.longuetHigginsLee(attacks, Syncopation.binaryWeights(8))).isEqualTo(2);
  }

  /** The backbeat is on the beat of two pulses and off the beat of half a bar; recomputed. */
  @Test
  void theNoteToBeatDistanceDependsOnTheBeat() {
    assertThat(Syncopation.noteToBeatDistance(List.of(2, 6), 8, 2)).isEqualTo(0);
    assertThat(Syncopation.noteToBeatDistance(List.of(2, 6), 8, 4)).isEqualTo(4);
  }

  /** The docstring of the toolkit SynPy gives 2 for this bar of 2/4; recomputed. */
  @Test
  void oneBarOfTwoFourByLonguetHigginsAndLee() {
    List<Integer> attacks = List.of(0, 3, 5, 6);

    assertThat(Syncopation.longuetHigginsLee(attacks, Syncopation.binaryWeights(8))).isEqualTo(2);
    assertThat(Syncopation.longuetHigginsLeeEveryRest(attacks, Syncopation.binaryWeights(8)))
        .isEqualTo(2);
  }

  /** The vector for 16 stands in a public file of metrical profiles; 8 and 12 are derived. */
  @Test
  void weightsAreTheLevelsThatBeginOnAPulse() {
    assertThat(Syncopation.binaryWeights(16))
        .containsExactly(5, 1, 2, 1, 3, 1, 2, 1, 4, 1, 2, 1, 3, 1, 2, 1);
    assertThat(Syncopation.binaryWeights(8)).containsExactly(4, 1, 2, 1, 3, 1, 2, 1);
    assertThat(Syncopation.binaryWeights(12)).containsExactly(4, 1, 1, 2, 1, 1, 3, 1, 1, 2, 1, 1);
  }

  @Test
  void keithNeedsAPowerOfTwo() {
    assertThatThrownBy(() -> Syncopation.keithCount(List.of(0), 12))
        .hasMessage("expected a power of two of pulses, found 12");
  }

  /**
   * Derived: an even displacement keeps the off-beatness of 16 pulses, an odd one turns it over.
   */
  @Test
  void displacementByAnOddStepTurnsOffBeatnessOver() {
    for (String title : List.of("Son 3-2", "Rumba 3-2", "Gahu", "Bossa", "Shiko", "Soukous")) {
      var cell = Stock.find(title).chairs().get(0).cell();
      int own = Syncopation.offBeatness(cell.attackSteps(), 16);
      for (int k = 0; k < 16; k++) {
        int moved = Syncopation.offBeatness(Cells.displace(cell, k).attackSteps(), 16);
        assertThat(moved).as("%s by %d", title, k).isEqualTo(k % 2 == 0 ? own : 5 - own);
      }
    }
  }

  /**
   * Toussaint, The Geometry of Musical Rhythm, 2013, fig. 17.13 and 37.11, by way of amads;
   * distances, variability and oddity recomputed.
   */
  @ParameterizedTest
  @CsvSource({
    "Shiko,   0 4 6 10 12, 4, 2, 66.7, false, false, true",
    "Son,     0 3 6 10 12, 5, 3, 40.5, true,  false, false",
    "Soukous, 0 3 6 10 11, 7, 4, 70.5, false, false, false",
    "Rumba,   0 3 7 10 12, 6, 3, 41.0, true,  false, false",
    "Gahu,    0 3 6 10 14, 7, 3, 23.8, false, false, false",
    "Bossa,   0 3 6 10 13, 4, 2, 14.3, true,  true,  true"
  })
  void shapesOfTheTimelines(
      String name,
      String rhythm,
      int distances,
      int gaps,
      double variability,
      boolean odd,
      boolean even,
      boolean deep) {
    List<Integer> attacks =
        java.util.Arrays.stream(rhythm.split(" ", -1)).map(Integer::valueOf).toList();
    RhythmShape shape = new RhythmShape(attacks, 16);

    assertThat(shape.distances()).as(name).hasSize(distances);
    assertThat(shape.distinctGaps()).as(name).isEqualTo(gaps);
    assertThat(shape.variability()).as(name).isCloseTo(variability, within(0.05));
    assertThat(shape.odd()).as(name).isEqualTo(odd);
    assertThat(shape.maximallyEven()).as(name).isEqualTo(even);
    assertThat(shape.deep()).as(name).isEqualTo(deep);
  }
}
