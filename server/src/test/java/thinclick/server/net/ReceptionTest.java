package thinclick.server.net;

import static org.assertj.core.api.Assertions.assertThat;

import io.netty.buffer.ByteBuf;
import io.netty.channel.embedded.EmbeddedChannel;
import io.netty.handler.codec.http.EmptyHttpHeaders;
import io.netty.handler.codec.http.websocketx.TextWebSocketFrame;
import io.netty.handler.codec.http.websocketx.WebSocket13FrameEncoder;
import io.netty.handler.codec.http.websocketx.WebSocketServerProtocolHandler.HandshakeComplete;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.room.RoomEvent;
import thinclick.server.store.Store;
import thinclick.server.watch.HostMeters;

/** How long somebody may stay who is in no room, by a clock that the test moves. */
class ReceptionTest {
  @TempDir Path folder;
  private final EmbeddedChannel line = new EmbeddedChannel(new WebSocket13FrameEncoder(false));
  private final Connection leader =
      new Connection(new EmbeddedChannel(new WebSocket13FrameEncoder(false)));
  private Store store;
  private String word;

  @BeforeEach
  void aRoomWithItsLeaderIsOpenAndSomebodyHasAConversation() {
    store = Store.open(folder.resolve("room.db"), InstantSource.system(), available -> {});
    HostParts parts =
        BareHost.parts(
            MonotonicClock.SYSTEM,
            null,
            store,
            new HostMeters(),
            new RoomNews() {
              @Override
              public void called(String roomId, String called) {
                word = called;
              }

              @Override
              public void over(String roomId) {}
            });
    line.freezeTime();
    Rooms rooms = new Rooms(parts, line.eventLoop(), new Busy());
    rooms
        .make()
        .join()
        .come(
            leader,
            new RoomEvent.Came(
                leader.number(), new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"), "one", "two"),
            () -> {});
    Connection connection = new Connection(line);
    Hold hold = new Hold();
    Reception reception =
        new Reception(
            parts,
            rooms,
            new Strangers(parts.clock().nanos()),
            new DoorRation(() -> false, 0, 0),
            connection,
            hold);
    line.pipeline()
        .addLast(new HttpHandler(parts, rooms))
        .addLast(
            new FrameHandler(
                parts,
                connection,
                reception,
                hold,
                new ArrivalStamp(MonotonicClock.SYSTEM, connection)));
    line.pipeline()
        .fireUserEventTriggered(new HandshakeComplete("/room", EmptyHttpHeaders.INSTANCE, null));
  }

  @AfterEach
  void letGo() {
    line.finishAndReleaseAll();
    store.close();
  }

  private void joins(String name) {
    line.writeInbound(
        new TextWebSocketFrame(
            MessageCodec.write(
                new ClientMessage.Join(1, 1, word, name, Role.PLAYER, null, null, false))));
    line.runPendingTasks();
  }

  private void pass(long millis) {
    line.advanceTimeBy(millis, TimeUnit.MILLISECONDS);
    line.runScheduledPendingTasks();
  }

  private String said() {
    StringBuilder all = new StringBuilder();
    for (ByteBuf frame = line.readOutbound(); frame != null; frame = line.readOutbound()) {
      all.append(frame.toString(StandardCharsets.UTF_8));
      frame.release();
    }
    return all.toString();
  }

  @Test
  void whoeverSaysNothingIsLetGoAtFiveSeconds() {
    pass(4_999);
    assertThat(line.isOpen()).isTrue();
    pass(1);

    assertThat(said()).contains("expected join or openRoom within 5 s");
    assertThat(line.isOpen()).isFalse();
  }

  @Test
  void whoseNameIsTakenHasThirtySecondsForAnother() {
    pass(4_000);
    joins("Frau Ott");
    assertThat(said()).contains("nameTaken");
    pass(29_000);
    assertThat(line.isOpen()).isTrue();
    joins("Frau Oster");

    assertThat(said()).contains("\"welcome\"");
    pass(60_000);
    assertThat(line.isOpen()).isTrue();
  }

  @Test
  void andNoLonger() {
    joins("Frau Ott");
    pass(30_000);

    assertThat(line.isOpen()).isFalse();
  }
}
