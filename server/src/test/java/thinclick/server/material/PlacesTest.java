package thinclick.server.material;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Meter;

class PlacesTest {
  @ParameterizedTest
  @CsvSource({
    "4/4, 2, 0, 1",
    "4/4, 2, 3, and of 2",
    "4/4, 4, 5, e of 2",
    "4/4, 4, 6, and of 2",
    "4/4, 4, 15, a of 4",
    "4/4, 3, 11, last triplet of 4",
    "6/8, 3, 4, second eighth of 2",
    "9/8, 6, 17, sixth sixteenth of 3",
    "3/4, 6, 1, second sextuplet of 1"
  })
  void aPlaceInTheBarIsSaidAsItIsCounted(String meter, int stepsPerBeat, int step, String place) {
    assertThat(Places.place(step, Meter.parse(meter), stepsPerBeat)).isEqualTo(place);
  }

  @Test
  void everyAttackKnowsItsPlaceInBarAndGroup() {
    Drill drill = Stock.find("Hollow threes");
    Drill.Cell cell = drill.chairs().get(0).cell();
    List<Group> groups = Groupings.lay(cell, 0, 2, 8, 16);
    List<Bearing> bearings = Bearings.of(cell.attackSteps(), groups, drill.meter(), 2);

    assertThat(bearings.get(3)).isEqualTo(new Bearing(4, 0, 3, "3", 1, 2, 3, "2 of 3"));
    assertThat(bearings.get(6)).isEqualTo(new Bearing(9, 1, 1, "and of 1", 3, 1, 3, "1 of 3"));
    assertThat(bearings.get(10)).isEqualTo(new Bearing(15, 1, 4, "and of 4", 5, 1, 1, "1 of 1"));
  }

  @Test
  void withoutAGroupingOnlyTheBarIsKnown() {
    assertThat(Bearings.of(List.of(7), List.of(), Meter.FOUR_FOUR, 2))
        .containsExactly(new Bearing(7, 0, 4, "and of 4", -1, 0, 0, null));
  }
}
