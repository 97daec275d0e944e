package thinclick.server.net;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import io.netty.buffer.ByteBuf;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelOutboundHandlerAdapter;
import io.netty.channel.DefaultEventLoop;
import io.netty.channel.EventLoop;
import io.netty.channel.embedded.EmbeddedChannel;
import io.netty.handler.codec.http.websocketx.WebSocket13FrameEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.time.VirtualTime;
import thinclick.server.room.Room;
import thinclick.server.room.RoomDrive;
import thinclick.server.room.RoomEvent;
import thinclick.server.store.Store;
import thinclick.server.watch.HostMeters;

/** One of three does not read what it is sent: what may be left out is, and is counted. */
class LaggingReceiverTest {
  @TempDir Path folder;
  private final HostMeters meters = new HostMeters();
  private final VirtualTime time = new VirtualTime(0);
  private final Line leader = new Line();
  private final Line mina = new Line();
  private final Line jonas = new Line();
  private final EventLoop loop = new DefaultEventLoop();
  private Store store;
  private HostedRoom room;
  private long revision;

  /** A client's end, which the test reads or does not. */
  private final class Line {
    final Stuck stuck = new Stuck();
    final EmbeddedChannel channel = new EmbeddedChannel(stuck, new WebSocket13FrameEncoder(false));
    final Connection connection = new Connection(channel);

    private String all = "";

    /** Everything that has arrived. */
    String read() {
      all += loop.submit(this::readHere).syncUninterruptibly().getNow();
      return all;
    }

    /** Waits for it, which goes out when the loop next comes to it. */
    void hears(String text) {
      await().until(() -> read().contains(text));
    }

    private String readHere() {
      StringBuilder all = new StringBuilder();
      for (ByteBuf frame = channel.readOutbound(); frame != null; frame = channel.readOutbound()) {
        all.append(frame.toString(StandardCharsets.UTF_8));
        frame.release();
      }
      return all.toString();
    }
  }

  private static final class Stuck extends ChannelOutboundHandlerAdapter {
    private boolean on;

    @Override
    public void flush(ChannelHandlerContext context) {
      if (!on) {
        context.flush();
      }
    }
  }

  @BeforeEach
  void aTakeOfTwo() {
    store = Store.open(folder.resolve("room.db"), InstantSource.system(), available -> {});
    store.journal().open("room", "balumidore").join();
    HostParts parts = BareHost.parts(time, time, store, meters, RoomNews.NONE);
    room =
        new HostedRoom(
            Room.fresh("room", "balumidore", 1, RoomDrive.DRILLS, RoomDrive.DEALER),
            loop,
            new Flushes(loop),
            parts,
            new Busy(),
            0,
            any -> "",
            any -> {});
    come(leader, new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
    come(mina, join("Mina"));
    come(jonas, join("Jonas"));
    say(leader, new LeaderCommand.Material(1, revision++, null, RoomDrive.DRILL.title()));
    say(leader, new LeaderCommand.Deal(2, revision++, 7, List.of()));
    say(leader, new LeaderCommand.Start(3, revision++, "room-d1", 2_000, 1));
    mina.hears("\"announced\"");
  }

  @AfterEach
  void letGo() {
    for (Line line : List.of(leader, mina, jonas)) {
      line.channel.finishAndReleaseAll();
    }
    store.close();
    loop.shutdownGracefully(0, 1, TimeUnit.SECONDS);
  }

  private static ClientMessage.Join join(String name) {
    return new ClientMessage.Join(1, 1, "balumidore", name, Role.PLAYER, null, null, false);
  }

  private void come(Line line, ClientMessage message) {
    room.come(
        line.connection,
        new RoomEvent.Came(line.connection.number(), message, "token" + line, "lead"),
        () -> {});
    revision++;
  }

  private void say(Line line, ClientMessage message) {
    room.post(new RoomEvent.Said(line.connection.number(), message));
  }

  private void plays(long seq) {
    say(mina, new TakeMessage.Attacks("room-t1", 1, seq, List.of(WireAttack.tap(4_000_000))));
  }

  private void jonasReadsNothing(int bytesWaiting) {
    onLoop(
        () -> {
          jonas.stuck.on = true;
          jonas.connection.write(new byte[bytesWaiting], false);
        });
  }

  private void jonasReadsAgain() {
    onLoop(
        () -> {
          jonas.stuck.on = false;
          jonas.connection.flush();
        });
  }

  private void onLoop(Runnable task) {
    loop.submit(task).syncUninterruptibly();
  }

  @Test
  void overTheLowMarkHeardIsLeftOutForThatOneAloneAndCounted() {
    jonasReadsNothing(Connection.LOW_MARK + 1);
    plays(1);
    plays(2);

    leader.hears("\"seq\":1");
    leader.hears("\"seq\":2");
    assertThat(meters.text()).containsPattern("thinclick_heard_dropped_total 2\\.0");
    jonasReadsAgain();
    assertThat(jonas.read()).doesNotContain("\"heard\"");
    plays(3);
    jonas.hears("\"seq\":3");
    assertThat(jonas.all).doesNotContain("\"seq\":1", "\"seq\":2");
  }

  @Test
  void whatMustNotBeLostIsKeptForThatOneToo() {
    jonasReadsNothing(Connection.LOW_MARK + 1);
    say(leader, new LeaderCommand.Stop(4, revision, "room-t1"));
    leader.hears("\"stopped\"");
    assertThat(jonas.read()).doesNotContain("\"stopped\"");
    jonasReadsAgain();

    jonas.hears("\"stopped\"");
  }

  @Test
  void underTheMarkNothingIsLeftOut() {
    jonasReadsNothing(Connection.LOW_MARK / 2);
    plays(1);
    jonasReadsAgain();

    jonas.hears("\"heard\"");
    assertThat(meters.text()).containsPattern("thinclick_heard_dropped_total 0\\.0");
    await().until(() -> meters.text().contains("thinclick_attacks_stored_total 1.0"));
  }
}
