package thinclick.client.window.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;

/** What of some bars was placed, while the take runs. */
class HeldSoFarTest {
  private static final List<Stage> STAGES = List.of(new Stage(8, 1, List.of(1, 2, 3, 4), null));
  private final Take take = Rooms.take(Meter.FOUR_FOUR, 2, STAGES);
  private final RoomState room = Rooms.playing(take);

  private Map<String, List<Long>> played(double jonasLateSteps) {
    Map<String, List<Long>> played = new HashMap<>();
    for (Part part : take.parts()) {
      double late = part.player().equals("Jonas") ? jonasLateSteps : 0;
      List<Long> micros = new ArrayList<>();
      for (int step : part.attackSteps()) {
        micros.add(Math.round(take.grid().microsAt(step) + late * take.grid().stepMicros()));
      }
      played.put(part.player(), micros);
    }
    return played;
  }

  @Test
  void whatLiesOnItsPlaceIsPlaced() {
    HeldSoFar held = HeldSoFar.of(room.dealt(), room.announced(), played(0), 4, 8);
    assertThat(held).isEqualTo(new HeldSoFar(4 * 8 + 4 * 4, 4 * 8 + 4 * 4));
  }

  @Test
  void barsThatHaveNotBeenPlayedAreNotPlaced() {
    Map<String, List<Long>> half = played(0);
    long from = take.grid().instantOf(6 * 8);
    half.replaceAll((name, all) -> all.stream().filter(micros -> micros < from - 1).toList());
    HeldSoFar held = HeldSoFar.of(room.dealt(), room.announced(), half, 4, 8);
    assertThat(held).isEqualTo(new HeldSoFar(48, 24));
  }

  @Test
  void whoIsDisplacedIsNotPlaced() {
    HeldSoFar held = HeldSoFar.of(room.dealt(), room.announced(), played(1), 4, 8);
    assertThat(held.written()).isEqualTo(48);
    assertThat(held.placed()).isBetween(30, 34);
  }

  @Test
  void nobodyWhoPlaysNothingIsCountedAsHeld() {
    HeldSoFar held = HeldSoFar.of(room.dealt(), room.announced(), Map.of(), 0, 4);
    assertThat(held).isEqualTo(new HeldSoFar(48, 0));
  }
}
