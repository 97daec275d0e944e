package thinclick.client.rehearse;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.client.link.RoomAddress;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.server.host.Encryption;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;
import thinclick.server.material.Stock;

/** A short rehearsal in real time at a host elsewhere, over real encrypted sockets. */
class RehearsalTest {
  @TempDir Path folder;

  @Test
  void aShortRehearsalRunsByItselfAndEndsWithAReviewThatNamesEverybody() {
    StringWriter said = new StringWriter();
    Rehearsal rehearsal =
        Rehearsal.of(Stock.find("Two-and four-and"), 3, 240.0, 4, 5, new PrintWriter(said));
    Take take;
    try (RehearsalHost host =
        RehearsalHost.start(
            HostOptions.local(folder.resolve("room.db")).encrypting(Encryption.ALL))) {
      String takeId = rehearsal.runAt(RoomAddress.of(host.link(null)), null);
      take = host.take(takeId).orElseThrow();
    }

    assertThat(take.parts().stream().map(Part::player)).containsExactly("Mina", "Jonas", "Ilse");
    assertThat(take.parts()).allMatch(Part::standIn);
    for (Part part : take.parts()) {
      long played =
          take.attacks().stream().filter(attack -> attack.player().equals(part.player())).count();
      assertThat(played).as(part.player()).isBetween(part.attackSteps().size() * 8L / 10, 40L);
    }
    assertThat(said.toString())
        .contains("count-in: one two three four", "bar   1: one two three four", "Held together:")
        .contains(List.of("Mina", "Jonas", "Ilse"));
  }
}
