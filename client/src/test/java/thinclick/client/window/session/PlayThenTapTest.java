package thinclick.client.window.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.server.dealing.Dealer;
import thinclick.server.material.Stock;

/** Horns: the line is played first and tapped after, the very same one. */
class PlayThenTapTest {
  @ParameterizedTest
  @ValueSource(strings = {"Even eighths", "Jigsaw", "Long threes", "Charleston", "Waltz fives"})
  void whatIsTappedIsTheDrillAsItWas(String title) {
    Drill drill = Stock.find(title);
    Drill after = PlayThenTap.of(drill);
    int before = PlayThenTap.bars(drill) * drill.stepsPerBar();
    List<Part> plain = deal(drill);
    List<Part> moved = deal(after);
    for (int i = 0; i < plain.size(); i++) {
      assertThat(moved.get(i).attackSteps())
          .as("part %d", i)
          .isEqualTo(plain.get(i).attackSteps().stream().map(step -> step + before).toList());
    }
  }

  @Test
  void theBarsBeforeClickOnEveryBeat() {
    Drill drill = Stock.find("Jigsaw");
    Drill after = PlayThenTap.of(drill);
    assertThat(PlayThenTap.bars(drill)).isGreaterThanOrEqualTo(4);
    assertThat(after.stages().get(0).beats()).containsExactly(1, 2, 3, 4);
    assertThat(after.stages().subList(1, after.stages().size())).isEqualTo(drill.stages());
  }

  private static List<Part> deal(Drill drill) {
    List<String> players = drill.chairs().stream().map(one -> "P" + one.chair()).toList();
    return Dealer.deal(drill, players, 3, drill.tempo().start(), drill.stages()).parts();
  }
}
