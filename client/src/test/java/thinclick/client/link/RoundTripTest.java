package thinclick.client.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ServerMessage;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;

/** Two who play together know how far apart they are. */
class RoundTripTest {
  private static final int ONE_WAY_MILLIS = 40;

  private static final class Ear implements RoomListener {
    volatile List<ServerMessage.Person> people = List.of();

    @Override
    public void roster(ServerMessage.Roster roster) {
      people = roster.players();
    }

    boolean knowsBoth() {
      return people.size() == 2
          && people.stream()
              .allMatch(p -> p.roundTripMicros() != null && p.roundTripSpreadMicros() != null);
    }
  }

  @TempDir Path folder;

  @Test
  void eachOfTwoIsToldBothRoundTripsAndTheirSpread() throws Exception {
    try (RehearsalHost host = RehearsalHost.start(HostOptions.local(folder.resolve("room.db")));
        FarLine far = new FarLine(host.port(), ONE_WAY_MILLIS);
        LinkLoop loop = LinkLoop.start()) {
      LinkOptions options = LinkOptions.on(loop);
      Ear first = new Ear();
      Ear second = new Ear();
      RoomLink lea = RoomLink.open(options, RoomAddress.local(host.port()), "Lea", first);
      await().until(() -> lea.state() == LinkState.ONLINE);
      RoomLink mina =
          RoomLink.join(
              options, RoomAddress.local(far.port()), lea.word(), "Mina", Role.PLAYER, second);
      await().atMost(Duration.ofSeconds(20)).until(() -> first.knowsBoth() && second.knowsBoth());

      for (List<ServerMessage.Person> people : List.of(first.people, second.people)) {
        ServerMessage.Person near = people.get(0);
        ServerMessage.Person distant = people.get(1);
        assertThat(near.name()).isEqualTo("Lea");
        assertThat(near.roundTripMicros()).isBetween(1L, 1_000_000L);
        assertThat(near.roundTripSpreadMicros()).isBetween(0L, near.roundTripMicros());
        assertThat(distant.roundTripMicros())
            .as("there and back")
            .isBetween(2_000L * ONE_WAY_MILLIS, 1_000_000L);
        assertThat(distant.roundTripSpreadMicros())
            .as("beyond the shortest, which holds the way itself")
            .isLessThan(distant.roundTripMicros() - 2_000L * ONE_WAY_MILLIS + 1);
      }
      assertThat(mina.clock().bestRoundTripMicros()).isGreaterThan(2_000L * ONE_WAY_MILLIS - 1);
      mina.close();
      lea.close();
    }
  }
}
