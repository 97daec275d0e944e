package thinclick.server.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ServerMessage.Phase;

/** 20,000 of the texts that src/bench/fuzz.sh sends by the million. */
class RoomFuzzTest {
  @Test
  void everyTextInEveryPhaseIsFollowedOrRefusedAsDocumentedAndReplaysTheSame() {
    RoomFuzz.Outcome outcome = RoomFuzz.run(1, 20_000);

    assertThat(outcome.faults()).isEmpty();
    assertThat(outcome.heardIn().keySet()).containsExactly(Phase.values());
    List<String> kinds =
        EveryMessageTest.concrete(ClientMessage.class).stream().map(Class::getSimpleName).toList();
    assertThat(outcome.kindsHeardIn().values())
        .as("every kind in every phase")
        .allSatisfy(heard -> assertThat(heard).containsExactlyInAnyOrderElementsOf(kinds));
    assertThat(outcome.refusedByTheReader()).isBetween(4_000L, 16_000L);
  }
}
