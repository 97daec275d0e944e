package thinclick.client.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Take;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;

/** Lengths on their way from a key to the host's disk, through real sockets. */
class HeldLengthsTest {
  private static final long MILLI = 1_000_000;

  @TempDir Path folder;

  @Test
  void aKeyHeldFor110MillisStandsInTheTakeAlsoAfterACut() throws Exception {
    try (RehearsalHost host = RehearsalHost.start(HostOptions.local(folder.resolve("rooms.db")));
        CuttingProxy proxy = new CuttingProxy(host.port());
        LinkLoop loop = LinkLoop.start()) {
      Seat leader =
          Seat.opens(LinkOptions.on(loop), RoomAddress.local(host.port()), "Lea").online();
      Seat mina =
          Seat.joins(
                  LinkOptions.on(loop), RoomAddress.local(proxy.port()), leader.link.word(), "Mina")
              .online()
              .steady();
      String takeId = leader.starts("Even eighths");
      Seat.until(() -> mina.announced);
      List<PlayedAttack> keys = new ArrayList<>();
      for (int i = 0; i < 4; i++) {
        keys.add(PlayedAttack.tap(loop.nanos() + i * MILLI));
        long unused = mina.link.sendAttack(keys.get(i));
      }
      await().until(() -> mina.waiting == 0 && mina.storedThrough == 4);
      mina.link.released(keys.get(0), keys.get(0).nanos() + 110 * MILLI);
      await().until(() -> host.take(takeId).orElseThrow().attacks().get(0).lengthMillis() != null);
      proxy.cut();
      mina.link.released(keys.get(1), keys.get(1).nanos() + 220 * MILLI); // while it is away
      mina.link.released(keys.get(1), keys.get(1).nanos() + 330 * MILLI); // once is all
      mina.online();
      leader.link.stop(takeId).join();
      mina.link.released(keys.get(2), keys.get(2).nanos() + 90 * MILLI); // after the end
      await().until(() -> leader.review != null && !leader.review.provisional());

      Take take = host.take(takeId).orElseThrow();
      assertThat(take.attacks())
          .extracting(Attack::lengthMillis)
          .containsExactly(110.0, 220.0, 90.0, null);
      mina.link.close();
      leader.link.close();
    }
  }
}
