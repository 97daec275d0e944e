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
  void eachOfTwoIsToldBothRoundTripsAndTheirSpread() {
    try (RehearsalHost host = RehearsalHost.start(HostOptions.local(folder.resolve("room.db")));
        LinkLoop loop = LinkLoop.start()) {
      LinkOptions options = LinkOptions.on(loop);
      RoomAddress address = RoomAddress.local(host.port());
      Ear first = new Ear();
      Ear second = new Ear();
      RoomLink lea = RoomLink.open(options, address, "Lea", first);
      await().until(() -> lea.state() == LinkState.ONLINE);
      RoomLink mina = RoomLink.join(options, address, lea.word(), "Mina", Role.PLAYER, second);
      await().atMost(Duration.ofSeconds(20)).until(() -> first.knowsBoth() && second.knowsBoth());

      for (ServerMessage.Person person : first.people) {
        assertThat(person.roundTripMicros()).as(person.name()).isBetween(1L, 1_000_000L);
        assertThat(person.roundTripSpreadMicros())
            .as(person.name())
            .isBetween(0L, person.roundTripMicros());
      }
      assertThat(mina.clock().bestRoundTripMicros()).isPositive();
      mina.close();
      lea.close();
    }
  }
}
