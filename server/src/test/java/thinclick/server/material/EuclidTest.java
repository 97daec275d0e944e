package thinclick.server.material;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.protocol.file.Drill;

/**
 * Toussaint 2005, "The Euclidean Algorithm Generates Traditional Musical Rhythms", BRIDGES, pp.
 * 47-56: the list with its interval vectors. E(5,16) is printed there with 17 symbols beside
 * (33334), which is 16; the string here is the one of the vector.
 */
class EuclidTest {
  /** Where the textbook procedure gives a rotation of the printed string. */
  private static final Set<String> ROTATED = Set.of("2,3", "3,4", "5,6", "7,8");

  @ParameterizedTest
  @CsvSource({
    "2, 3, x.x, 21",
    "2, 5, x.x.., 23",
    "3, 4, x.xx, 211",
    "3, 5, x.x.x, 221",
    "3, 7, x.x.x.., 223",
    "3, 8, x..x..x., 332",
    "4, 7, x.x.x.x, 2221",
    "4, 9, x.x.x.x.., 2223",
    "4, 11, x..x..x..x., 3332",
    "4, 12, x..x..x..x.., 3333",
    "5, 6, x.xxxx, 21111",
    "5, 7, x.xx.xx, 21211",
    "5, 8, x.xx.xx., 21212",
    "5, 9, x.x.x.x.x, 22221",
    "5, 11, x.x.x.x.x.., 22223",
    "5, 12, x..x.x..x.x., 32322",
    "5, 13, x..x.x..x.x.., 32323",
    "5, 16, x..x..x..x..x..., 33334",
    "7, 8, x.xxxxxx, 2111111",
    "7, 12, x.xx.x.xx.x., 2122122",
    "7, 16, x..x.x.x..x.x.x., 3223222",
    "9, 16, x.xx.x.x.xx.x.x., 212221222",
    "11, 24, x..x.x.x.x.x..x.x.x.x.x., 32222322222",
    "13, 24, x.xx.x.x.x.x.xx.x.x.x.x., 2122222122222"
  })
  void thePublishedListIsGenerated(int attacks, int steps, String printed, String gaps) {
    Drill.Cell cell = Euclid.cell(attacks, steps);
    RhythmShape shape = new RhythmShape(cell.attackSteps(), steps);
    String string =
        IntStream.range(0, steps)
            .mapToObj(step -> cell.attackSteps().contains(step) ? "x" : ".")
            .collect(Collectors.joining());

    assertThat(rotations(string)).contains(printed);
    assertThat(new TreeSet<>(shape.gaps()))
        .isEqualTo(new TreeSet<>(gaps.chars().mapToObj(c -> c - '0').toList()));
    assertThat(shape.gaps()).hasSize(attacks);
    assertThat(rotations(join(shape.gaps()))).contains(gaps);
    if (ROTATED.contains(attacks + "," + steps)) {
      assertThat(string).isNotEqualTo(printed);
    } else {
      assertThat(string).isEqualTo(printed);
    }
  }

  private static String join(List<Integer> gaps) {
    return gaps.stream().map(String::valueOf).collect(Collectors.joining());
  }

  private static Set<String> rotations(String cycle) {
    return IntStream.range(0, cycle.length())
        .mapToObj(i -> cycle.substring(i) + cycle.substring(0, i))
        .collect(Collectors.toSet());
  }

  /** The same list: "the actual Bossa-Nova rhythm usually starts on the third onset". */
  @Test
  void theBossaBeginsOnTheThirdAttackOfFiveInSixteen() {
    assertThat(Cells.rotate(Euclid.cell(5, 16), 2).attackSteps())
        .containsExactly(0, 3, 6, 10, 13)
        .isEqualTo(Stock.find("Bossa").chairs().get(0).cell().attackSteps());
  }

  @Test
  void everyCellIsAsEvenAsCanBe() {
    for (int steps = 1; steps <= 32; steps++) {
      for (int attacks = 1; attacks <= steps; attacks++) {
        Drill.Cell cell = Euclid.cell(attacks, steps);
        assertThat(cell.attackSteps())
            .as("%d in %d", attacks, steps)
            .hasSize(attacks)
            .startsWith(0);
        assertThat(new RhythmShape(cell.attackSteps(), steps).maximallyEven())
            .as("%d in %d", attacks, steps)
            .isTrue();
      }
    }
  }
}
