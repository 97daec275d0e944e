package thinclick.client.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;
import thinclick.server.room.JournalEntry;
import thinclick.server.room.RoomJournal;
import thinclick.server.store.Store;

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
      leader.link.lead().stop(takeId).join();
      mina.link.released(keys.get(2), keys.get(2).nanos() + 90 * MILLI); // after the end
      await().until(() -> leader.review != null && !leader.review.provisional());

      Take take = host.take(takeId).orElseThrow();
      assertThat(take.attacks())
          .extracting(Attack::lengthMillis)
          .containsExactly(110.0, 220.0, 90.0, null);
      aTakeThatIsTooLongForAFrameIsGathered(host, leader, takeId);
      mina.link.close();
      leader.link.close();
    }
  }

  /** More is written beside the host, as fast as a disk takes it; the player's number is 2. */
  private void aTakeThatIsTooLongForAFrameIsGathered(
      RehearsalHost host, Seat leader, String takeId) {
    String room = takeId.substring(0, takeId.indexOf("-t"));
    List<WireAttack> many =
        IntStream.range(0, 6_000).mapToObj(i -> WireAttack.tap(900_000_000L + i * 1_000L)).toList();
    try (Store beside =
        Store.open(folder.resolve("rooms.db"), InstantSource.system(), available -> {})) {
      JournalEntry played = new JournalEntry.Played(takeId, room + "-p2", 5, many);
      assertThat(beside.journal().append(room, leader.announced.epoch(), played).join())
          .isInstanceOf(RoomJournal.Outcome.Stored.class);
    }
    leader.link.keepTake(takeId).join();
    assertThat(leader.kept.whole()).isTrue();
    assertThat(leader.kept.take()).isEqualTo(host.take(takeId).orElseThrow());
    assertThat(leader.kept.take().attacks()).hasSize(6_004);
  }
}
