package thinclick.server.net;

import static org.assertj.core.api.Assertions.assertThat;

import io.netty.buffer.ByteBuf;
import io.netty.buffer.Unpooled;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelOutboundHandlerAdapter;
import io.netty.channel.ChannelPromise;
import io.netty.channel.WriteBufferWaterMark;
import io.netty.channel.embedded.EmbeddedChannel;
import io.netty.handler.codec.http.EmptyHttpHeaders;
import io.netty.handler.codec.http.websocketx.CloseWebSocketFrame;
import io.netty.handler.codec.http.websocketx.PingWebSocketFrame;
import io.netty.handler.codec.http.websocketx.WebSocketFrame;
import io.netty.handler.codec.http.websocketx.WebSocketServerProtocolHandler.HandshakeComplete;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.time.MonotonicClock;

/** Lines that only look open, by a clock that the test moves. */
class LifeHandlerTest {
  private final Frames frames = new Frames();
  private final EmbeddedChannel line = line();

  private EmbeddedChannel line() {
    EmbeddedChannel channel = new EmbeddedChannel();
    channel.freezeTime();
    channel
        .config()
        .setWriteBufferWaterMark(
            new WriteBufferWaterMark(Connection.LOW_MARK, Connection.HIGH_MARK));
    Connection connection = new Connection(channel);
    ArrivalStamp arrival = new ArrivalStamp(MonotonicClock.SYSTEM, connection);
    channel.pipeline().addLast(arrival, frames);
    channel.pipeline().addLast(new LifeHandler(connection, arrival));
    channel.pipeline().fireChannelActive();
    return channel;
  }

  @AfterEach
  void letGo() {
    line.finishAndReleaseAll();
  }

  private void conversationBegins() {
    line.pipeline()
        .fireUserEventTriggered(new HandshakeComplete("/room", EmptyHttpHeaders.INSTANCE, null));
  }

  private void pass(long millis) {
    line.advanceTimeBy(millis, TimeUnit.MILLISECONDS);
    line.runScheduledPendingTasks();
  }

  private void aByteComes() {
    line.writeInbound(Unpooled.wrappedBuffer(new byte[] {1}));
  }

  @Test
  void pingGoesOutEveryFiveSeconds() {
    conversationBegins();
    pass(4_999);
    assertThat(frames.pings()).isZero();
    for (int ping = 1; ping <= 10; ping++) {
      pass(ping == 1 ? 1 : 5_000);
      assertThat(frames.pings()).isEqualTo(ping);
      aByteComes();
    }
    assertThat(line.isOpen()).isTrue();
  }

  @Test
  void silentLineIsDeadAtFifteenSeconds() {
    conversationBegins();
    pass(5_000);
    pass(5_000);
    assertThat(frames.closeCodes()).isEmpty();
    pass(5_000);

    assertThat(frames.pings()).isEqualTo(2);
    assertThat(frames.closeCodes()).containsExactly(CloseCode.TIMEOUT.number());
    pass(60_000);
    assertThat(line.isOpen()).isFalse();
    assertThat(frames.pings()).as("the dead are left alone").isEqualTo(2);
  }

  @Test
  void deadLineThatTakesNoCloseFrameIsLetGoASecondLater() {
    frames.stuck = true;
    conversationBegins();
    pass(5_000);
    pass(5_000);
    pass(5_000);
    assertThat(line.isOpen()).isTrue();
    pass(1_000);

    assertThat(line.isOpen()).isFalse();
  }

  @Test
  void oneByteIsASignOfLife() {
    conversationBegins();
    pass(5_000);
    pass(5_000);
    aByteComes();
    pass(5_000);
    pass(5_000);
    assertThat(frames.closeCodes()).isEmpty();
    pass(5_000);

    assertThat(frames.closeCodes()).containsExactly(CloseCode.TIMEOUT.number());
  }

  @Test
  void whoeverAsksForNoConversationWithinFiveSecondsIsLetGo() {
    pass(4_999);
    assertThat(line.isOpen()).isTrue();
    pass(1);

    assertThat(line.isOpen()).isFalse();
  }

  @Test
  void whoeverDoesNotReadForFiveSecondsIsGivenUp() {
    frames.stuck = true;
    conversationBegins();
    line.write(Unpooled.wrappedBuffer(new byte[Connection.HIGH_MARK + 1]));
    line.runPendingTasks();
    aByteComes(); // alive, but it does not read
    pass(4_999);
    assertThat(frames.closeCodes()).isEmpty();
    pass(1);
    assertThat(frames.closeCodes()).containsExactly(CloseCode.SLOW.number());
    pass(1_000);
    assertThat(line.isOpen()).isFalse();
  }

  @Test
  void hostThatSleptBlamesNoLineForItsOwnSilence() {
    conversationBegins();
    pass(5_000);
    pass(5_000);
    pass(60_000); // nothing of the loop ran: what came lies in the socket
    assertThat(frames.closeCodes()).isEmpty();
    assertThat(frames.pings()).as("one, not one for each that was missed").isEqualTo(3);
    aByteComes();
    for (int i = 0; i < 2; i++) {
      pass(5_000);
    }
    assertThat(frames.closeCodes()).isEmpty();
    pass(5_000);

    assertThat(frames.closeCodes()).containsExactly(CloseCode.TIMEOUT.number());
  }

  @Test
  void lineThatDiedWhileTheHostSleptIsFoundAPingLater() {
    conversationBegins();
    pass(5_000);
    pass(5_000);
    pass(60_000);
    pass(5_000);

    assertThat(frames.closeCodes()).containsExactly(CloseCode.TIMEOUT.number());
  }

  @Test
  void hostThatLagsAtEveryTurnBlamesNobody() {
    conversationBegins();
    for (int i = 0; i < 10; i++) {
      aByteComes();
      pass(7_000);
    }
    assertThat(frames.closeCodes()).isEmpty();
  }

  @Test
  void hostThatLagsAtEveryTurnFindsADeadLineByThreeOfItsPings() {
    conversationBegins();
    pass(7_000);
    pass(7_000);
    assertThat(frames.closeCodes()).isEmpty();
    pass(7_000);

    assertThat(frames.closeCodes()).containsExactly(CloseCode.TIMEOUT.number());
  }

  @Test
  void lineThatTheHostDoesNotReadIsNotSilent() {
    conversationBegins();
    line.config().setAutoRead(false); // the disk is behind, or a long resend is paced
    for (int i = 0; i < 10; i++) {
      pass(5_000);
    }
    line.config().setAutoRead(true);
    pass(5_000);
    pass(5_000);
    assertThat(frames.closeCodes()).isEmpty();
    pass(5_000);

    assertThat(frames.closeCodes()).containsExactly(CloseCode.TIMEOUT.number());
  }

  @Test
  void hostThatSleptWaitsOnceMoreForARequestAndForASlowReader() {
    pass(60_000);
    assertThat(line.isOpen()).isTrue();
    frames.stuck = true;
    conversationBegins();
    line.write(Unpooled.wrappedBuffer(new byte[Connection.HIGH_MARK + 1]));
    line.runPendingTasks();
    pass(4_000);
    pass(60_000);
    assertThat(frames.closeCodes()).isEmpty();
    pass(4_999);
    assertThat(frames.closeCodes()).isEmpty();
    pass(1);

    assertThat(frames.closeCodes()).containsExactly(CloseCode.SLOW.number());
  }

  private void goesToAnotherLoop() {
    line.pipeline().fireChannelUnregistered();
    line.pipeline().fireChannelRegistered();
  }

  @Test
  void nothingIsTimedWhileALineIsOnNoLoop() {
    conversationBegins();
    line.pipeline().fireChannelUnregistered();
    pass(60_000);

    assertThat(frames.sent).isEmpty();
    assertThat(line.isOpen()).isTrue();
  }

  @Test
  void pingComesWhenItWouldHaveAndTheNextOnesToo() {
    conversationBegins();
    pass(3_000);
    goesToAnotherLoop();
    pass(1_999);
    assertThat(frames.pings()).isZero();
    pass(1);
    assertThat(frames.pings()).isEqualTo(1);
    pass(5_000);

    assertThat(frames.pings()).as("and not twice").isEqualTo(2);
  }

  @Test
  void silentLineIsDeadAtFifteenSecondsOnWhateverLoop() {
    conversationBegins();
    pass(5_000);
    pass(4_000);
    goesToAnotherLoop();
    pass(1_000);
    pass(4_999);
    assertThat(frames.closeCodes()).isEmpty();
    pass(1);

    assertThat(frames.closeCodes()).containsExactly(CloseCode.TIMEOUT.number());
  }

  @Test
  void whoeverDoesNotReadIsGivenUpOnAnotherLoopToo() {
    frames.stuck = true;
    conversationBegins();
    line.write(Unpooled.wrappedBuffer(new byte[Connection.HIGH_MARK + 1]));
    line.runPendingTasks();
    pass(2_000);
    goesToAnotherLoop();
    aByteComes();
    pass(3_000);
    pass(1_999);
    assertThat(frames.closeCodes()).isEmpty();
    pass(1);

    assertThat(frames.closeCodes()).containsExactly(CloseCode.SLOW.number());
  }

  /** What goes out, and whether the network takes it. */
  private static final class Frames extends ChannelOutboundHandlerAdapter {
    private final List<WebSocketFrame> sent = new ArrayList<>();
    private boolean stuck;

    @Override
    public void write(ChannelHandlerContext context, Object message, ChannelPromise promise) {
      if (message instanceof WebSocketFrame frame) {
        sent.add(frame.copy());
      }
      if (stuck && message instanceof ByteBuf) {
        context.write(message); // stays in the buffer: nothing is flushed
      } else if (!stuck) {
        context.write(message, promise);
      }
    }

    @Override
    public void flush(ChannelHandlerContext context) {
      if (!stuck) {
        context.flush();
      }
    }

    long pings() {
      return sent.stream().filter(PingWebSocketFrame.class::isInstance).count();
    }

    List<Integer> closeCodes() {
      return sent.stream()
          .filter(CloseWebSocketFrame.class::isInstance)
          .map(frame -> ((CloseWebSocketFrame) frame).statusCode())
          .toList();
    }
  }
}
